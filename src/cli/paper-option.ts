import { PAPERS, type PaperName } from '../outputs/sheets/index.ts';
import { choiceOf } from './option-values.ts';

/** --paper; A4 where it is left out. @throws InputError */
export const paperOption = (text = 'a4'): PaperName =>
  choiceOf(text.toLowerCase(), '--paper', Object.keys(PAPERS) as PaperName[]);
