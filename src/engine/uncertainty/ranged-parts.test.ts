import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readText } from '../set/read.ts';
import { fromDecibels } from '../units/quantities.ts';
import { receiveRanged } from './receive-ranged.ts';

const partsOf = (example: string) => {
  const read = readText(readFileSync(new URL(`../../../examples/${example}.json`, import.meta.url), 'utf8'));
  if (!read.ok) throw new Error(`${example} does not read`);
  return receiveRanged(read.set, { stations: [] }).parts;
};

describe('figures of parts with ranges', () => {
  it('have those of an aerial in a garden: ±4 dB on its height, twice that on its radiation resistance', () => {
    const { aerial } = partsOf('medium-wave-galena');
    const [low, high] = aerial.effectiveHeightRange!;
    expect(aerial.effectiveHeight / low).toBeCloseTo(fromDecibels(4), 9);
    expect(high / aerial.effectiveHeight).toBeCloseTo(fromDecibels(4), 9);
    expect(aerial.radiationResistanceRange![1] / aerial.radiationResistance).toBeCloseTo(fromDecibels(8), 9);
    expect(aerial.capacitanceRange![1] / aerial.capacitance).toBeCloseTo(1.13, 9);
  });

  it('have the impedance of phones about that calculated from their resistance, and less than its whole spread', () => {
    const { load } = partsOf('medium-wave-galena');
    const [low, high] = load.impedanceRange!;
    expect(low).toBeLessThan(load.impedanceAt1kHz);
    expect(high).toBeGreaterThan(load.impedanceAt1kHz);
    // The winding's resistance is known: only its inductance is spread ×/÷ 1.4.
    expect(high / low).toBeGreaterThan(1.5);
    expect(high / low).toBeLessThan(1.4 ** 2);
  });

  it('have the resistance of a crystal at zero volts as wide as its saturation current and leakage make it', () => {
    const { detector } = partsOf('medium-wave-galena');
    const [low, high] = detector.zeroBiasResistanceRange!;
    expect(low).toBeLessThan(detector.zeroBiasResistance);
    expect(high).toBeGreaterThan(detector.zeroBiasResistance);
    // Saturation current ×/÷ 4, less what the leakage across it keeps the high end from.
    expect(detector.zeroBiasResistance / low).toBeGreaterThan(2);
    expect(high / low).toBeLessThan(4 ** 2);
  });

  it('have a self-resonance as wide as half the doubts of inductance and self-capacitance', () => {
    const [coil] = partsOf('medium-wave-galena').coils;
    const half = (value: number, [, high]: readonly [number, number]) => Math.log(high / value) / 2;
    const [low] = coil.selfResonanceRange!;
    expect(Math.log(coil.selfResonance / low)).toBeCloseTo(
      Math.hypot(half(coil.inductance, coil.inductanceRange), half(coil.selfCapacitance, coil.selfCapacitanceRange)),
      9,
    );
  });

  it('of a frame have its height alone, and of an amplifier nothing', () => {
    const { aerial } = partsOf('frame-aerial');
    expect(Object.keys(aerial).filter((name) => name.endsWith('Range'))).toEqual(['effectiveHeightRange']);
    expect(partsOf('medium-wave-germanium-amplifier').load.impedanceRange).toBeUndefined();
  });
});
