import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { measuredImpedance } from './measured.ts';
import { readTouchstone } from './touchstone.ts';

describe('a measured table', () => {
  const C = 200e-12;
  const reactance = (f: number) => -1 / (2 * Math.PI * f * C);
  it('follows a capacitance exactly, between points and beyond', () => {
    const table = measuredImpedance(
      [1.6e6, 5e5].map((frequency) => ({ frequency, resistance: 30, reactance: reactance(frequency) })),
    );
    for (const f of [1e5, 5e5, 7e5, 1.2e6, 1.6e6, 3e6]) {
      expect(table.impedanceAt(f).im / reactance(f)).toBeCloseTo(1, 12);
      expect(table.impedanceAt(f).re).toBe(30);
    }
    expect(table.warningsAt(1e6)).toEqual([]);
    expect(table.warningsAt(2e6)).toEqual([{ code: 'aerial.outside-measured-range' }]);
  });
  it('goes through its points', () => {
    fc.assert(
      fc.property(
        fc.uniqueArray(
          fc.record({
            frequency: fc.integer({ min: 1e5, max: 3e6 }),
            resistance: fc.double({ min: 0, max: 1e3, noNaN: true }),
            reactance: fc.double({ min: -1e4, max: 1e4, noNaN: true }),
          }),
          { minLength: 1, maxLength: 20, selector: (p) => p.frequency },
        ),
        (points) => {
          const table = measuredImpedance(points);
          for (const p of points) {
            expect(table.impedanceAt(p.frequency).re).toBeCloseTo(p.resistance, 6);
            expect(table.impedanceAt(p.frequency).im).toBeCloseTo(p.reactance, 6);
          }
        },
      ),
    );
  });
  it('refuses no points, twins and nonsense', () => {
    const p = { frequency: 1e6, resistance: 1, reactance: -5 };
    expect(() => measuredImpedance([])).toThrow(RangeError);
    expect(() => measuredImpedance([p, p])).toThrow(RangeError);
    expect(() => measuredImpedance([{ ...p, reactance: Number.NaN }])).toThrow(RangeError);
    expect(() => measuredImpedance([p]).impedanceAt(0)).toThrow(RangeError);
  });
});

describe('Touchstone one-port files', () => {
  const read = (text: string) => {
    const result = readTouchstone(text);
    if (!result.ok) throw new Error(JSON.stringify(result.problems));
    return result;
  };
  // 20 − j300 Ω at 1 MHz, worked out by hand from the definitions S = (Z − R)/(Z + R) and Y = 1/Z.
  const R = 50;
  const [x, y] = [20, -300];
  const d = (x + R) ** 2 + y * y;
  const s = { re: (x * x - R * R + y * y) / d, im: (2 * R * y) / d };
  const admittance = { re: x / (x * x + y * y), im: -y / (x * x + y * y) };
  const written = (v: { re: number; im: number }, format: string) => {
    const m = Math.hypot(v.re, v.im);
    const angle = (Math.atan2(v.im, v.re) * 180) / Math.PI;
    return format === 'RI' ? `${v.re} ${v.im}` : `${format === 'DB' ? 20 * Math.log10(m) : m} ${angle}`;
  };

  for (const [unit, f] of [
    ['Hz', '1000000'],
    ['kHz', '1e3'],
    ['MHz', '1.0'],
    ['GHz', '.001'],
  ]) {
    for (const format of ['MA', 'DB', 'RI']) {
      it(`S, Z and Y in ${unit}, ${format}, versions 1 and 2`, () => {
        const forms = [
          ['S', s, s],
          ['Z', { re: x, im: y }, { re: x / R, im: y / R }],
          ['Y', admittance, { re: admittance.re * R, im: admittance.im * R }],
        ] as const;
        for (const [parameter, two, one] of forms) {
          const first = read(
            `! made up\n# ${unit} ${parameter} ${format} R ${R}\n${f} ${written(one, format)} ! a point\n`,
          );
          const second = read(
            `[Version] 2.0\n# ${unit.toLowerCase()} ${parameter} ${format} R 75\n[Number of Ports] 1\n[Number of Frequencies] 1\n[Reference]\n${R}\n[Network Data]\n${f} ${written(two, format)}\n[End]\n`,
          );
          for (const result of [first, second]) {
            expect(result.reference).toBe(R);
            expect(result.points).toHaveLength(1);
            expect(result.points[0].frequency).toBeCloseTo(1e6, 3);
            expect(result.points[0].resistance).toBeCloseTo(x, 7);
            expect(result.points[0].reactance).toBeCloseTo(y, 7);
          }
        }
      });
    }
  }

  it('takes the standard’s defaults and says so, ignores a second option line, and reads any line ending', () => {
    const result = read('0.001 0.5 -90\r\n# MHz S RI R 75\r0.002 0.5 -100');
    expect(result.points.map((p) => p.frequency)).toEqual([1e6, 2e6]);
    expect(result.warnings).toEqual([{ code: 'aerial.touchstone-no-option-line' }]);
    // S = −0.5j at 50 Ω: Z = 50 (1 − 0.5j)/(1 + 0.5j) = 30 − 40j.
    expect(result.points[0].resistance).toBeCloseTo(30, 9);
    expect(result.points[0].reactance).toBeCloseTo(-40, 9);
  });

  it('leaves out an open circuit and 0 Hz, and remarks on negative resistance', () => {
    const result = read('# kHz S RI R 50\n0 1 0\n500 1 0\n600 0 -0.5\n700 -1.2 0.1');
    expect(result.points.map((p) => p.frequency)).toEqual([6e5, 7e5]);
    expect(result.warnings.map((w) => w.code)).toEqual([
      'aerial.touchstone-open-points',
      'aerial.measured-negative-resistance',
    ]);
  });

  it('names every problem with its line', () => {
    const problems = (text: string) => {
      const result = readTouchstone(text);
      return result.ok ? [] : result.problems;
    };
    expect(
      problems('# MHz S XX R fifty\n1 0.5\n2 a b\n1.5 1 2 3 4 5 6 7 8\n3 0.5 0\n2.5 0.5 0\n-1 0 0\n[End]'),
    ).toEqual([
      { line: 1, code: 'option-not-known', given: 'XX' },
      { line: 1, code: 'option-resistance', given: 'FIFTY' },
      { line: 2, code: 'three-numbers', counted: 2 },
      { line: 3, code: 'numbers', given: 'a' },
      { line: 4, code: 'three-numbers', counted: 9 },
      { line: 6, code: 'frequency-not-rising', value: 2.5 },
      { line: 7, code: 'negative-frequency', value: -1 },
      { line: 8, code: 'version-2-keyword', keyword: 'End' },
    ]);
    const two = problems('[Version] 2.0\n# MHz H RI\n[Number of Ports] 2\n[Network Data]\n1 2 3');
    expect(two).toEqual([
      { line: 2, code: 'two-port-parameter', parameter: 'H' },
      { line: 3, code: 'one-port', given: '2' },
      { line: 4, code: 'keyword-missing-before-data', keyword: '[Number of Frequencies]' },
      { line: 5, code: 'cut-short' },
    ]);
    expect(problems('')).toHaveLength(1);
    expect(problems('[Version] 3\n[Whatever] <script>')[0]).toMatchObject({ code: 'version', given: '3' });
    expect(problems('x '.repeat(100000)).length).toBe(1);
    expect(problems('x\n'.repeat(100000)).length).toBe(21);
  });

  it('never throws, whatever it is given', () => {
    const piece = fc.constantFrom(
      '[Version] 2.0',
      '[Reference]',
      '# kHz Z RI R 50',
      '[Network Data]',
      '[Begin Information]',
      '1 2 3',
      '4 5',
      '[__proto__]',
      '!',
      'NaN 1 1',
      '1e999 1 1',
      '[End]',
    );
    fc.assert(
      fc.property(fc.array(fc.oneof(piece, fc.string()), { maxLength: 12 }), (pieces) => {
        const result = readTouchstone(pieces.join('\n'));
        if (result.ok)
          expect(result.points.every((p) => Number.isFinite(p.resistance) && Number.isFinite(p.reactance))).toBe(true);
        else expect(result.problems.length).toBeGreaterThan(0);
      }),
      { numRuns: 300 },
    );
  });
});
