import type { View } from '../model/view.ts';
import type { StageContents } from '../stage/stage.ts';
import { filled } from '../story/figures.ts';
import type { Prepared } from '../story/prepared.ts';
import type { StoryScene } from '../story/story.ts';

/** Letters of the scales: on a stage that is shown to others, legible in a small video. */
export const lettersFor = (width: number, height: number, presented: boolean): number =>
  presented
    ? Math.max(12, Math.min(width / 62, height / 34))
    : Math.max(10.5, Math.min(13, width / 44, Math.max(height / 30, 10.5)));

export interface DrawnScene {
  readonly scene: StoryScene;
  readonly prepared: Prepared;
  /** Title and caption are part of the picture, and letters are large. */
  readonly presented?: boolean;
}

/** What is on the stage, for the screen or for a file. */
export function drawingOf(
  { scene, prepared, presented = false }: DrawnScene,
  view: View,
  seconds: number,
  width: number,
  height: number,
  density: number,
): StageContents {
  return {
    width,
    height,
    rows: prepared.rows,
    view,
    show: scene.show ?? {},
    picture: scene.picture && { id: scene.picture, facts: prepared.facts, seconds },
    title: presented ? filled(scene.title, prepared.figures) : undefined,
    caption: presented ? filled(scene.caption, prepared.figures) : undefined,
    letters: lettersFor(width, height, presented),
    density,
  };
}
