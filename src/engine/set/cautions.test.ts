import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { inRoot } from '../../../scripts/support/paths.mjs';
import { BASE, SETS } from '../../../test/support/every-arrangement.ts';
import { setCircuit } from '../built/set-circuit.ts';
import type { CautionCode } from '../facts/cautions.ts';
import { benchCautions, cautionsFor, hearingCautions } from './cautions.ts';
import type { SetDescription } from './description.ts';
import { readValue } from './read.ts';

const OUTDOORS: readonly CautionCode[] = ['aerial.power-lines', 'aerial.thunder', 'aerial.ladders-and-masts'];
const DUG_IN: readonly CautionCode[] = ['earth.mains-and-gas', 'earth.buried-cables'];
const VALVE: readonly CautionCode[] = ['detector.hot-valve', 'detector.heater-supply', 'detector.accumulator'];
const EARS: readonly CautionCode[] = ['load.clicks-on-ears'];
const OLD: readonly CautionCode[] = ['old-parts'];

const codes = (set: SetDescription): CautionCode[] => cautionsFor(set).map(({ code }) => code);

type Part = 'aerial' | 'earth' | 'detector' | 'load' | 'arrangement';
type Choices = { $ref?: string; oneOf?: Choices[]; properties?: { kind: { const?: string; enum?: string[] } } };
const schema = JSON.parse(readFileSync(inRoot('schema/faintwave-set-1.schema.json'), 'utf8'));

/** Every kind that a description may name. */
const kindsOf = ({ $ref, oneOf, properties }: Choices): string[] =>
  ($ref === undefined ? undefined : kindsOf(schema.$defs[$ref.replace('#/$defs/', '')])) ??
  oneOf?.flatMap(kindsOf) ??
  (properties ? [properties.kind.const ?? '', ...(properties.kind.enum ?? [])] : []);

const read = readValue({ ...BASE, ...SETS.direct, detector: { kind: 'germanium' } });
if (!read.ok) throw new Error(JSON.stringify(read.problems));
/** An outdoor aerial, a germanium diode and phones, with one part of another kind. */
const withKind = (part: Part, kind: string): SetDescription =>
  ({ ...read.set, [part]: { ...read.set[part], kind } }) as SetDescription;

const ALL_SETS: readonly CautionCode[] = [...OUTDOORS, ...DUG_IN, ...EARS, ...OLD];
/** What a kind adds to, or takes from, the cautions of that set. */
const TABLE: Record<Part, { kinds: number; others: Partial<Record<string, readonly CautionCode[]>> }> = {
  aerial: { kinds: 11, others: { frame: [...EARS, ...OLD], 'ferrite rod': [...EARS, ...OLD] } },
  earth: {
    kinds: 8,
    others: Object.fromEntries(
      ['counterpoise', 'measured', 'water pipe'].map((kind) => [
        kind,
        [...OUTDOORS, 'earth.mains-and-gas', ...EARS, ...OLD],
      ]),
    ),
  },
  detector: {
    kinds: 8,
    others: {
      galena: [...OUTDOORS, ...DUG_IN, 'detector.lead-sulphide', 'detector.low-melting-metal', ...EARS, ...OLD],
      mineral: [...OUTDOORS, ...DUG_IN, 'detector.low-melting-metal', ...EARS, ...OLD],
      valve: [...OUTDOORS, ...DUG_IN, ...VALVE, ...EARS, ...OLD],
    },
  },
  load: { kinds: 4, others: { amplifier: [...OUTDOORS, ...DUG_IN, 'load.volume', ...OLD] } },
  arrangement: { kinds: 10, others: {} },
};
/** What the file format calls otherwise than the description read from it. */
const READ_AS: Partial<Record<string, string>> = { touchstone: 'impedance', 'water pipe': 'measured' };

describe('exactly these cautions', () => {
  for (const part of Object.keys(TABLE) as Part[]) {
    const kinds = kindsOf(schema.properties[part]).filter(Boolean);
    it(`knows every kind of ${part}`, () => {
      expect(kinds.length).toBe(TABLE[part].kinds);
      for (const kind of Object.keys(TABLE[part].others)) expect(kinds).toContain(kind);
    });
    it.each(kinds)(`${part}: %s`, (kind) => {
      expect(codes(withKind(part, READ_AS[kind] ?? kind))).toEqual(TABLE[part].others[kind] ?? ALL_SETS);
    });
  }

  it('each is about the part it comes from, and said once', () => {
    const about = (set: SetDescription) => cautionsFor(set).map((c) => c.about);
    expect(about(withKind('detector', 'valve'))).toEqual([
      ...['aerial', 'aerial', 'aerial', 'earth', 'earth'],
      ...['detector', 'detector', 'detector'],
      ...['load', 'old parts'],
    ]);
    expect(about(withKind('detector', 'galena'))).toEqual([
      ...['aerial', 'aerial', 'aerial', 'earth', 'earth'],
      ...['detector', 'detector', 'load', 'old parts'],
    ]);
    for (const kind of ['frame', 'ferrite rod']) expect(about(withKind('aerial', kind))).toEqual(['load', 'old parts']);
  });

  it('an amplifier run from the mains is to be isolated, one from a battery is not warned of', () => {
    const amplified = (supply: string) => {
      const answer = readValue({ ...BASE, ...SETS.direct, load: { kind: 'amplifier', supply } });
      if (!answer.ok) throw new Error(JSON.stringify(answer.problems));
      const own = codes(answer.set).filter((code) => code.startsWith('load.'));
      return { own, model: setCircuit(answer.set).load.cautions };
    };
    expect(amplified('battery')).toEqual({ own: ['load.volume'], model: [] });
    expect(amplified('mains')).toEqual({
      own: ['load.volume', 'load.mains-amplifier'],
      model: ['load.mains-amplifier'],
    });
  });

  it('at the bench: wire ends and solder always, isolation and a licensed person where a part may draw from the mains', () => {
    const bench = (set: SetDescription) => benchCautions(set).map((c) => [c.about, c.code]);
    const always = [
      ['bench', 'bench.wire-ends'],
      ['bench', 'bench.solder'],
    ];
    expect(bench(read.set)).toEqual([...always, ['bench', 'bench.no-mains']]);
    for (const set of [withKind('detector', 'valve'), withKind('load', 'amplifier')])
      expect(bench(set)).toEqual([...always, ['bench', 'bench.mains-isolated'], ['bench', 'bench.licensed-person']]);
  });

  it('hearing where the loudest station is loud, and only there', () => {
    expect(hearingCautions(read.set, 85)).toEqual([{ about: 'load', code: 'load.loud' }]);
    for (const level of [84.9, Number.NaN, undefined]) expect(hearingCautions(read.set, level)).toEqual([]);
    expect(hearingCautions(withKind('load', 'amplifier'), 85)).toEqual([]);
  });
});
