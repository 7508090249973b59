import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { inRoot } from '../../../scripts/support/paths.mjs';
import { readBox } from './read-box.ts';

const boxes = readdirSync(inRoot('examples/boxes'));
const textOf = (file: string): string => readFileSync(inRoot(`examples/boxes/${file}`), 'utf8');
// biome-ignore lint/suspicious/noExplicitAny: a box as written in JSON
const beginner = (): any => JSON.parse(textOf('beginner.json'));
const readBoxValue = (value: unknown) => readBox(JSON.stringify(value));
const problemsOf = (value: unknown) => {
  const read = readBoxValue(value);
  return read.ok ? [] : read.problems;
};

describe('a box of parts', () => {
  it.each(boxes)('%s reads without a note', (file) => {
    const read = readBox(textOf(file));
    expect(read.ok ? read.notes : read.problems).toEqual([]);
  });

  it('is in SI units, with what was left out filled in and unknown keys kept', () => {
    const read = readBoxValue({ ...beginner(), colour: 'red' });
    if (!read.ok) throw new Error('does not read');
    expect(read.box.formers[0]).toMatchObject({ count: 1, former: { diameter: 0.07, length: 0.09 } });
    expect(read.box.capacitors[0]).toMatchObject({ gangs: 1, capacitor: { maximum: expect.closeTo(365e-12, 18) } });
    expect(read.box.transformers).toEqual([]);
    expect(read.written).toMatchObject({ colour: 'red' });
    expect(read.notes).toEqual([{ code: 'unknown-key', path: 'colour', near: undefined }]);
  });

  it('names every problem at once, with place and way out', () => {
    const wrong = {
      ...beginner(),
      name: '',
      formers: [
        { former: { kind: 'tub', diameter: '70 mm' } },
        { former: { kind: 'plate', innerDiameter: '80 mm', outerDiameter: '60 mm' } },
      ],
      wires: [{ wire: { size: '0.5 mm' } }],
      detectors: [{ count: 0, detector: { kind: 'germanium' } }],
      limits: { arrangements: ['elements'] },
    };
    const found = problemsOf(wrong);
    expect(found.map(({ path }) => path)).toEqual([
      'name',
      'formers[0].former.kind',
      'wires[0].length',
      'detectors[0].count',
      'limits.arrangements[0]',
    ]);
    expect(found[1].hint).toEqual({ code: 'did-you-mean', option: 'tube' });
    expect(problemsOf({ ...wrong, ...beginner(), formers: wrong.formers.slice(1) })).toMatchObject([
      { path: 'formers[0].former.outerDiameter', expected: { code: 'quantity.above', above: 0.08 } },
    ]);
  });

  it('refuses other files and more parts than a box holds', () => {
    expect(problemsOf([])).toMatchObject([{ path: '', expected: { code: 'box' } }]);
    expect(problemsOf({ format: 'faintwave-set/1', name: 'x' })[0]).toMatchObject({ path: 'format' });
    const full = { ...beginner(), detectors: Array.from({ length: 10_000 }, () => ({ detector: { kind: 'galena' } })) };
    expect(problemsOf(full)).toMatchObject([{ path: 'detectors', expected: { code: 'items.at-most', count: 200 } }]);
    expect(readBox('')).toMatchObject({ ok: false, problems: [{ given: { code: 'empty-file' } }] });
  });
});
