import { describe, expect, test } from 'vitest';
import galena from '../../../examples/medium-wave-galena.json' with { type: 'json' };
import amplifier from '../../../examples/medium-wave-germanium-amplifier.json' with { type: 'json' };
import spider from '../../../examples/spider-coil-earpiece.json' with { type: 'json' };
import { type BuiltSet, builtSet } from '../built/built-set.ts';
import { readValue } from '../set/read.ts';
import { planted } from './cases.ts';
import { signsOf } from './checks.ts';
import { diagnose } from './diagnose.ts';
import { faultsOfSet } from './dictionary.ts';
import { faultModel } from './fault-model.ts';
import { type OhmPlace, ohmPlacesOf, ohmReadings, ohmsOfDevice } from './ohmmeter.ts';
import { touchOf } from './touch.ts';

const builtOf = (written: object): BuiltSet => {
  const read = readValue(written);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return builtSet(read.set);
};

/** What a meter shows at a place of a set with one fault, or with none. */
function readingOf(built: BuiltSet, place: OhmPlace, fault?: string): number {
  expect(ohmPlacesOf(built)).toContain(place);
  const found = faultsOfSet(built, [0], 'day').filter(({ id }) => id === fault);
  expect(found).toHaveLength(fault === undefined ? 0 : 1);
  const set = planted(
    built.circuit,
    found.map((one) => ({ fault: one, severity: 0.5 })),
    [0],
  );
  return ohmReadings(set, [place], built.circuit)[0];
}

const trap = { inductance: '40 µH', capacitance: '766 pF', q: 150 };
const trapped = {
  ...galena,
  arrangement: {
    ...galena.arrangement,
    traps: ['parallel', 'series', 'absorption'].map((kind) => ({ kind, ...trap })),
  },
};

describe('each coil and each fixed part has a reading of its own', () => {
  test.each([0, 1, 2])('the coil of trap %i: open and dry joints show there, and at no other trap', (i) => {
    const built = builtOf(trapped);
    const [own, other] = [i, (i + 1) % 3].map((k) => `across:trap:${k}/coil` as const);
    const [open, dry] = ['open', 'joint-dry'].map((how) => `winding-${how}@trap:${i}/coil`);
    const good = readingOf(built, own);
    expect(good).toBeLessThan(5);
    expect(readingOf(built, own, open)).toBeGreaterThan(2e6);
    expect(readingOf(built, own, dry)).toBeCloseTo(good + 100, 0);
    expect(readingOf(built, other, open)).toBeCloseTo(good, 3);
  });

  test('a capacitor with one wire off: shorted near nothing, otherwise open', () => {
    const built = builtOf(trapped);
    const place = 'alone:trap:0/capacitor';
    expect(readingOf(built, place)).toBe(Number.POSITIVE_INFINITY);
    expect(readingOf(built, place, 'capacitor-shorted@trap:0/capacitor')).toBeCloseTo(0.2, 6);
    expect(readingOf(built, place, 'capacitor-open@trap:0/capacitor')).toBeGreaterThan(2e6);
  });

  test('a leak of the by-pass is its own, whatever lies beside it', () => {
    const built = builtOf(galena);
    expect(readingOf(built, 'alone:by-pass')).toBe(Number.POSITIVE_INFINITY);
    expect(readingOf(built, 'alone:by-pass', 'by-pass-leaky@by-pass')).toBeCloseTo(1000, 3);
    expect(readingOf(built, 'alone:by-pass', 'phones-shorted@load')).toBe(Number.POSITIVE_INFINITY);
  });

  test('the earpiece’s resistor by itself', () => {
    const built = builtOf(spider);
    const place = 'alone:load-resistor';
    const good = readingOf(built, place);
    expect(good).toBeGreaterThan(1e4);
    expect(readingOf(built, place, 'earpiece-resistor-low@load-resistor') / good).toBeCloseTo(0.1, 6);
    expect(readingOf(built, place, 'earpiece-resistor-missing@load-resistor')).toBeGreaterThan(2e6);
  });
});

describe('a pair of detectors', () => {
  const wired = (wiring: string) =>
    builtOf({
      ...galena,
      detector: { ...galena.detector, wiring },
      arrangement: { kind: 'direct', coil: galena.arrangement.coil },
    });

  test.each(['full-wave', 'doubler'])('%s: each is measured by itself, both ways', (wiring) => {
    const built = wired(wiring);
    const [forward, back] = ohmsOfDevice(built.circuit.detector);
    expect(readingOf(built, 'detector-forward')).toBeCloseTo(forward, 6);
    expect(readingOf(built, 'detector-back')).toBeCloseTo(back, 6);
    const leads = (place: OhmPlace) => touchOf({ kind: 'ohms', place }, built);
    expect(leads('detector-forward').leads.map(({ part }) => part)).toEqual(['detector', 'detector']);
    expect(leads('detector-back').leads).toEqual([...leads('detector-forward').leads].reverse());
    expect(leads('detector-forward').parts).toEqual(['second-detector']);
  });

  test('one of a full-wave pair that is open shows', () => {
    expect(readingOf(wired('full-wave'), 'detector-forward', 'pair-half-open')).toBe(Number.POSITIVE_INFINITY);
  });

  test('stretches of its coil show which one is open', () => {
    const built = wired('full-wave');
    const stretches = ohmPlacesOf(built).filter((place) => /^across:coil:0:/.test(place));
    expect(stretches).toHaveLength(2);
    const turns = stretches.map((place) => place.slice('across:coil:0:'.length));
    const open = `winding-open@coil:0:${turns[0]}`;
    expect(readingOf(built, stretches[0], open)).toBeGreaterThan(2e6);
    expect(readingOf(built, stretches[1], open)).toBeLessThan(5);
  });
});

describe('of several capacitors in the way of the signal each is bridged by itself', () => {
  const both = builtOf({ ...amplifier, arrangement: { ...amplifier.arrangement, seriesCapacitor: '100 pF' } });
  const signs = ['series-capacitor', 'coupling-capacitor'].map(
    (part) => `louder-with-capacitor-bridged:${part}` as const,
  );

  test('and names the one that is open', () => {
    const model = faultModel(both, { cases: 2 });
    const first = (bridged: number) => {
      const answered = [
        ...model.bench.stations.map((station) => ({ check: `loudness:${station}`, answer: 0 })),
        { check: 'sign:louder-with-capacitor-bridged', answer: 1 },
        ...signs.map((sign, i) => ({ check: `sign:${sign}`, answer: Number(i === bridged) })),
      ];
      return diagnose(model, answered).causes[0].faults[0].fault.id;
    };
    expect(first(0)).toBe('capacitor-open@series-capacitor');
    expect(first(1)).toBe('capacitor-open@coupling-capacitor');
  });

  test('one alone needs no second question', () => {
    expect(signsOf(both)).toEqual(expect.arrayContaining(signs));
    expect(signsOf(builtOf(amplifier)).filter((sign) => sign.includes(':'))).toEqual([]);
  });

  test('no question is asked of a capacitor beside which a resistor passes the sound', () => {
    const built = builtOf({
      ...galena,
      load: { ...galena.load, equalizer: { resistance: '10 kΩ', capacitance: '0.1 µF' } },
    });
    expect(signsOf(built).some((sign) => sign.startsWith('louder-with-capacitor-bridged'))).toBe(false);
    expect(ohmPlacesOf(built)).toContain('fixed-capacitor');
  });
});

test('the bias cell is looked at where there is one', () => {
  const biased = builtOf({ ...galena, detector: { ...galena.detector, bias: '0.2 V' } });
  expect(signsOf(biased)).toContain('bias-as-described');
  expect(signsOf(builtOf(galena))).not.toContain('bias-as-described');
  expect(touchOf({ kind: 'sign', sign: 'bias-as-described' }, biased).parts).toEqual(['bias-cell']);
});
