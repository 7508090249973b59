/** English. Another language exports the same names; the type `Words` is what it must have. */
export { warningSentence, warningSentences, warningWords } from './warnings/index.ts';
