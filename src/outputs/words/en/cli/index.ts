export {
  checkAnswer,
  cliNotes,
  compareAnswer,
  type LongTask,
  listenAnswer,
  matchAnswer,
  moveAnswer,
  pathAnswer,
  reworkAnswer,
  shareAnswer,
  sheetsAnswer,
  stationsAnswer,
  waveAnswer,
} from './answers.ts';
export { type CalcExpectation, type CalcProblem, calcNotes, calcProblemText, type JsonType } from './calc-problems.ts';
export { type CalculationName, calculationWords } from './calculations.ts';
export { type CommandName, type CommandOptions, commandWords } from './commands.ts';
export { curveColumns, curvesAnswer } from './curves.ts';
export { type ContentKind, fileProblems } from './files.ts';
export { filmAnswer } from './film.ts';
export { helpTexts } from './help.ts';
export { logAnswer, logProblemText, logSurprises } from './log.ts';
export { callProblems, type OptionExpectation, optionProblem } from './options.ts';
