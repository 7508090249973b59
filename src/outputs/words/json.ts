import type { Warned } from '../../engine/facts/warning.ts';
import { warningSentences } from './index.ts';

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
          ? warningSentences(x as readonly Warned[])
          : x,
    2,
  );
