import { describe, expect, it } from 'vitest';
import { type NetworkRead, readNetwork } from './touchstone.ts';

const read = (text: string) => {
  const result = readNetwork(text);
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result;
};
const problems = (text: string) => {
  const result: NetworkRead = readNetwork(text);
  return result.ok ? [] : result.problems;
};

// A series resistor of 50 Ω between ports of 50 Ω: S11 = 1/3, S21 = 2/3. Its Z matrix is infinite, its
// Y matrix ±0.02 S; a shunt resistor of 50 Ω: S11 = −1/3, S21 = 2/3, all of Z 50 Ω.
const THIRD = 1 / 3;
const header = (parameter: string, format = 'RI', R = 50) => `# MHz ${parameter} ${format} R ${R}\n`;
const two = (body: string, keywords = '[Two-Port Data Order] 21_12', parameter = 'S') =>
  `[Version] 2.0\n${header(parameter)}[Number of Ports] 2\n${keywords}\n[Number of Frequencies] 1\n[Network Data]\n${body}\n[End]\n`;

describe('Touchstone files of two ports', () => {
  const expectMatrix = (text: string, expected: readonly number[]) => {
    const { ports, points } = read(text);
    expect(ports).toBe(2);
    expect(points[0].frequency).toBe(1e6);
    points[0].s.forEach(({ re, im }, i) => {
      expect(re).toBeCloseTo(expected[i], 9);
      expect(im).toBeCloseTo(0, 9);
    });
  };

  it('has S11 S21 S12 S22 in version 1, and in version 2 the order that is stated', () => {
    const row = '1 0.1 0 0.2 0 0.3 0 0.4 0';
    expectMatrix(`${header('S')}${row}`, [0.1, 0.3, 0.2, 0.4]);
    expectMatrix(two(row), [0.1, 0.3, 0.2, 0.4]);
    expectMatrix(two(row, '[Two-Port Data Order] 12_21'), [0.1, 0.2, 0.3, 0.4]);
    expectMatrix(
      two('1 0.1 0 0.2 0 0.4 0', '[Two-Port Data Order] 12_21\n[Matrix Format] Upper'),
      [0.1, 0.2, 0.2, 0.4],
    );
    expectMatrix(
      two('1 0.1 0 0.2 0 0.4 0', '[Two-Port Data Order] 21_12\n[Matrix Format] Lower'),
      [0.1, 0.2, 0.2, 0.4],
    );
  });

  it('makes S of Z and Y, in units of the reference in version 1, in ohms and siemens in version 2', () => {
    expectMatrix(`${header('Z')}1 1 0 1 0 1 0 1 0`, [-THIRD, 2 * THIRD, 2 * THIRD, -THIRD]);
    expectMatrix(two('1 50 0 50 0 50 0 50 0', '[Two-Port Data Order] 21_12', 'Z'), [
      -THIRD,
      2 * THIRD,
      2 * THIRD,
      -THIRD,
    ]);
    expectMatrix(`${header('Y')}1 1 0 -1 0 -1 0 1 0`, [THIRD, 2 * THIRD, 2 * THIRD, THIRD]);
    expectMatrix(two('1 0.02 0 -0.02 0 -0.02 0 0.02 0', '[Two-Port Data Order] 21_12', 'Y'), [
      THIRD,
      2 * THIRD,
      2 * THIRD,
      THIRD,
    ]);
  });

  it('reads magnitude and angle, and decibels and angle', () => {
    expectMatrix(`${header('S', 'MA')}1 0.5 180 0.2 0 0.2 0 0.5 360`, [-0.5, 0.2, 0.2, 0.5]);
    expectMatrix(`${header('S', 'DB')}1 -20 0 0 0 0 0 -20 180`, [0.1, 1, 1, -0.1]);
  });

  it('one port: S as they are, Z and Y made S', () => {
    expect(read(`${header('S')}1 0.25 -0.5`)).toMatchObject({ ports: 1, points: [{ s: [{ re: 0.25, im: -0.5 }] }] });
    for (const text of [`${header('Z')}1 2 0`, `${header('Y')}1 0.5 0`, `${header('S')}1 ${THIRD} 0`])
      expect(read(text).points[0].s[0].re).toBeCloseTo(THIRD, 12);
  });

  it('passes noise over, behind falling frequencies in version 1 and its keyword in version 2', () => {
    const rows = '1 0.1 0 0.2 0 0.3 0 0.4 0\n2 0.1 0 0.2 0 0.3 0 0.4 0';
    expect(read(`${header('S')}${rows}\n1 3 0.5 40 0.2\n2 3 0.5 40 0.2\n`).points).toHaveLength(2);
    const noise = two('1 0.1 0 0.2 0 0.3 0 0.4 0', '[Two-Port Data Order] 21_12\n[Number of Noise Frequencies] 1');
    expect(read(noise.replace('[End]', '[Noise Data]\n1 3 0.5 40 0.2\n[End]')).points).toHaveLength(1);
  });

  it('takes references on one line or two, and no two different ones', () => {
    const row = '1 0 0 1 0 1 0 0 0';
    const order = '[Two-Port Data Order] 21_12\n';
    expect(read(two(row, `${order}[Reference] 75 75`)).reference).toBe(75);
    expect(read(two(row, `${order}[Reference]\n75\n75`)).reference).toBe(75);
    expect(problems(two(row, `${order}[Reference] 50 75`))).toEqual([{ line: 5, code: 'references-differ' }]);
  });

  it('names every problem with its line', () => {
    expect(
      problems(`${header('H')}1 0.1 0 0.2 0 0.3 0 0.4 0\n2 0.1 0 0.2\n3 0,1 0 0 0 0 0 0 0\n0.5 0 0 0 0 0 0 0 0\nx`),
    ).toEqual([
      { line: 1, code: 'parameter-not-read', parameter: 'H' },
      { line: 3, code: 'nine-numbers', counted: 4, least: 9 },
      { line: 4, code: 'decimal-comma', given: '0,1' },
      { line: 5, code: 'frequency-not-rising', value: 0.5 },
      { line: 6, code: 'numbers', given: 'x' },
    ]);
    expect(problems(`${header('S')}1 2 3 4`)).toEqual([{ line: 2, code: 'three-or-nine-numbers', counted: 4 }]);
    expect(problems(two('1 2 3').replace('Ports] 2', 'Ports] 3'))[0]).toEqual({ line: 3, code: 'ports', given: '3' });
    expect(problems('PK\u0003\u0004\u0000\u0000')).toEqual([{ line: 1, code: 'binary' }]);
    expect(problems(`${header('Z')}1 -1 0 0 0 0 0 -1 0`)).toEqual([{ line: 2, code: 'no-scattering' }]);
  });
});
