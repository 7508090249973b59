import { InputError } from './command.ts';

const MOST_LETTERS = 60;

/** The one form of an error in an option: `--for: expected 50 ns to 5 s, got "75 mm"`. @param hint a way out, where there is one. */
export const wrongOption = (option: string, expected: string, got: string | undefined, hint?: string): InputError =>
  new InputError(`${option}: expected ${expected}, got ${quoted(got)}${hint ? ` (${hint})` : ''}`);

const quoted = (text: string | undefined): string =>
  text === undefined ? 'nothing' : `"${text.length > MOST_LETTERS ? `${text.slice(0, MOST_LETTERS)}…` : text}"`;
