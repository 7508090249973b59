import { secondsOf as secondsOfRecording } from '../model/kept-recording.ts';
import { eased, type View, viewBetween } from '../model/view.ts';
import { PICTURES, type PictureFacts } from '../pictures/index.ts';
import { type CaptionFigures, filled } from '../story/figures.ts';
import { type StoryScene, USUAL_SECONDS } from '../story/story.ts';
import { heardIn } from './scene-sound.ts';

/** Held still before and after a zoom, s. */
const HOLD = 1.5;

/** How long a scene lasts in a film: a moving picture to its own end, since its caption speaks of all of it. */
function secondsOf(scene: StoryScene, facts: PictureFacts): number {
  if (scene.to) return scene.to.seconds + 2 * HOLD;
  const { programme } = facts.waves.spec;
  // What is said is heard to its end.
  if (programme.kind === 'recording' && heardIn(scene) && !scene.picture)
    return Math.max(USUAL_SECONDS, secondsOfRecording(programme) - scene.from);
  if (scene.picture) return Math.max(USUAL_SECONDS, PICTURES[scene.picture].seconds(facts));
  return USUAL_SECONDS;
}

/** What a scene looks at after so many seconds. */
export function viewAt(scene: StoryScene, seconds: number): View {
  const start: View = { from: scene.from, span: scene.span };
  if (!scene.to) return start;
  return viewBetween(start, scene.to, eased((seconds - HOLD) / scene.to.seconds));
}

export interface FilmPart {
  readonly scene: StoryScene;
  readonly start: number;
  readonly seconds: number;
}

/** Scenes one after another. */
export function filmPlan(scenes: readonly StoryScene[], factsOf: (scene: StoryScene) => PictureFacts): FilmPart[] {
  let start = 0;
  return scenes.map((scene) => {
    const seconds = secondsOf(scene, factsOf(scene));
    const part = { scene, start, seconds };
    start += seconds;
    return part;
  });
}

const clock = (t: number): string => {
  const ms = Math.round(t * 1000);
  const two = (v: number) => String(v).padStart(2, '0');
  return `${two(Math.floor(ms / 3_600_000))}:${two(Math.floor(ms / 60_000) % 60)}:${two(Math.floor(ms / 1000) % 60)}.${String(ms % 1000).padStart(3, '0')}`;
};

/** Captions of a film as a WebVTT file. */
export function captionsOf(parts: readonly FilmPart[], figures: (scene: StoryScene) => CaptionFigures): string {
  const cues = parts.map(({ scene, start, seconds }, i) => {
    // An arrow or an empty line would end the cue.
    const words = filled(scene.caption || scene.title, figures(scene))
      .replaceAll('-->', '→')
      .replaceAll('&', '&amp;')
      .replaceAll('<', '&lt;')
      .replace(/\n{2,}/g, '\n');
    return `${i + 1}\n${clock(start)} --> ${clock(start + seconds)}\n${words}\n`;
  });
  return `WEBVTT\n\n${cues.join('\n')}`;
}
