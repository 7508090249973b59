export { type FigureName, figureMeanings, figureTexts, type LoopId, type TunerId } from './figures.ts';
export { nodeWaveTexts } from './node-waves.ts';
export { explainTexts } from './page.ts';
export * from './pictures/index.ts';
export { pointTitles } from './points.ts';
export { type StoryId, storyTexts } from './story.ts';
export {
  spectrumTexts,
  type WaveRowFacts,
  waveProblems,
  waveTexts,
} from './waves.ts';
