import { callProblems } from '../outputs/words/index.ts';
import { InputError } from './command.ts';

/**
 * Options that go with certain endings of --out only are refused with others, not ignored.
 * @param ending of the file; undefined for none. @param targets how the ways to write it are called.
 * @throws InputError
 */
export function needsEnding(
  values: Readonly<Record<string, unknown>>,
  options: readonly string[],
  ending: string | undefined,
  endings: readonly string[],
  targets: readonly string[] = [],
): void {
  if (ending !== undefined && endings.includes(ending)) return;
  const option = options.find((name) => values[name] !== undefined);
  if (option) throw new InputError(callProblems.needsEnding(`--${option}`, endings, targets));
}
