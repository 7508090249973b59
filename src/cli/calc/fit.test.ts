import { describe, expect, test } from 'vitest';
import reference from '../../../reference/measure-fits.json' with { type: 'json' };
import { fitCalculation } from './fit.ts';

const answerOf = (input: unknown): Record<string, never> => {
  const result = fitCalculation.run(input);
  if (!result.ok) throw new Error(result.problems.map((p) => `${p.path}: ${p.message}`).join('\n'));
  return result.answer as unknown as Record<string, never>;
};
const problemsOf = (input: unknown): string[] => {
  const result = fitCalculation.run(input);
  return result.ok ? [] : result.problems.map((p) => `${p.path}: ${p.message}`);
};

interface Shown {
  readonly value: number;
  readonly unit: string;
  readonly standardError: number;
  readonly range: readonly [number, number];
}

const UNITS: Readonly<Record<string, string>> = {
  inductance: 'H',
  selfCapacitance: 'F',
  strayCapacitance: 'F',
  saturationCurrent: 'A',
  ideality: '',
  seriesResistance: 'Ω',
  resonance: 'Hz',
  frequency: 'Hz',
  q: '',
};

describe('calc fit', () => {
  test('answers every kind with value, unit, standard error and range', () => {
    for (const kind of ['resonance', 'dial', 'detector', 'width', 'decay']) {
      const row = reference.rows.find((r) => r.kind === kind) as unknown as { fit: Record<string, number> };
      const answer = answerOf(row);
      for (const [name, value] of Object.entries(row.fit)) {
        const shown = answer[name] as unknown as Shown;
        expect(shown, name).toEqual({
          value: expect.closeTo(value, 6 - Math.ceil(Math.log10(Math.abs(value)))),
          unit: UNITS[name],
          standardError: expect.any(Number),
          range: [expect.any(Number), expect.any(Number)],
        });
      }
    }
  });

  test('names a misread station and where it belongs', () => {
    const row = reference.rows.find((r) => r.kind === 'dial' && r.suspects!.length > 0)!;
    const { fit: _, truth: __, standardError: ___, suspects, ...input } = row;
    const answer = answerOf(input);
    expect(answer.suspects).toEqual(suspects);
    expect(answer.warnings).toEqual([
      expect.stringMatching(/^readings\[5\] \(200 kHz\) does not fit the other readings .* fits 1\d\d(\.\d)? kHz/),
    ]);
  });

  test('says every problem of the readings with path, expected and given', () => {
    expect(
      problemsOf({
        kind: 'detector',
        temperature: '20 kHz',
        points: [
          { voltage: 0, current: '1 µA' },
          { voltage: 0.1, current: -1e-6 },
        ],
      }),
    ).toEqual([
      expect.stringMatching(/^temperature: expected a temperature.*got "20 kHz"/),
      expect.stringMatching(/^points\.0\.voltage: expected a voltage above 0.*got "?0/),
      expect.stringMatching(/^points\.1\.current: expected a current above 0.*got "?-0\.000001/),
    ]);
    expect(problemsOf({ kind: 'detector', temperature: 300, points: [] })[0]).toMatch(
      /^points: expected at least 4 of them, got/,
    );
    expect(problemsOf({ kind: 'colour' })).toEqual([
      expect.stringMatching(/^kind: expected "kind" to be one of "resonance", .*got "colour"/),
    ]);
    const upsideDown = { law: 'semicircular', minimum: '365 pF', maximum: '12 pF' };
    expect(problemsOf({ kind: 'dial', capacitor: upsideDown, readings: [] }).join('\n')).toMatch(
      /capacitor: expected a maximum above the minimum, got/,
    );
  });

  test('refuses readings that no model follows, at the readings', () => {
    const at = (frequencies: number[]) =>
      frequencies.map((frequency, i) => ({ capacitance: (i + 1) * 1e-10, frequency }));
    expect(problemsOf({ kind: 'resonance', points: at([5e5, 6e5, 7e5, 8e5]) })).toEqual([
      expect.stringMatching(/^points: expected frequencies that fall as the capacitance rises, got points/),
    ]);
    expect(problemsOf({ kind: 'resonance', points: Array(4).fill({ capacitance: 1e-10, frequency: 1e6 }) })).toEqual([
      'points: expected at least 2 points that differ, got 1',
    ]);
    expect(problemsOf({ kind: 'decay', sampleRate: 48000, samples: Array(100).fill(0.2) })).toEqual([
      'samples: expected samples of an oscillation that dies away, got none in them',
    ]);
    const capacitor = { law: 'semicircular', minimum: 12e-12, maximum: 365e-12 };
    const readings = [0.1, 0.5, 0.9].map((position, i) => ({ position, frequency: 6e5 + 3e5 * i }));
    expect(problemsOf({ kind: 'dial', capacitor, readings })).toEqual([
      expect.stringMatching(/^readings: expected positions that rise as the frequency falls/),
    ]);
  });
});
