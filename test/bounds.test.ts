import { readdirSync, readFileSync } from 'node:fs';
import Ajv from 'ajv/dist/2020.js';
import fc from 'fast-check';
import * as v from 'valibot';
import { describe, expect, it } from 'vitest';
import {
  bare,
  type FieldMetadata,
  isRecord,
  metadataOf,
  objectFor,
  type SchemaNode,
} from '../src/engine/fields/introspect.ts';
import {
  coilModel,
  detectorModel,
  earthModel,
  loadModel,
  tuningModel,
  wireAerialModel,
} from '../src/engine/kinds/models.ts';
import { ferriteRod } from '../src/engine/parts/aerial/ferrite-rod.ts';
import { frameAerial } from '../src/engine/parts/aerial/frame.ts';
import { description, type SetDescription } from '../src/engine/set/description.ts';
import { readValue } from '../src/engine/set/read.ts';
import { withValueAt } from '../src/engine/set/write.ts';
import { problemSentence } from '../src/outputs/words/index.ts';
import { publishedSchema } from '../src/outputs/words/schema-json.ts';
import { arbitrarySet } from './support/arbitrary-set.ts';

type Path = readonly (string | number)[];
type Bounded = { path: Path; meta: FieldMetadata };
const schema = description as unknown as SchemaNode;
const plain = <T>(value: T): T => JSON.parse(JSON.stringify(value)) as T;

/** Numbers of a written description, with what the schema says of each. */
function numbersOf(node: SchemaNode, value: unknown, path: Path = []): Bounded[] {
  const meta = metadataOf(node);
  if (typeof value === 'number') return meta.quantity || meta.number ? [{ path, meta }] : [];
  const { item, items } = bare(node);
  if (Array.isArray(value))
    return value.flatMap((inner, i) => {
      const of = items ? items[i] : item;
      return of ? numbersOf(of, inner, [...path, i]) : [];
    });
  const entries = isRecord(value) ? objectFor(node, value)?.entries : undefined;
  return Object.entries(entries ?? {}).flatMap(([key, entry]) =>
    numbersOf(entry, (value as Record<string, unknown>)[key], [...path, key]),
  );
}

/** Whether each field by itself is accepted; what fields must be together is not for a JSON Schema to say. */
const accepts = (value: unknown): boolean =>
  (v.safeParse(description, value).issues ?? []).every(
    ({ kind, input }) => kind !== 'schema' && typeof input === 'object' && input !== null,
  );

describe('the published schema, read by another program', () => {
  // A quantity is text or a number: a union, which strict mode leaves to this option.
  const accepted = new Ajv({ strict: true, allowUnionTypes: true }).compile(publishedSchema());

  it('is valid, and takes every example', () => {
    const folder = new URL('../examples/', import.meta.url);
    for (const file of readdirSync(folder).filter((name) => name.endsWith('.json')))
      expect(accepted(JSON.parse(readFileSync(new URL(file, folder), 'utf8'))), file).toBe(true);
  });

  it('has both ends of every quantity and number', () => {
    const open: string[] = [];
    const walk = (node: unknown, path: string): void => {
      if (typeof node !== 'object' || node === null) return;
      const { type, minimum, exclusiveMinimum, maximum } = node as Record<string, unknown>;
      const isNumber = [type].flat().some((one) => one === 'number' || one === 'integer');
      if (isNumber && ((minimum ?? exclusiveMinimum) === undefined || maximum === undefined)) open.push(path);
      for (const [key, inner] of Object.entries(node)) walk(inner, `${path}/${key}`);
    };
    walk(publishedSchema(), '');
    expect(open).toEqual([]);
  });

  it('takes and refuses what the reader does, near every bound', () => {
    const near = fc.constantFrom(1 - 1e-9, 1, 1 + 1e-9, 0.999, 1.001, 0.5, 2, -1, 0, 1e6, 1e-6);
    fc.assert(
      fc.property(arbitrarySet(), fc.nat(), fc.constantFrom('min', 'max'), near, (written, pick, end, factor) => {
        const value = plain(written);
        const numbers = numbersOf(schema, value);
        const { path, meta } = numbers[pick % numbers.length];
        const at = meta.bounds?.[end as 'min' | 'max'] ?? 0;
        const changed = withValueAt(value, path, at === 0 ? factor - 1 : at * factor);
        expect(accepted(changed), `${path.join('.')}: ${at} × ${factor}`).toBe(accepts(changed));
      }),
      { numRuns: 400, seed: 5 },
    );
  });
});

const FREQUENCIES = [1.5e5, 5e5, 1e6, 1.7e6];

/** Figures that cannot be 0 or below, of every part of a set. */
function figures(set: SetDescription): Record<string, number> {
  const all: Record<string, number> = {};
  for (const [i, description] of set.coils.entries()) {
    const coil = coilModel(description);
    all[`coil ${i} inductance`] = coil.inductance;
    for (const f of FREQUENCIES) {
      all[`coil ${i} Q at ${f}`] = coil.qAt(f);
      all[`coil ${i} resistance at ${f}`] = coil.resistanceAt(f);
    }
  }
  const tuning = tuningModel(set.tuning);
  all['tuning max'] = tuning.max;
  const { aerial } = set;
  if (aerial.kind === 'frame' || aerial.kind === 'ferrite rod') {
    const loop =
      aerial.kind === 'frame' ? frameAerial({ ...aerial, wire: { diameter: aerial.wire.size } }) : ferriteRod(aerial);
    all['loop inductance'] = loop.inductance;
  } else if (aerial.kind !== 'measured' && aerial.kind !== 'impedance') {
    const model = wireAerialModel(aerial);
    all['aerial capacitance'] = model.capacitance;
    all['aerial inductance'] = model.inductance;
    for (const f of FREQUENCIES) all[`aerial resistance at ${f}`] = model.impedanceAt(f).re;
  }
  earthModel(set.earth);
  detectorModel(set.detector);
  loadModel(set.load);
  return all;
}

describe('whatever is accepted', () => {
  it.each(Array.from({ length: 16 }, (_, i) => i + 1))('has parts with finite figures above 0 (seed %i)', (seed) => {
    let read = 0;
    fc.assert(
      fc.property(arbitrarySet(0.4), (written) => {
        const result = readValue(plain(written));
        if (!result.ok) return;
        read++;
        for (const [what, figure] of Object.entries(figures(result.set)))
          expect(figure > 0 && figure < Number.POSITIVE_INFINITY, `${what}: ${figure}`).toBe(true);
      }),
      { numRuns: Number(process.env.RUNS ?? 25), seed },
    );
    expect(read).toBeGreaterThan(0);
  });

  it('refuses a turn spacing below the wire’s thickness by name', () => {
    const value = JSON.parse(readFileSync(new URL('../examples/medium-wave-galena.json', import.meta.url), 'utf8'));
    value.coils[0].pitch = '0.3 mm';
    const result = readValue(value);
    expect(result.ok ? [] : result.problems.map(problemSentence)).toEqual([
      expect.stringMatching(
        /^coils\[0\]\.pitch: expected at least 0\.457 mm, the thickness of the bare wire, got 0\.3 mm/,
      ),
    ]);
    value.coils[0].pitch = '0.457 mm';
    expect(readValue(value).ok).toBe(true);
    value.coils[0].pitch = 1e-12;
    const tiny = readValue(value);
    expect(tiny.ok ? [] : tiny.problems.map(problemSentence)).toEqual([
      expect.stringMatching(/^coils\[0\]\.pitch: expected a length of at least 0\.02 mm/),
    ]);
  });

  it('refuses wire round what is narrower than itself, and more pegs than fit, by name', () => {
    const problems = (coil: object): string[] => {
      const value = JSON.parse(readFileSync(new URL('../examples/medium-wave-galena.json', import.meta.url), 'utf8'));
      value.coils[0] = { ...value.coils[0], ...coil };
      const result = readValue(value);
      return result.ok ? [] : result.problems.map(problemSentence);
    };
    expect(problems({ formerDiameter: '1 mm', wire: { size: '10 mm' } })).toEqual([
      expect.stringMatching(/^coils\[0\]\.formerDiameter: expected at least 10 mm for wire this thick, got 1 mm/),
    ]);
    expect(problems({ shape: 'basket', pegCircle: '10 mm', pegs: 13 })).toEqual([
      expect.stringMatching(/^coils\[0\]\.pegs: expected at most 9 on a circle of 10 mm/),
    ]);
  });
});
