/** English. Another language exports the same names; the type `Words` is what it must have. */

export { detectionLawWords } from './detection/law.ts';
export { detectorName, detectorShortNames } from './detectors.ts';
export * from './explain/index.ts';
export { listeningTexts } from './listening.ts';
export { readingWords } from './page/reading.ts';
export { partName, partTitle, partWords, terminalWords } from './parts.ts';
export {
  axisNames,
  bandPlotWords,
  coveragePlotWords,
  detectorPlotWords,
  heaterPlotWords,
  profileWords,
  qWords,
  resonanceWords,
} from './plots.ts';
export {
  besideWords,
  coverageSentences,
  interferenceSentence,
  interferenceWords,
  outOfRangeWords,
  receptionSummary,
  stageLevel,
  stageSentence,
  stageTitle,
  stationSentence,
  verdictWords,
} from './reception/index.ts';
export {
  type SoundFileProblem,
  type SoundFileWarning,
  soundFileProblem,
  soundFileWarning,
} from './sound-files.ts';
export { coverageWords, MATCHED_NAMES, matchWords } from './vary/matches.ts';
export { moveWords } from './vary/moves.ts';
export { settingsWords } from './vary/settings.ts';
export { suggestionCosts, suggestionEffect, suggestionWords } from './vary/suggestions.ts';
export { warningSentence, warningSentences, warningWords } from './warnings/index.ts';
