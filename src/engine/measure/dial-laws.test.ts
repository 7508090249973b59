import { describe, expect, it, test } from 'vitest';
import demo from '../../../examples/medium-wave-galena.json' with { type: 'json' };
import { coverageOf } from '../../../test/support/simulated-benches.ts';
import { tuningModel } from '../kinds/models.ts';
import { gaussian, uniform } from '../numerics/random.ts';
import { readValue } from '../set/read.ts';
import { fitDial } from './dial-fit.ts';
import { DIAL_LAWS, fitDialOfAnyLaw } from './dial-law-fit.ts';
import { measurableFigures } from './measurable.ts';
import { dialDoubt } from './measure-next.ts';
import { offeredMeasurements } from './offered.ts';
import { readMeasurements } from './readings.ts';
import { capacitanceOn, capacitorOf, type DialCapacitor, positionOn, shapeOfLaw } from './scale-of-capacitor.ts';
import { resultsOf } from './taken-results.ts';
import { withReadings } from './use-readings.ts';

const [MINIMUM, MAXIMUM] = [15e-12, 500e-12];
const capacitorWith = (law: (typeof DIAL_LAWS)[number]): DialCapacitor => ({
  minimum: MINIMUM,
  maximum: MAXIMUM,
  shape: shapeOfLaw(law, MINIMUM, MAXIMUM),
});
const FREQUENCIES = [540e3, 603e3, 693e3, 774e3, 909e3, 1053e3, 1251e3, 1458e3];

function setOf(described: unknown) {
  const read = readValue(described);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read;
}
const withTuning = (tuning: object) => setOf({ ...demo, tuning: { ...demo.tuning, ...tuning } });
const FOIL = {
  kind: 'foil',
  length: '120 mm',
  width: '40 mm',
  minimum: '18 pF',
  thickness: '0.3 mm',
  dielectric: 'paper',
  stray: '8 pF',
};
const POINTS = {
  kind: 'measured',
  points: [
    { scale: '0°', capacitance: '14 pF' },
    { scale: '40°', capacitance: '60 pF' },
    { scale: '100°', capacitance: '210 pF' },
    { scale: '180°', capacitance: '490 pF' },
  ],
};

describe('a dial of any law', () => {
  it.each(DIAL_LAWS)('%s: exact readings give the coil and what is across the capacitor back', (law) => {
    const capacitor = capacitorWith(law);
    const dial = { ...capacitor, L: 190e-6, stray: 21e-12 };
    const fit = fitDial(
      FREQUENCIES.map((frequency) => ({ frequency, position: positionOn(frequency, dial) })),
      capacitor,
    );
    expect(fit.inductance.value / 190e-6).toBeCloseTo(1, 7);
    expect(fit.strayCapacitance.value / 21e-12).toBeCloseTo(1, 5);
    expect(fit.suspects).toEqual([]);
  });

  it.each(DIAL_LAWS)('%s: a misread station is left out, and named by what stands there', (law) => {
    const capacitor = capacitorWith(law);
    const dial = { ...capacitor, L: 190e-6, stray: 21e-12 };
    const normal = gaussian(uniform(7));
    const readings = FREQUENCIES.map((frequency) => ({
      frequency,
      position: positionOn(frequency, dial) + 0.004 * normal(),
    }));
    // Read as 909 kHz where 1053 kHz stands.
    readings[4] = { frequency: 909e3, position: readings[5].position };
    const { suspects, inductance } = fitDial(readings, capacitor);
    expect(suspects.map(({ index }) => index)).toEqual([4]);
    expect(suspects[0].frequencyThere.range[0]).toBeLessThan(1053e3);
    expect(suspects[0].frequencyThere.range[1]).toBeGreaterThan(1053e3);
    expect(Math.abs(inductance.value - 190e-6) / inductance.standardError).toBeLessThan(3.5);
  });

  it('90 % ranges hold the truth nine times in ten for a law that is not even', () => {
    const random = uniform(31);
    const normal = gaussian(random);
    const shares = coverageOf(() => {
      const law = DIAL_LAWS[1 + Math.floor(3 * random())];
      const capacitor = capacitorWith(law);
      const [L, stray, sigma] = [150e-6 + 150e-6 * random(), (10 + 40 * random()) * 1e-12, 0.002 + 0.008 * random()];
      const readings = FREQUENCIES.map((frequency) => ({
        frequency,
        position: positionOn(frequency, { ...capacitor, L, stray }) + sigma * normal(),
      }));
      const fit = fitDial(readings, capacitor);
      return [
        ['inductance', fit.inductance, L],
        ['strayCapacitance', fit.strayCapacitance, stray],
      ];
    }, 400);
    for (const [figure, share] of shares) {
      expect(share, figure).toBeGreaterThan(0.9 - 0.045);
      expect(share, figure).toBeLessThan(0.9 + 0.045);
    }
  });
});

describe('a law that nobody knows', () => {
  it.each(DIAL_LAWS)('%s is chosen from readings that show it', (law) => {
    const capacitor = capacitorWith(law);
    const normal = gaussian(uniform(3));
    const readings = FREQUENCIES.map((frequency) => ({
      frequency,
      position: positionOn(frequency, { ...capacitor, L: 190e-6, stray: 21e-12 }) + 0.003 * normal(),
    }));
    const { laws, warnings } = fitDialOfAnyLaw(readings, { minimum: MINIMUM, maximum: MAXIMUM });
    expect(laws[0].law).toBe(law);
    expect(laws[0].share).toBeGreaterThan(0.9);
    expect(laws.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 9);
    expect(warnings.map(({ code }) => code)).toContain('measure.law-chosen');
  });

  it('ranges over laws hold the truth nine times in ten or more, and are wider than with the law known', () => {
    const random = uniform(77);
    const normal = gaussian(random);
    const widths: number[] = [];
    const shares = coverageOf(() => {
      const capacitor = capacitorWith(DIAL_LAWS[Math.floor(4 * random())]);
      const [L, stray] = [150e-6 + 150e-6 * random(), (10 + 40 * random()) * 1e-12];
      const readings = FREQUENCIES.slice(1, 7).map((frequency) => ({
        frequency,
        position: positionOn(frequency, { ...capacitor, L, stray }) + 0.008 * normal(),
      }));
      const [any, known] = [fitDialOfAnyLaw(readings, capacitor), fitDial(readings, capacitor)];
      const width = ({ range: [low, high] }: { range: readonly [number, number] }) => high - low;
      widths.push(width(any.strayCapacitance) / width(known.strayCapacitance));
      return [
        ['inductance', any.inductance, L],
        ['strayCapacitance', any.strayCapacitance, stray],
      ];
    }, 200);
    for (const [figure, share] of shares) expect(share, figure).toBeGreaterThan(0.85);
    expect(widths.sort((a, b) => a - b)[100]).toBeGreaterThan(1);
  });

  it('takes four different stations', () => {
    const three = FREQUENCIES.slice(0, 3).map((frequency, i) => ({ frequency, position: 0.8 - 0.2 * i }));
    expect(() => fitDialOfAnyLaw(three, { minimum: MINIMUM, maximum: MAXIMUM })).toThrow();
  });
});

describe('the dial of a set', () => {
  const SETS = [
    ['semicircular', withTuning({})],
    ['square law', withTuning({ law: 'square-law' })],
    ['logarithmic with a trimmer', withTuning({ law: 'logarithmic', minimum: '20 pF', trimmer: '12 pF' })],
    ['straight-line frequency with a padder', withTuning({ law: 'straight-line frequency', padder: '1 nF' })],
    ['foil', setOf({ ...demo, tuning: FOIL })],
    ['measured points', setOf({ ...demo, tuning: POINTS })],
  ] as const;

  it.each(SETS)('%s: runs as the capacitor of the circuit does', (_, { set }) => {
    const dial = capacitorOf(set)!;
    const model = tuningModel({ ...set.tuning, stray: 0, trimmer: 0 });
    for (const p of [0, 0.05, 0.3, 0.62, 0.97, 1])
      expect(capacitanceOn(p, dial) / model.capacitanceAt(p)).toBeCloseTo(1, 9);
    for (const beyond of [-0.02, 1.04]) {
      const f = 1 / (2 * Math.PI * Math.sqrt(2e-4 * (capacitanceOn(beyond, dial) + 9e-12)));
      expect(positionOn(f, { ...dial, L: 2e-4, stray: 9e-12 })).toBeCloseTo(beyond, 6);
    }
  });

  it.each(SETS)('%s: readings without a word on the capacitor are weighed against the description', (_, read) => {
    const { set } = read;
    const figure = (property: string) =>
      measurableFigures(set).find((one) => one.property === property)!.calculated.value;
    const dial = {
      ...capacitorOf(set)!,
      L: 1.06 * figure('coil.inductance'),
      stray: 2 * figure('tuning.stray') + set.tuning.trimmer + figure('coil.selfCapacitance'),
    };
    const readings = [0.12, 0.3, 0.5, 0.7, 0.9].map((position) => ({
      position,
      frequency: 1 / (2 * Math.PI * Math.sqrt(dial.L * (capacitanceOn(position, dial) + dial.stray))),
    }));
    const taken = withReadings(set, read.written, [{ kind: 'dial', coil: 'main', readings }]);
    if (!taken.ok) throw new Error(JSON.stringify(taken.problems));
    const { joint, results } = taken.result;
    const [{ figures }] = results;
    expect(figures.find(({ name }) => name === 'inductance')!.measured.value / dial.L).toBeCloseTo(1, 3);
    // Trimmer and self-capacitance are the circuit's already: only what is left is strays.
    const stray = figures.find(({ property }) => property === 'tuning.stray')!;
    expect(stray.measured.value / (2 * figure('tuning.stray'))).toBeCloseTo(1, 1);
    const all = figures.find(({ name }) => name === 'acrossCapacitor')!;
    expect(all.measured.value / dial.stray).toBeCloseTo(1, 1);
    const { before, after } = joint.figures.find(({ property }) => property === 'tuning.stray')!;
    expect(after.standardError / after.value).toBeLessThan(0.8 * (before.standardError / before.value));
    expect(taken.used.map(({ property }) => property)).toContain('coil.inductance');
  });

  it.each(SETS)('%s: a card is offered, and what a dial would narrow', (_, { set }) => {
    expect(offeredMeasurements(set, { frequency: 909e3 }, []).map(({ kind }) => kind)).toContain('dial');
    const doubt = dialDoubt(set, 909e3)!;
    const { before, after } = doubt.narrowing(doubt.ends);
    expect(after).toBeLessThan(before);
  });

  const readings = FREQUENCIES.map((frequency, i) => ({ frequency, position: 0.9 - 0.11 * i }));
  const stated = (law: string) => ({
    kind: 'dial',
    coil: 'main',
    capacitor: { law, minimum: '15 pF', maximum: '500 pF' },
    readings,
  });
  const warningsOf = (set: ReturnType<typeof setOf>['set'], reading: object) => {
    const read = readMeasurements([reading], set);
    if (!read.ok) throw new Error(JSON.stringify(read.problems));
    const { results, joint } = resultsOf(set, read.measurements);
    return { codes: results[0].warnings.map(({ code }) => code), joint, dial: read.measurements[0].fit!.dial! };
  };

  test('readings that state another law than the description has say so, and count by the described one', () => {
    const { set } = withTuning({ law: 'square-law' });
    const { codes, dial } = warningsOf(set, stated('semicircular'));
    expect(codes).toContain('measure.other-law');
    expect(dial.isOfSet).toBe(true);
    expect(dial.capacitor.shape!.shareAt(0.5)).toBeCloseTo(shapeOfLaw('square-law', 15e-12, 500e-12)!.shareAt(0.5), 9);
    expect(warningsOf(set, stated('square-law')).codes).not.toContain('measure.other-law');
  });

  test('a described law that the readings exclude is named, and the readings do not move the capacitor by it', () => {
    const capacitor = capacitorWith('straight-line frequency');
    const seen = {
      kind: 'dial',
      coil: 'main',
      capacitor: { law: 'unknown', minimum: '15 pF', maximum: '500 pF' },
      readings: FREQUENCIES.map((frequency) => ({
        frequency,
        position: positionOn(frequency, { ...capacitor, L: 190e-6, stray: 21e-12 }),
      })),
    };
    const { set } = withTuning({});
    const { codes, joint, dial } = warningsOf(set, seen);
    expect(codes).toContain('measure.law-not-as-described');
    expect(dial.isOfSet).toBe(false);
    const { before, after } = joint.figures.find(({ property }) => property === 'tuning.maximum')!;
    expect(after.value / before.value).toBeCloseTo(1, 9);
    const described = withTuning({ law: 'straight-line frequency' });
    expect(warningsOf(described.set, seen).codes).not.toContain('measure.law-not-as-described');
  });

  test('a fixed capacitor has no dial: readings without their capacitor are refused, with it they say so', () => {
    const { set } = setOf({ ...demo, tuning: { kind: 'fixed', capacitance: '200 pF' } });
    const { capacitor: _, ...without } = stated('semicircular');
    expect(readMeasurements([without], set)).toMatchObject({
      ok: false,
      problems: [{ unfit: { code: 'dial.no-scale' } }],
    });
    expect(readMeasurements([without])).toMatchObject({
      ok: false,
      problems: [{ unfit: { code: 'dial.no-capacitor' } }],
    });
    expect(warningsOf(set, stated('semicircular')).codes).toContain('measure.dial-not-described');
  });
});
