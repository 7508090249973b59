/** What the page says, a file for each view or group of widgets. */
export { assumedWords } from './assumed.ts';
export { bandSwitchWords } from './band-switch.ts';
export { beginWords } from './begin.ts';
export {
  aerialWords,
  afterDetectorWords,
  bandWords,
  earthWords,
  earWords,
  loadWords,
  matchingWords,
  tunedCircuitWords,
} from './bench.ts';
export { compareView } from './compare.ts';
export { compareWords, crystalWords, detectorBenchWords, heaterPanelWords, wavesPanelWords } from './detector.ts';
export { dialWords } from './dial.ts';
export { editingWords, settledWords } from './editing.ts';
export { faultsView } from './faults.ts';
export { findView, type TradeOffAxis, tradeOffAxis, tradeOffValue, tradeOffWords } from './find.ts';
export { importWords } from './import.ts';
export { heardWhenWords, logWords } from './log.ts';
export { measureView, readingUnit } from './measure.ts';
export { fieldBenchWords, mapWords, pathWords, stationTableWords, timeWords } from './place.ts';
export { readingWords } from './reading.ts';
export { audioSpectrumPlot, audioSpectrumWords } from './recorded-audio.ts';
export { setWords, sideWords, stationFrequency, trialWords } from './set.ts';
export { keptBoxWords, keptPlaceWords, shelfWords } from './shelf.ts';
export { dialogWords, handbookWords, headerWords, widgetWords } from './shell.ts';
export { impedanceSweepWords, soundCardWords } from './sound-card.ts';
export { fileWords, problemWords, standInWords, storageWords, versionWords } from './storage.ts';
