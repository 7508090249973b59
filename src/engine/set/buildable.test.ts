import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readValue } from './read.ts';

const EXAMPLES = new URL('../../../examples/', import.meta.url);
const examples = readdirSync(EXAMPLES).filter((name) => name.endsWith('.json'));

/** Far beyond any part, and just beyond: at either end, and what does not suit its neighbours. */
const FACTORS = [1e-6, 1e-3, 0.1, 0.5, 2, 10, 1e3, 1e6];
const PARTS = ['aerial', 'earth', 'coils', 'tuning', 'arrangement', 'detector', 'load'];

/** Every figure of the parts, with what sets it. */
function figures(
  value: unknown,
  set: (changed: unknown) => void,
): { value: number | string; set: (to: unknown) => void }[] {
  if (typeof value === 'number') return [{ value, set }];
  if (typeof value === 'string') return /^[\d.]+ ?\D*$/.test(value) ? [{ value, set }] : [];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) =>
    figures(inner, (to) => {
      (value as Record<string, unknown>)[key] = to;
    }),
  );
}
const times = (value: number | string, factor: number): number | string =>
  typeof value === 'number' ? value * factor : value.replace(/^[\d.]+/, (digits) => String(Number(digits) * factor));

describe('sizes that do not go together', () => {
  it.each(examples)('are refused with a reason and a figure that is there: %s', (name) => {
    const set = JSON.parse(readFileSync(new URL(name, EXAMPLES), 'utf8'));
    let refused = 0;
    for (const part of PARTS)
      for (const { value, set: change } of figures(set[part], () => {})) {
        for (const factor of FACTORS) {
          change(times(value, factor));
          const read = readValue(set);
          for (const { path, expected, hint } of read.ok ? [] : read.problems) {
            if (expected.code !== 'buildable') continue;
            refused++;
            expect(hint?.code, `${path}: ${value} × ${factor}`).toBe('unbuildable');
          }
        }
        change(value);
      }
    expect(refused).toBeGreaterThan(0);
    expect(readValue(set).ok).toBe(true);
  });
});
