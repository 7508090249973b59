import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { setCircuit } from '../built/set-circuit.ts';
import { readValue } from '../set/read.ts';
import { drawnInputs } from './drawn-inputs.ts';

// biome-ignore lint/suspicious/noExplicitAny: a description as written.
const inputsOf = (example: string, change: (written: any) => void = () => {}) => {
  const written = JSON.parse(readFileSync(new URL(`../../../examples/${example}.json`, import.meta.url), 'utf8'));
  change(written);
  const read = readValue(written);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return drawnInputs(setCircuit(read.set));
};

describe('what is drawn for a set', () => {
  it('has each once, one for all stations or one for each, rising from its 5th percentile to its 95th', () => {
    const inputs = inputsOf('medium-wave-galena');
    const names = inputs.map(({ input, station }) => `${input}/${station ?? 'all'}`);
    expect(new Set(names).size).toBe(names.length);
    for (const { input, low, middle, high, source } of inputs) {
      expect(low, input).toBeLessThan(middle);
      expect(middle, input).toBeLessThan(high);
      expect(source, input).not.toBe('');
    }
    expect(inputs.filter(({ input }) => input === 'site').map(({ station }) => station)).toEqual([
      0, 1, 2, 3, 4, 5, 6, 7,
    ]);
    expect(inputs.filter(({ input }) => input === 'ground')).toHaveLength(1);
  });

  it('says what is drawn together, in its units', () => {
    const inputs = inputsOf('medium-wave-galena');
    const ideality = inputs.find(({ input }) => input === 'ideality')!;
    expect(ideality.follows).toEqual([{ input: 'saturation current', share: 0.6 }]);
    expect(ideality).toMatchObject({ kind: 'difference', unit: '' });
    expect(inputs.find(({ input }) => input === 'sensitivity')).toMatchObject({ low: -8, high: 8, unit: 'dB' });
    // A resistivity that is given is of the spot; a soil of a kind is the ground's.
    expect(inputs.find(({ input }) => input === 'soil')!.follows).toBeUndefined();
    const loam = inputsOf('spider-coil-earpiece').find(({ input }) => input === 'soil')!;
    expect(loam.follows!.map(({ input }) => input)).toEqual(['ground']);
    expect(loam.follows![0].share).toBeLessThan(-0.2);
  });

  it('has a field that was measured in place of ground and site, and a sky wave by night', () => {
    const one = (input: string, inputs: ReturnType<typeof inputsOf>) =>
      inputs.filter((i) => i.input === input && (i.station ?? 0) === 0);
    const measured = inputsOf('medium-wave-galena', (d) => {
      d.place.stations = [d.place.stations[0]];
      d.place.stations[0].measured = { fieldStrength: { value: '15 mV/m', error: 0.01 } };
    });
    expect(one('site', measured)).toEqual([]);
    expect(one('ground', measured)).toEqual([]);
    expect(one('field', measured)[0].high).toBeCloseTo(20 * Math.log10(Math.exp(1.645 * 0.01)), 3);
    const heard = inputsOf('medium-wave-galena', (d) => {
      d.load.measured = { sensitivity: { value: 100, error: 2 } };
      for (const i of [1, 3]) d.place.stations[i].measured = { fieldStrength: { value: '15 mV/m', error: 0.1 } };
      const field = (i: number) => `place.stations[${i}].fieldStrength`;
      d.correlations = [
        { first: 'load.sensitivity', second: field(1), correlation: -0.6 },
        { first: field(3), second: 'load.sensitivity', correlation: -0.5 },
        { first: field(1), second: field(3), correlation: 0.7 },
      ];
    });
    const follows = (station: number) => heard.find((one) => one.input === 'field' && one.station === station)!.follows;
    expect(follows(1)).toEqual([{ input: 'sensitivity', share: expect.closeTo(-0.6, 12) }]);
    // Of what the phones do not say already: 0.7 − 0.6·0.5 of a deviate of 0.8.
    expect(follows(3)).toEqual([
      { input: 'sensitivity', share: expect.closeTo(-0.5, 12) },
      { input: 'field', station: 1, share: expect.closeTo(0.5, 12) },
    ]);
    expect(inputsOf('coast-by-night').some(({ input }) => input === 'sky wave')).toBe(true);
  });
});
