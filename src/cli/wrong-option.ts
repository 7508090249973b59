import { type OptionExpectation, optionProblem } from '../outputs/words/index.ts';
import { InputError } from './command.ts';

/** An option that was given wrongly. @param given as it was written; undefined for nothing. @param hint a way out, where there is one. */
export const wrongOption = (
  option: string,
  expected: OptionExpectation,
  given: string | undefined,
  hint?: string,
): InputError => new InputError(optionProblem(option, expected, given, hint));
