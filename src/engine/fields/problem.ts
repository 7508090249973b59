export { brief } from '../units/brief.ts';

/** One thing wrong with a description; the same sentence in the command line, the page and the sheets. */
export interface Problem {
  /** Where, as "coils[0].turns"; "" for the whole file. */
  readonly path: string;
  readonly expected: string;
  readonly received: string;
  readonly hint: string;
  /** How many others of its kind are not listed; `hint` says so too. */
  readonly more?: number;
}

/** "coils[0].turns: expected …, received …: hint". */
export const problemSentence = ({ path, expected, received, hint }: Problem): string =>
  `${path || 'the file'}: expected ${expected}${received ? `, received ${received}` : ''}${hint ? ` (${hint})` : ''}`;

/** No set nests deeper; walking something far deeper could exhaust the stack. */
const DEEPEST = 100;

/** Whether lists and objects nest beyond all sense. Goes level by level, so that depth cannot hurt it. */
export function tooDeep(value: unknown, deepest = DEEPEST): boolean {
  const nested = (x: unknown): x is object => typeof x === 'object' && x !== null;
  let level: object[] = nested(value) ? [value] : [];
  for (let depth = 0; level.length > 0; depth++) {
    if (depth > deepest) return true;
    level = level.flatMap((x) => Object.values(x).filter(nested));
  }
  return false;
}
