export { FIGURE_MEANINGS, type Figures, figuresOf, filled } from './figures.ts';
export { captionsOf, type FilmPart, filmPlan, secondsOf, viewAt } from './film-plan.ts';
export { ORDINARY, pictureFacts, stationOf, USUAL_TONE, wavesOfSet } from './from-set.ts';
export type { Line } from './lines.ts';
export type { Pen, TextLook } from './pen.ts';
export {
  isPicture,
  type MovingPicture,
  PICTURE_IDS,
  PICTURES,
  type PictureFacts,
  type PictureId,
  pictureWords,
} from './pictures/index.ts';
export { isPoint, POINT_WORDS, POINTS, type PointId } from './points.ts';
export { type Prepared, type Preparer, preparer } from './prepared.ts';
export type { Programme, Tone } from './programme.ts';
export { audible, csvOf, wavOf } from './samples.ts';
export { scenePen } from './scene-pen.ts';
export { packed, type SceneDrawn, type SentScene, sceneKey, unpacked } from './sent.ts';
export {
  DETECTOR_CHOICES,
  detectorChosen,
  PERFECT,
  type ProgrammeChoice,
  type Settings,
  tonesOf,
  withSettings,
} from './settings.ts';
export { paintStage, type Stage, stagePlot } from './stage.ts';
export {
  readScene,
  readSettings,
  STORY,
  type StoryRow,
  type StoryScene,
  scenesOf,
  USUAL_SECONDS,
  withScenes,
} from './story.ts';
export { between, eased, LONGEST, limited, moved, SHORTEST, spanText, tidyTime, type View, zoomed } from './view.ts';
export { rowWords, shownWords, type WavePicture, waveScene } from './wave-scene.ts';
export { Columns, paintWaves, plotOf, type Show, type WaveRow, type WaveWindow } from './wave-window.ts';
export { createWaves, type Neighbour, type WaveSpec, type Waves } from './waves.ts';
