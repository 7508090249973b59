import type { Warning } from '../../engine/facts/warning.ts';
import { warningSentence } from './en/index.ts';

/** Warnings as a program reads them: sentences. What is a sentence already stands as it is. */
export const warningTexts = (warnings: readonly (Warning | string)[]): string[] =>
  warnings.map((one) => (typeof one === 'string' ? one : warningSentence(one)));

/**
 * JSON for other programs, two spaces deep: typed arrays as lists, warnings as sentences. A level of nothing (−∞) and a
 * figure that is none become null, as JSON has them.
 */
export const jsonText = (value: unknown): string =>
  JSON.stringify(
    value,
    (key, x) =>
      x instanceof Float64Array
        ? [...x]
        : key === 'warnings' && Array.isArray(x)
          ? warningTexts(x as readonly (Warning | string)[])
          : x,
    2,
  );
