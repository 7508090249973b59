import { describe, expect, it } from 'vitest';
import coast from '../../../examples/coast-by-night.json' with { type: 'json' };
import demo from '../../../examples/medium-wave-galena.json' with { type: 'json' };
import twoBand from '../../../examples/two-band.json' with { type: 'json' };
import { setCircuit } from '../built/set-circuit.ts';
import { normalQuantile } from '../numerics/normal.ts';
import { uniform } from '../numerics/random.ts';
import { readValue } from '../set/read.ts';
import { type Joint, jointFigures } from './joint.ts';
import { measurableFigures } from './measurable.ts';
import { nextMeasurements } from './measure-next.ts';
import { readMeasurements, readReadings } from './readings.ts';
import { resultsOf, usedValues } from './taken-results.ts';

type Written = Record<string, unknown>;
function setOf(written: unknown) {
  const read = readValue(written);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.set;
}
const MEASURED = [
  'coils.0.measured.inductance',
  'tuning.measured.stray',
  'tuning.measured.maximum',
  'aerial.measured.capacitance',
  'earth.measured.resistance',
] as const;

/** An example as it is built, and described wrongly on purpose: former 5 % small, strays doubled, soil five times as dry. */
function misdescribed(
  built: typeof demo | typeof coast | typeof twoBand,
  former: string,
  frequencies: readonly number[],
) {
  const [coil, ...others] = built.coils;
  const times = (written: string, factor: number): string =>
    `${factor * Number.parseFloat(written)} ${written.split(' ')[1]}`;
  const wrong = setOf({
    ...built,
    coils: [{ ...coil, formerDiameter: former }, ...others],
    tuning: { ...built.tuning, stray: times(built.tuning.stray, 2) },
    earth: { ...built.earth, soilResistivity: times(built.earth.soilResistivity, 5) },
  });
  const figures = measurableFigures(setOf(built));
  const trueOf = (path: string): number => figures.find((one) => one.path.join('.') === path)!.calculated.value;
  const own = trueOf('coils.0.measured.selfCapacitance');
  const TRUE = Object.fromEntries(MEASURED.map((path) => [path, trueOf(path)]));
  /** Five readings of the set as built, with the errors of hand instruments. */
  function bench(next: () => number): Written[] {
    const noise = () => normalQuantile(Math.min(1 - 1e-9, Math.max(1e-9, next())));
    const L = TRUE['coils.0.measured.inductance'];
    const [stray, minimum, maximum] = [TRUE['tuning.measured.stray'] + own, 15e-12, TRUE['tuning.measured.maximum']];
    const placeOf = (f: number) => (1 / ((2 * Math.PI * f) ** 2 * L) - stray - minimum) / (maximum - minimum);
    const factor = (error: number) => Math.exp(error * noise());
    return [
      {
        kind: 'dial',
        coil: coil.name,
        capacitor: { law: 'semicircular', minimum: '15 pF', maximum: '500 pF' },
        readings: frequencies.map((frequency) => ({ frequency, position: placeOf(frequency) + 0.006 * noise() })),
      },
      { kind: 'value', of: 'earth.resistance', value: TRUE['earth.measured.resistance'] * factor(0.05), error: '5 %' },
      {
        kind: 'value',
        of: 'aerial.capacitance',
        value: TRUE['aerial.measured.capacitance'] * factor(0.03),
        error: '3 %',
      },
    ];
  }
  const ALL: Record<string, number> = { ...TRUE, 'coils.0.measured.selfCapacitance': own };
  return { wrong, TRUE, ALL, bench };
}
const { wrong, TRUE, ALL, bench } = misdescribed(demo, '59.85 mm', [603e3, 909e3, 1458e3]);

function jointOf(written: readonly unknown[], described = wrong): Joint {
  const read = readMeasurements(written, described);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return resultsOf(described, read.measurements).joint;
}
const figureAt = (joint: Joint, path: string) => joint.figures.find((one) => one.path.join('.') === path)!;

describe.each([
  ['galena set', misdescribed(demo, '59.85 mm', [603e3, 909e3, 1458e3])],
  ['coast set', misdescribed(coast, '59.85 mm', [630e3, 900e3, 1386e3])],
  ['two-band set', misdescribed(twoBand, '59.85 mm', [648e3, 828e3, 1377e3])],
] as const)('a %s described wrongly on purpose, after five readings', (_, { wrong, TRUE, bench }) => {
  const next = uniform(20261130);
  const benches = Array.from({ length: 60 }, () => jointOf(bench(next), wrong));

  it.each(MEASURED)('%s is within its errors of the truth', (path) => {
    const off = benches.map((joint) => {
      const { value, standardError } = figureAt(joint, path).after;
      return (Math.log(TRUE[path] / value) * value) / standardError;
    });
    const held = off.filter((z) => Math.abs(z) < 1.645).length / off.length;
    expect(held, `held ${held}, ${off.slice(0, 5)}`).toBeGreaterThan(0.75);
    expect(Math.max(...off.map(Math.abs))).toBeLessThan(4.5);
  });

  it('what was wrong was outside its errors before, or far less sure', () => {
    // Of coil and capacitor only the product is seen on a dial.
    const swing = (joint: Joint, key: 'before' | 'after') =>
      figureAt(joint, 'coils.0.measured.inductance')[key].value *
      (figureAt(joint, 'tuning.measured.maximum')[key].value - 15e-12);
    const built = TRUE['coils.0.measured.inductance'] * (TRUE['tuning.measured.maximum'] - 15e-12);
    expect(Math.abs(swing(benches[0], 'before') / built - 1)).toBeGreaterThan(0.06);
    const off = benches.map((joint) => Math.abs(swing(joint, 'after') / built - 1)).sort((a, b) => a - b);
    expect(off[benches.length / 2]).toBeLessThan(0.02);
    for (const path of ['tuning.measured.stray', 'earth.measured.resistance']) {
      const { before, after } = figureAt(benches[0], path);
      expect(after.standardError / after.value).toBeLessThan(0.6 * (before.standardError / before.value));
      expect(Math.abs(Math.log(TRUE[path] / after.value))).toBeLessThan(
        0.5 * Math.abs(Math.log(TRUE[path] / before.value)),
      );
    }
  });

  it('coil, strays and capacitor keep their correlations, and each alone would be far less sure than a station’s place', () => {
    const { figures, correlations } = benches[0];
    const at = (path: string) => figures.findIndex((one) => one.path.join('.') === path);
    const [L, max] = [at('coils.0.measured.inductance'), at('tuning.measured.maximum')];
    expect(correlations[L * figures.length + max]).toBeLessThan(-0.5);
    for (let i = 0; i < figures.length; i++) expect(correlations[i * figures.length + i]).toBeCloseTo(1, 9);
  });

  it('gives the same whichever order the readings are in, and nothing of what is withdrawn', () => {
    const readings = bench(uniform(3));
    const [a, b] = [jointOf(readings, wrong), jointOf([...readings].reverse(), wrong)];
    a.figures.forEach((one, i) => {
      expect(b.figures[i].after.value / one.after.value).toBeCloseTo(1, 6);
    });
    expect(
      jointFigures(wrong, []).figures.every(({ before, after }) => Math.abs(after.value / before.value - 1) < 1e-9),
    ).toBe(true);
  });
});

it('readings that the description cannot explain are said to disagree, with the figure furthest off', () => {
  const far = jointOf([{ kind: 'value', of: 'coil.inductance', value: '400 µH', error: '1 %' }]);
  expect(far.chiSquare).toBeGreaterThan(far.highestOfAgreement);
  expect(far.furthest!.property).toBe('coil.inductance');
  const near = jointOf([
    { kind: 'value', of: 'coil.inductance', value: TRUE['coils.0.measured.inductance'], error: '1 %' },
  ]);
  expect(near.chiSquare).toBeLessThan(near.highestOfAgreement);
});

it('what is used goes into the description and comes out of it with its error', () => {
  const read = readMeasurements(bench(uniform(5)), wrong);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  const used = usedValues(resultsOf(wrong, read.measurements));
  const earth = used.find(({ property }) => property === 'earth.resistance')!;
  expect(earth.error).toBeLessThan(0.06);
  expect(earth.method).toBe('value');
  expect(used.map(({ property }) => property)).toEqual(
    expect.arrayContaining(['coil.inductance', 'tuning.stray', 'aerial.capacitance', 'earth.resistance']),
  );
  const circuit = setCircuit(
    setOf({ ...demo, earth: { ...demo.earth, measured: { resistance: { value: earth.value, error: earth.error } } } }),
  );
  expect(circuit.earth.resistance).toBeCloseTo(earth.value, 9);
});

describe('what to measure next', () => {
  const budget = [
    { what: 'phones', effect: [-8, 8], gain: 6 },
    { what: 'earth', effect: [-3, 3], gain: 1 },
    { what: 'hearing', effect: [-3, 3], gain: 1 },
  ] as const;
  const ranges = { soundPressureLevel: [20, 50] as const };

  it('names the measurements that narrow the answer most for the least equipment, ears first', () => {
    const next = nextMeasurements(wrong, { frequency: 909e3, ranges, budget });
    expect(next[0]).toMatchObject({ method: 'dial', narrows: 'dial' });
    expect(next.map(({ method }) => method)).toContain('audibility');
    for (const { before, after } of next) expect(after).toBeLessThan(before);
  });

  it('forecasts how near readings then bring the place of another station to where it is', () => {
    const [dial] = nextMeasurements(wrong, { frequency: 909e3 });
    const next = uniform(8);
    const errors = Array.from({ length: 60 }, () => {
      const joint = jointOf(bench(next));
      const value = (path: string) => figureAt(joint, path).after.value;
      const [max, min] = [value('tuning.measured.maximum'), value('tuning.measured.minimum')];
      const place = (L: number, stray: number, low: number, high: number) =>
        (1 / ((2 * Math.PI * 909e3) ** 2 * L) - stray - low) / (high - low);
      const strays = (of: (path: string) => number) =>
        of('tuning.measured.stray') + of('coils.0.measured.selfCapacitance');
      const told = place(value('coils.0.measured.inductance'), strays(value), min, max);
      const is = place(
        TRUE['coils.0.measured.inductance'],
        strays((path) => ALL[path]),
        15e-12,
        500e-12,
      );
      return (told - is) ** 2;
    });
    const rms = Math.sqrt(errors.reduce((a, b) => a + b) / errors.length);
    expect(dial.after).toBeLessThan(dial.before / 3);
    // One bench more is in those readings than in the forecast.
    expect(2 * 1.645 * rms).toBeLessThan(1.2 * dial.after);
    expect(2 * 1.645 * rms).toBeGreaterThan(0.3 * dial.after);
  });
});

describe('a file of readings', () => {
  it('names every problem at once, with its path', () => {
    const read = readReadings(
      JSON.stringify({
        format: 'faintwave-readings/1',
        measurements: [
          { kind: 'resonanc', points: [] },
          { kind: 'value', of: 'earth.resistance', value: '5 pF' },
          { kind: 'resonance', points: [{ capacitance: '100 pF', frequency: '1 MHz' }] },
        ],
      }),
    );
    if (read.ok) throw new Error('was read');
    expect(read.problems.map(({ path }) => path)).toEqual([
      'measurements[0].kind',
      'measurements[1].value',
      'measurements[2].points',
    ]);
  });

  it('refuses readings from which nothing follows, at the readings', () => {
    const points = [100, 200, 300].map((pF, i) => ({ capacitance: `${pF} pF`, frequency: `${500 + 100 * i} kHz` }));
    const read = readReadings(JSON.stringify({ kind: 'resonance', points }));
    if (read.ok) throw new Error('was read');
    expect(read.problems).toEqual([{ path: 'measurements[0].points', unfit: { code: 'resonance.not-falling' } }]);
  });

  it('reads a table with units in its heading, and names the line of what is wrong in it', () => {
    const table =
      '# kind: resonance\n# coil: main\ncapacitance [pF];frequency [kHz]\n100;1022\n220;704\n330;579\n470;487\n';
    const read = readReadings(table);
    if (!read.ok) throw new Error(JSON.stringify(read.problems));
    const [one] = read.measurements;
    expect(one.coil).toBe('main');
    expect(one.fit!.figures.inductance.value).toBeGreaterThan(1e-4);
    const bad = readReadings(table.replace('220;704', '220;7O4').replace('470;', 'x;'));
    if (bad.ok) throw new Error('was read');
    expect(bad.problems.map(({ path, line }) => [path, line])).toEqual([
      ['points[1].frequency', 5],
      ['points[3].capacitance', 7],
    ]);
  });

  it('refuses what is no file of readings', () => {
    for (const text of ['', '{', '[]', '{"format":"other"}', '{"format":"faintwave-readings/1","measurements":[]}'])
      expect(readReadings(text).ok).toBe(false);
  });
});
