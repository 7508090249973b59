import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { inRoot } from '../../scripts/support/paths.mjs';
import {
  type Fields,
  MEASUREMENTS,
  type MeasurementKind,
  measuringCautions,
  readText,
} from '../../src/engine/index.ts';
import { benchCard, readingFieldName } from '../../src/outputs/words/index.ts';

/** Every key of a kind's fields, its groups' and its columns' among them. */
const keysOf = (fields: Fields, within = ''): string[] =>
  Object.entries(fields).flatMap(([key, field]) => [
    `${within}${key}`,
    ...(field.type === 'list' ? keysOf(field.columns, '[].') : []),
    ...(field.type === 'group' ? keysOf(field.fields, `${key}.`) : []),
  ]);

describe.each(Object.keys(MEASUREMENTS) as MeasurementKind[])('%s', (kind) => {
  test('has a name for every field, none of them twice side by side', () => {
    const keys = keysOf(MEASUREMENTS[kind].fields);
    const names = keys.map((key) => readingFieldName(kind, key));
    expect(keys.filter((_, i) => !names[i])).toEqual([]);
    const columns = names.filter((_, i) => keys[i].startsWith('[].'));
    expect(new Set(columns).size).toBe(columns.length);
    const own = names.filter((_, i) => !/[.[]/.test(keys[i]));
    expect(new Set(own).size, own.join()).toBe(own.length);
  });

  test('has a card with a few short steps', () => {
    const { about, steps, writeDown, trap } = benchCard(kind);
    for (const sentence of [about, trap, ...steps]) expect(sentence).toMatch(/^[A-Z0-9].*[.]$/);
    expect(steps.length).toBeGreaterThanOrEqual(2);
    expect(steps.length).toBeLessThanOrEqual(6);
    for (const step of steps) expect(step.length).toBeLessThan(160);
    expect(writeDown).not.toMatch(/[.]$/);
  });

  test('warns of what it has the person touch', () => {
    const { about, steps } = benchCard(kind);
    const text = [about, ...steps].join(' ');
    if (/\bearth\b|connect the aerial\b/i.test(text.replace(/disconnect the aerial|earth terminal/gi, '')))
      expect(measuringCautions(kind)).toContain('earth.mains-and-gas');
    // A coil that stays in its tuned circuit, and a circuit that is tuned, are inside the set.
    if (/tuned circuit|leave coil and capacitor connected|tune (?:in|to|each)\b/i.test(text))
      expect(MEASUREMENTS[kind].equipment).toContain('set');
  });
});

test('heater and supply of a valve set are warned of wherever the set itself is measured', () => {
  const read = readText(readFileSync(inRoot('examples/ferrite-rod-valve-diode.json'), 'utf8'));
  if (!read.ok) throw new Error('the example is valid');
  for (const kind of Object.keys(MEASUREMENTS) as MeasurementKind[])
    if ((MEASUREMENTS[kind].equipment as readonly string[]).includes('set'))
      expect(measuringCautions(kind, read.set), kind).toContain('detector.heater-supply');
});
