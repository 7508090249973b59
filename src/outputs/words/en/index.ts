/** English. Another language exports the same names; the type `Words` is what it must have. */

export { detectorShortNames } from './detectors.ts';
export { partName, partTitle, partWords, terminalWords } from './parts.ts';
export { warningSentence, warningSentences, warningWords } from './warnings/index.ts';
