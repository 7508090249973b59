import { describe, expect, test } from 'vitest';
import { readReadings } from './readings.ts';

const curve = [
  [0.02, 1.8e-7],
  [0.08, 2.37e-6],
  [0.13, 1.13e-5],
  [0.2, 5.86e-5],
  [0.3, 2.11e-4],
] as const;
const rows = (of: (volts: number, amperes: number, i: number) => string): string =>
  curve.map(([volts, amperes], i) => of(volts, amperes, i)).join('\n');

/** Tables as meters and spreadsheets write them. */
const TABLES: Readonly<Record<string, string>> = {
  'names with units': `voltage [V],current [µA]\n${rows((v, i) => `${v},${i * 1e6}`)}`,
  'names in capitals, decimal commas': `Voltage (mV);Current (µA)\r\n${rows((v, i) => `${v * 1000};${i * 1e6}`.replaceAll('.', ','))}`,
  'units in a row of their own': `Voltage,Current\nV,A\n${rows((v, i) => `${v},${i}`)}`,
  'letters with units': `U / V\tI / mA\n${rows((v, i) => `${v}\t${i * 1e3}`)}`,
  'units alone': `mV;A\n${rows((v, i) => `${v * 1000};${i}`)}`,
};

describe('a table of a meter', () => {
  for (const [what, text] of Object.entries(TABLES))
    test(what, () => {
      const read = readReadings(text, 'detector');
      if (!read.ok) throw new Error(JSON.stringify(read.problems));
      const points = read.measurements[0].values.points as { voltage: number; current: number }[];
      points.forEach(({ voltage, current }, i) => {
        expect(voltage / curve[i][0]).toBeCloseTo(1, 9);
        expect(current / curve[i][1]).toBeCloseTo(1, 9);
      });
      expect(read.notRead).toBeUndefined();
      expect(read.measurements[0].fit!.warnings.map(({ code }) => code)).toContain('measure.temperature-supposed');
    });

  test('names the columns that its kind has not', () => {
    const read = readReadings(`No,Time,V,A\n${rows((v, i, k) => `${k + 1},12:00:0${k},${v},${i}`)}`, 'detector');
    expect(read).toMatchObject({ ok: true, notRead: ['No', 'Time'] });
  });

  test('names each broken line, a line with too many cells, and a column that is missing once', () => {
    const broken = readReadings('voltage [V],current [A]\n0.02,OL\n,2e-6\n0,1,3e-6\n0.2,5e-5\n', 'detector');
    expect(broken.ok ? [] : broken.problems.map(({ path, line }) => [path, line])).toEqual([
      ['points[0].current', 2],
      ['points[1].voltage', 3],
      ['points[2].voltage', 4],
      ['points[2]', 4],
    ]);
    const half = readReadings(`voltage [V],lux\n${rows((v, i) => `${v},${i}`)}`, 'detector');
    expect(half.ok ? [] : half.problems.map(({ path, line }) => [path, line])).toEqual([['current', 1]]);
  });

  test('a temperature that is only supposed makes the ideality less sure, and nothing else', () => {
    const of = (text: string) => {
      const read = readReadings(text, 'detector');
      if (!read.ok) throw new Error(JSON.stringify(read.problems));
      return read.measurements[0].fit!;
    };
    const stated = of(`# temperature: 20 °C\n${TABLES['names with units']}`);
    const supposed = of(TABLES['names with units']);
    const n = stated.figures.ideality;
    expect(supposed.figures.ideality.value).toBeCloseTo(n.value, 9);
    expect(supposed.figures.ideality.standardError).toBeCloseTo(Math.hypot(n.standardError, (n.value * 5) / 293.15), 9);
    expect(supposed.figures.saturationCurrent).toEqual(stated.figures.saturationCurrent);
  });
});
