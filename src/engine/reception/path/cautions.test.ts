import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { inRoot } from '../../../../scripts/support/paths.mjs';
import { BASE, SETS } from '../../../../test/support/every-arrangement.ts';
import { setCircuit } from '../../built/set-circuit.ts';
import type { SetDescription } from '../../set/description.ts';
import { readValue } from '../../set/read.ts';
import { cautionsFor } from './cautions.ts';

type Hazard =
  | 'power lines'
  | 'thunder'
  | 'mains earth'
  | 'galena'
  | 'hot valve'
  | 'heater supply'
  | 'accumulator'
  | 'volume'
  | 'old parts';

/** Each hazard by the words without which its caution is none. */
const HAZARDS: Record<Hazard, readonly RegExp[]> = {
  'power lines': [/never/i, /power lines/, /\bnear\b/, /\bover\b/, /\bunder\b/],
  thunder: [/thunder/, /disconnect the aerial/, /earth outside/, /arrester/, /electrical code/],
  'mains earth': [/never/i, /mains neutral/, /gas pipe/, /mains earth/, /licensed/],
  galena: [/lead sulphide/, /wash your hands/, /do not eat/, /do not grind/],
  'hot valve': [/hot/, /cool before/, /heater off before/],
  'heater supply': [/short circuit/, /fuse/, /isolated/],
  accumulator: [/acid/, /explosive/, /flame/, /water/],
  volume: [/volume down/],
  'old parts': [/asbestos/, /PCB/, /radium/, /selenium/, /unopened/],
};
const OUTSIDE: readonly Hazard[] = ['power lines', 'thunder', 'mains earth'];
const VALVE: readonly Hazard[] = ['hot valve', 'heater supply', 'accumulator'];

/** Which hazards the cautions name; each caution must name exactly one. */
function hazards(set: SetDescription): string[] {
  return cautionsFor(set, []).map(({ text }) => {
    const named = Object.entries(HAZARDS).filter(([, words]) => words.every((w) => w.test(text)));
    return named.length === 1 ? named[0][0] : `? ${text}`;
  });
}

type Part = 'aerial' | 'earth' | 'detector' | 'load' | 'arrangement';
type Choices = { oneOf?: Choices[]; properties?: { kind: { const?: string; enum?: string[] } } };
const schema = JSON.parse(readFileSync(inRoot('schema/faintwave-set-1.schema.json'), 'utf8'));

/** Every kind that a description may name. */
const kindsOf = ({ oneOf, properties }: Choices): string[] =>
  oneOf?.flatMap(kindsOf) ?? (properties ? [properties.kind.const ?? '', ...(properties.kind.enum ?? [])] : []);

const read = readValue({ ...BASE, ...SETS.direct, detector: { kind: 'germanium' } });
if (!read.ok) throw new Error(JSON.stringify(read.problems));
/** An outdoor aerial, a germanium diode and phones, with one part of another kind. */
const withKind = (part: Part, kind: string): SetDescription =>
  ({ ...read.set, [part]: { ...read.set[part], kind } }) as SetDescription;

const ALL_SETS: readonly Hazard[] = [...OUTSIDE, 'old parts'];
/** What a kind adds to, or takes from, the cautions of that set. */
const TABLE: Record<Part, { kinds: number; others: Partial<Record<string, readonly Hazard[]>> }> = {
  aerial: { kinds: 11, others: { frame: ['old parts'], 'ferrite rod': ['old parts'] } },
  earth: { kinds: 8, others: {} },
  detector: {
    kinds: 8,
    others: { galena: [...OUTSIDE, 'galena', 'old parts'], valve: [...OUTSIDE, ...VALVE, 'old parts'] },
  },
  load: { kinds: 4, others: { amplifier: [...OUTSIDE, 'volume', 'old parts'] } },
  arrangement: { kinds: 10, others: {} },
};

describe('exactly these cautions', () => {
  for (const part of Object.keys(TABLE) as Part[]) {
    const kinds = kindsOf(schema.properties[part]).filter(Boolean);
    it(`knows every kind of ${part}`, () => {
      expect(kinds.length).toBe(TABLE[part].kinds);
      for (const kind of Object.keys(TABLE[part].others)) expect(kinds).toContain(kind);
    });
    it.each(kinds)(`${part}: %s`, (kind) => {
      expect(hazards(withKind(part, kind))).toEqual(TABLE[part].others[kind] ?? ALL_SETS);
    });
  }

  it('each is about the part it comes from, and said once', () => {
    const about = (set: SetDescription, ...load: string[]) => cautionsFor(set, load).map((c) => c.about);
    expect(about(withKind('detector', 'valve'), 'x', 'x')).toEqual([
      ...['aerial', 'aerial', 'earth'],
      ...['detector', 'detector', 'detector'],
      ...['load', 'old parts'],
    ]);
    expect(about(withKind('detector', 'galena'))).toEqual(['aerial', 'aerial', 'earth', 'detector', 'old parts']);
  });

  it('an amplifier run from the mains is to be isolated, one from a battery is not warned of', () => {
    const load = (supply: string) => {
      const answer = readValue({ ...BASE, ...SETS.direct, load: { kind: 'amplifier', supply } });
      if (!answer.ok) throw new Error(JSON.stringify(answer.problems));
      return setCircuit(answer.set).load.cautions;
    };
    expect(load('battery')).toEqual([]);
    expect(load('mains')).toEqual([expect.stringMatching(/mains.*isolated.*isolating transformer/)]);
  });
});
