export { drawingOf, lettersFor } from './film/drawing.ts';
export {
  FILM_SOUND_RATE,
  filmFrame,
  filmPartAt,
  filmSeconds,
  filmSound,
  frameCount,
} from './film/film-frame.ts';
export { captionsOf, type FilmPart, filmPlan, viewAt } from './film/film-plan.ts';
export { GifWriter, gifColours, gifDelay, gifSamples } from './film/gif.ts';
export { FILM_COLOURS } from './film/grounds.ts';
export {
  heardIn,
  loopSeconds,
  loudnessShare,
  slowedSound,
  slowedTimes,
} from './film/scene-sound.ts';
export { stationOf, wavesOfSet, workingPointOf } from './model/from-set.ts';
export {
  LONGEST_RECORDING,
  loudestMoment,
  RECORDING_RATE,
  type RecordedProgramme,
  recordingOf,
  secondsOf,
  trimmed,
  withRecording,
} from './model/kept-recording.ts';
export { isPoint, POINTS, type PointId } from './model/points.ts';
export { audible, csvOf, wavOf } from './model/samples.ts';
export { DETECTOR_CHOICES, detectorChosen, isRetuned, type Settings, withSettings } from './model/settings.ts';
export { LONGEST, limited, moved, SHORTEST, type View, viewBetween, zoomed } from './model/view.ts';
export { USUAL_TONE, type WaveProgramme } from './model/wave-programme.ts';
export type { WaveSpec } from './model/wave-spec.ts';
export { createWaves } from './model/waves.ts';
export { PICTURE_IDS, PICTURES, type PictureFacts } from './pictures/index.ts';
export type { Pen } from './stage/pen.ts';
export { Columns } from './stage/pixel-columns.ts';
export type { CoverageMap } from './stage/pixel-coverage.ts';
export { scenePen } from './stage/scene-pen.ts';
export { paintStage, paintStagePlayhead, stagePlot } from './stage/stage.ts';
export type { WaveRow } from './stage/wave-row.ts';
export { rowWords, shownWords, waveScene } from './stage/wave-scene.ts';
export type { Show } from './stage/wave-window.ts';
export { filled, meaningsOfFigures } from './story/figures.ts';
export { type Prepared, type Preparer, preparer } from './story/prepared.ts';
export { scenesOf, withScenes } from './story/read-scenes.ts';
export { packed, type SentScene, sceneKey, unpacked } from './story/sent.ts';
export { SOUND_SPEEDS, type SoundSpeed, type StoryScene, wholePath } from './story/story.ts';
