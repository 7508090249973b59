import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it, test } from 'vitest';
import {
  bare,
  type Field,
  fieldsOf,
  isRecord,
  type Path,
  type SchemaNode,
  valueAtPath,
  variantChoices,
  withValueAt,
} from '../../engine/index.ts';
import { changeKind } from './change-kind.ts';
import { figureScale } from './figure-scale.ts';
import { pathText, schemaAt } from './schema-at.ts';
import { sliderScale } from './slider-scale.ts';

const FOLDER = new URL('../../../examples/', import.meta.url);
const EXAMPLES = readdirSync(FOLDER)
  .filter((file) => file.endsWith('.json'))
  .map((file) => [file, JSON.parse(readFileSync(new URL(file, FOLDER), 'utf8')) as unknown] as const);

interface Place {
  readonly field: Field;
  readonly path: Path;
  readonly shown: unknown;
}

/** Every figure of a description that has a slider. */
function* figures(written: unknown, node: SchemaNode, path: Path = []): Generator<Place> {
  const value = valueAtPath(written, path);
  if (bare(node).type === 'array') {
    for (const i of Array.isArray(value) ? value.keys() : []) {
      const item = schemaAt(written, [...path, i]);
      if (item) yield* figures(written, item, [...path, i]);
    }
    return;
  }
  if (!isRecord(value)) return;
  for (const field of fieldsOf(node, value)) {
    const at = [...path, field.key];
    const shown = valueAtPath(written, at) ?? field.fallback;
    if (figureScale(written, field, at, shown)) yield { field, path: at, shown };
    else yield* figures(written, field.schema, at);
  }
}

/** Goes along a slider as the keys do: each step is written, and read again with the scale of what was written. */
function walk(written: unknown, { field, path }: Place, from: unknown, step: 1 | -1): number[] {
  const values: number[] = [];
  let shown = from;
  for (let n = 0; n < 2000; n++) {
    const now = figureScale(withValueAt(written, path, shown), field, path, shown)!;
    values.push(now.value);
    const scale = now.scaleFor(now.value);
    const at = scale.stepOf(now.value);
    if (at + step < 0 || at + step > scale.steps) return values;
    shown = now.write(scale.valueAt(at + step));
  }
  throw new Error(`${pathText(path)} has no end: ${values.slice(-5)}`);
}

const ascends = (values: readonly number[]): boolean => values.every((value, i) => i === 0 || value > values[i - 1]);

describe('every key moves every slider', () => {
  const [, galena] = EXAMPLES.find(([file]) => file.startsWith('medium-wave-galena'))!;
  const coils = variantChoices(schemaAt(galena, ['coils', 0])!)!.choices.map(
    (shape) =>
      [shape, { coils: [valueAtPath(changeKind(galena, ['coils', 0], shape).written, ['coils', 0])] }] as const,
  );
  const all = [...EXAMPLES, ...coils] as [string, unknown][];
  test.each(all)('%s', (_, written) => {
    const found: string[] = [];
    let count = 0;
    for (const place of figures(written, schemaAt(written, [])!)) {
      count++;
      const name = pathText(place.path);
      const { value, scaleFor, write } = figureScale(written, place.field, place.path, place.shown)!;
      const scale = scaleFor(value);
      const up = walk(written, place, place.shown, 1);
      const down = walk(written, place, place.shown, -1);
      const whole = walk(written, place, write(scale.valueAt(0)), 1);
      if (!ascends(up)) found.push(`${name} to the right: ${up}`);
      if (!ascends(down.toReversed())) found.push(`${name} to the left: ${down}`);
      if (!ascends(whole) || whole.length < 3) found.push(`${name} from end to end: ${whole}`);
    }
    expect(found).toEqual([]);
    expect(count).toBeGreaterThan(0);
  });
});

it('has a step of its own for every whole number that equal ratios would round together', () => {
  const scale = sliderScale([1, 56], { whole: true });
  const values = Array.from({ length: scale.steps + 1 }, (_, step) => scale.valueAt(step));
  expect(new Set(values).size).toBe(values.length);
  expect([values[0], values.at(-1)]).toEqual([1, 56]);
  for (const [step, value] of values.entries()) expect(scale.stepOf(value)).toBe(step);
});
