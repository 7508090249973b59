import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Adjustment, Domain, Effort } from '../kinds/adjustment.ts';
import type { SetDescription } from '../set/description.ts';
import { readText } from '../set/read.ts';
import { adjustmentsOf } from './adjustments.ts';

const EXAMPLES = new URL('../../../examples/', import.meta.url);
const setOf = (name: string): SetDescription => {
  const read = readText(readFileSync(new URL(name, EXAMPLES), 'utf8'));
  if (!read.ok) throw new Error(`${name} does not read`);
  return read.set;
};
const names = readdirSync(EXAMPLES).filter((name) => name.endsWith('.json'));
const sets = names.flatMap((name) => {
  const read = readText(readFileSync(new URL(name, EXAMPLES), 'utf8'));
  return read.ok ? [{ name, set: read.set }] : [];
});

/** What a change asks of the builder. Common practice, no source. */
const EFFORT: Readonly<Record<string, Effort>> = {
  'aerial.height': 'outdoors',
  'aerial.length': 'outdoors',
  'aerial.side': 'rewind',
  'aerial.turns': 'rewind',
  'aerial.wire': 'rewind',
  'earth.kind': 'outdoors',
  'earth.length': 'outdoors',
  'earth.side': 'outdoors',
  'earth.count': 'outdoors',
  'tuning.maximum': 'buy',
  'tuning.kind': 'buy',
  'tuning.trimmer': 'rewire',
  'arrangement.aerialTap': 'tap',
  'arrangement.detectorTap': 'tap',
  'arrangement.distance': 'knob',
  'arrangement.seriesCapacitor': 'rewire',
  'arrangement.parallelCapacitor': 'rewire',
  'detector.kind': 'buy',
  'detector.spot': 'knob',
  'load.make': 'buy',
  'load.resistor': 'rewire',
  'load.transformer.ratio': 'buy',
  turns: 'rewind',
  turnsPerLayer: 'rewind',
  wire: 'rewind',
  former: 'rewind',
};
const effortOf = ({ id }: Adjustment): Effort => EFFORT[id.replace(/^coils\[\d+\]\./, '')];

/** How far a value may be changed at once, over what it is now. Common practice, no source. */
const FURTHEST: readonly { readonly id: RegExp; readonly least: number; readonly greatest: number }[] = [
  { id: /^aerial\.(height|length|side)$/, least: 1, greatest: 1.6 },
  { id: /^earth\.(length|side)$/, least: 1, greatest: 1.6 },
  { id: /^earth\.count$/, least: 1, greatest: 2 },
  { id: /\.(turns|turnsPerLayer)$/, least: 0.25, greatest: 4 },
  { id: /^tuning\.maximum$/, least: 1, greatest: 3 },
];
/** Ends that hold whatever the value is now, SI: what a workshop and a garden allow. Common practice, no source. */
const ENDS: readonly { readonly id: RegExp; readonly from: number; readonly to: number }[] = [
  { id: /^aerial\.height$/, from: 0, to: 12 },
  { id: /^aerial\.length$/, from: 0, to: 40 },
  { id: /^aerial\.side$/, from: 0, to: 1.2 },
  { id: /^earth\.side$/, from: 0, to: 1 },
  { id: /^arrangement\.distance$/, from: 5e-3, to: 0.5 },
  { id: /^(arrangement\.(seriesCapacitor|parallelCapacitor)|tuning\.trimmer)$/, from: 10e-12, to: 1e-9 },
  { id: /^load\.resistor$/, from: 10e3, to: 1e6 },
  { id: /^load\.transformer\.ratio$/, from: 0.3, to: 100 },
];

const UNITS: Readonly<Record<string, number>> = { m: 1, mm: 1e-3, pF: 1e-12, Ω: 1 };
const written = (value: unknown): number => {
  if (typeof value === 'number') return value;
  const [number, unit] = String(value).split(' ');
  return Number(number) * UNITS[unit];
};
function endsOf(domain: Domain): readonly [number, number] {
  if (domain.is !== 'choice') return [domain.from, domain.to];
  const values = domain.of.map(written);
  return [Math.min(...values), Math.max(...values)];
}
const isEmpty = ({ domain }: Adjustment): boolean => domain.is === 'choice' && domain.of.length === 0;

describe.each(sets)('what may be adjusted in $name', ({ set }) => {
  const { all } = adjustmentsOf(set);
  it.each(all.map((one) => [one.id, one] as const))('%s asks the effort it should and stays in reach', (id, one) => {
    expect(one.effort).toBe(effortOf(one));
    if (isEmpty(one)) return;
    for (const { id: which, least, greatest } of FURTHEST) {
      if (!which.test(id)) continue;
      const [from, to] = endsOf(one.domain);
      // Whole turns and lengths are rounded.
      expect(from / (one.now as number)).toBeGreaterThan(least * 0.9);
      expect(to / (one.now as number)).toBeLessThan(greatest * 1.02);
    }
    for (const end of ENDS) {
      if (!end.id.test(id)) continue;
      const [from, to] = endsOf(one.domain);
      expect(from).toBeGreaterThanOrEqual(end.from * (1 - 1e-9));
      expect(to).toBeLessThanOrEqual(end.to * (1 + 1e-9));
    }
  });
  it('never offers a tap beyond its coil, or what is there already', () => {
    for (const { id, domain, now } of all) {
      if (/Tap$/.test(id) && domain.is === 'whole') {
        expect(domain.from).toBeGreaterThanOrEqual(1);
        expect(domain.to).toBeLessThanOrEqual(300);
      }
      if (domain.is === 'choice') expect(domain.of).not.toContainEqual(now);
    }
  });
});

describe('what is nearly as large as it may be', () => {
  const slider = setOf('slider-set.json');
  const frame = setOf('frame-aerial.json');
  const inSoil = { soil: 'as the place' } as const;
  const wire = { depth: 0.3, wire: 2e-3, ...inSoil };
  const aerial = { ...slider.aerial, kind: 'inverted-L', height: 9.5, length: 19 } as typeof slider.aerial;
  const at = (environment: SetDescription['place']['environment']): SetDescription => ({
    ...slider,
    aerial,
    place: { ...slider.place, environment },
  });
  const earthed = (earth: object): SetDescription => ({ ...slider, earth: earth as SetDescription['earth'] });

  // Doors, masts and gardens, m. Common practice, no source.
  it.each<[id: string, most: number, set: SetDescription]>([
    ['aerial.side', 1.2, { ...frame, aerial: { ...frame.aerial, side: 1.1 } as typeof frame.aerial }],
    ['aerial.height', 10, at('city')],
    ['aerial.height', 10, at('residential')],
    ['aerial.height', 12, at('rural')],
    ['aerial.height', 14.5, at('quiet rural')],
    ['aerial.length', 20, at('city')],
    ['aerial.length', 25, at('residential')],
    ['aerial.length', 28.5, at('rural')],
    ['earth.length', 2.5, earthed({ kind: 'rod', length: 2, diameter: 0.012, ...inSoil })],
    [
      'earth.count',
      4,
      earthed({ kind: 'rods', length: 2.4, diameter: 0.012, count: 3, spacing: 2, layout: 'row', ...inSoil }),
    ],
    ['earth.side', 1, earthed({ kind: 'plate', side: 0.8, lie: 'level', depth: 0.8, ...inSoil })],
    ['earth.length', 20, earthed({ kind: 'buried wire', length: 15, ...wire })],
    ['earth.count', 16, earthed({ kind: 'radials', count: 12, length: 18.5, ...wire })],
    ['earth.resistance', 20, earthed({ kind: 'measured', resistance: 35 })],
  ])('%s goes to %d and no further', (id, most, set) => {
    const { domain } = adjustmentsOf(set).all.find((one) => one.id === id)!;
    expect(endsOf(domain)[id === 'earth.resistance' ? 0 : 1]).toBeCloseTo(most, 9);
  });
});

describe('a station beyond the dial', () => {
  const turns = (beyond: 'below' | 'above') =>
    adjustmentsOf(setOf('medium-wave-galena.json'), { beyond }).all.find(({ id }) => id === 'coils[0].turns')!.domain;
  it('below it asks for more turns, above it for fewer', () => {
    expect(endsOf(turns('below'))).toEqual([56, 224]);
    expect(endsOf(turns('above'))).toEqual([14, 56]);
  });
});

it('every effort of the list is asked by some change', () => {
  const asked = new Set(sets.flatMap(({ set }) => adjustmentsOf(set).all.map(({ effort }) => effort)));
  expect([...asked].sort()).toEqual(['buy', 'knob', 'outdoors', 'rewind', 'rewire', 'tap']);
});

describe('a coil of which a part is in use', () => {
  const { coils, ...set } = setOf('medium-wave-galena.json');
  const domains = (arrangement: object, beyond?: 'below' | 'above') => {
    const { all } = adjustmentsOf(
      { ...set, coils, arrangement: arrangement as SetDescription['arrangement'] },
      { beyond },
    );
    return new Map(all.map(({ id, domain, now }) => [id as string, { ...domain, now }]));
  };
  const { name: coil } = coils[0];
  it('is tapped within that part, from whose top the detector is fed where nothing else is said', () => {
    const of = domains({ kind: 'tapped', coil, aerialTap: 12, usedTurns: 40 });
    expect(of.get('arrangement.aerialTap')).toMatchObject({ from: 1, to: 40, now: 12 });
    expect(of.get('arrangement.detectorTap')).toMatchObject({ from: 1, to: 40, now: 40 });
  });
  it('is used from a quarter of the turns that it is now, and from its taps upwards', () => {
    const plain = domains({ kind: 'direct', coil, usedTurns: 40 }).get('arrangement.usedTurns');
    expect(plain).toMatchObject({ from: 10, now: 40 });
    const used = (beyond?: 'below' | 'above') =>
      domains({ kind: 'tapped', coil, aerialTap: 12, detectorTap: 22.5, usedTurns: 40 }, beyond).get(
        'arrangement.usedTurns',
      );
    expect(used()).toMatchObject({ from: 23 });
    expect(used('below')).toMatchObject({ from: 40 });
    expect(used('above')).toMatchObject({ from: 23, to: 40 });
  });
});
