export { captionsOf, type FilmPart, filmPlan, secondsOf, viewAt } from './film/film-plan.ts';
export { ORDINARY, pictureFacts, stationOf, wavesOfSet } from './model/from-set.ts';
export type { Line } from './model/lines.ts';
export { isPoint, POINTS, type PointId } from './model/points.ts';
export { type Programme, type Tone, USUAL_TONE } from './model/programme.ts';
export { audible, csvOf, wavOf } from './model/samples.ts';
export {
  DETECTOR_CHOICES,
  detectorChosen,
  PERFECT,
  type ProgrammeChoice,
  type Settings,
  tonesOf,
  withSettings,
} from './model/settings.ts';
export {
  between,
  eased,
  LONGEST,
  limited,
  moved,
  SHORTEST,
  type View,
  zoomed,
} from './model/view.ts';
export type { Neighbour, WaveSpec } from './model/wave-spec.ts';
export { createWaves, type Waves } from './model/waves.ts';
export {
  isPicture,
  type MovingPicture,
  PICTURE_IDS,
  PICTURES,
  type PictureFacts,
  type PictureId,
} from './pictures/index.ts';
export type { Pen, TextLook } from './stage/pen.ts';
export { scenePen } from './stage/scene-pen.ts';
export { paintStage, type Stage, stagePlot } from './stage/stage.ts';
export type { WaveRow } from './stage/wave-row.ts';
export { rowWords, shownWords, type WavePicture, waveScene } from './stage/wave-scene.ts';
export { Columns, paintWaves, plotOf, type Show, type WaveWindow } from './stage/wave-window.ts';
export { type Figures, figuresOf, filled, meaningsOfFigures } from './story/figures.ts';
export { type Prepared, type Preparer, preparer } from './story/prepared.ts';
export { readScene, readSettings, scenesOf, withScenes } from './story/read-scenes.ts';
export { packed, type SceneDrawn, type SentScene, sceneKey, unpacked } from './story/sent.ts';
export { type StoryRow, type StoryScene, story, USUAL_SECONDS, wholePath } from './story/story.ts';
