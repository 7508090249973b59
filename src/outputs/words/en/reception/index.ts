export { coverageSentences } from './dial.ts';
export { besideWords, interferenceSentence, interferenceWords, moreDisturbancesSentence } from './interference.ts';
export { stageFigure, stageLevel, stageSentence, stageTitle } from './stages.ts';
export { outOfRangeWords, stationSentence } from './stations.ts';
export { receptionHeadline, receptionSummary } from './summary.ts';
export { budgetSentence, chanceCell, chanceSentence, uncertaintyHeading } from './uncertainty.ts';
export { verdictWords } from './verdicts.ts';
