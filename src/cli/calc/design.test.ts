import { describe, expect, it } from 'vitest';
import { coilInductance } from '../../engine/parts/coil/coil.ts';
import { CALCULATIONS } from './index.ts';

// biome-ignore lint/suspicious/noExplicitAny: an answer is plain data
const answer = (name: string, input: unknown): any => {
  const result = CALCULATIONS.find((c) => c.name === name)!.run(input);
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.answer;
};
const former = { formerDiameter: '63 mm', wire: { diameter: '0.4572 mm', covering: 'enamel' } };

describe('calc turns', () => {
  it('gives the inductance asked for when wound so', () => {
    const found = answer('turns', { inductance: '200 µH', coil: { shape: 'solenoid', ...former } });
    const wound = coilInductance({
      shape: 'solenoid',
      formerDiameter: 0.063,
      turns: found.whole,
      wire: { diameter: 0.4572e-3, covering: 'enamel' },
    });
    expect(found.inductance.value).toBeCloseTo(wound, 9);
    expect(Math.abs(wound / 200e-6 - 1)).toBeLessThan(0.03);
  });

  it.each([
    { shape: 'solenoid', ...former },
    { shape: 'multilayer', ...former, turnsPerLayer: 40 },
  ])('gives the range that the coil so wound has: $shape', (coil) => {
    const { whole, inductance } = answer('turns', { inductance: '300 µH', coil });
    const turns = coil.shape === 'multilayer' ? { layers: Math.ceil(whole / 40) } : { turns: whole };
    const wound = answer('coil', { ...coil, ...turns }).inductance;
    for (const end of [0, 1])
      expect(inductance.range[end] / inductance.value).toBeCloseTo(wound.range[end] / wound.value, 9);
    expect(inductance.range[0]).toBeLessThan(inductance.value);
    expect(inductance.range[1]).toBeGreaterThan(inductance.value);
  });

  it('spreads turns already wound, and says when that cannot be', () => {
    const spread = answer('turns', { inductance: '200 µH', turns: 70, coil: { shape: 'solenoid', ...former } }).spread;
    const L = coilInductance({
      shape: 'solenoid',
      formerDiameter: 0.063,
      turns: 70,
      pitch: spread.pitch.value,
      wire: { diameter: 0.4572e-3, covering: 'enamel' },
    });
    expect(L / 200e-6).toBeCloseTo(1, 4);
    expect(
      answer('turns', { inductance: '200 µH', turns: 20, coil: { shape: 'solenoid', ...former } }).warnings.join(' '),
    ).toMatch(/too few/);
  });

  it('knows cores by their A_L: 250 nH and 16 turns make 64 µH', () => {
    const coil = { shape: 'core', perTurnSquared: '250 nH', wire: { diameter: '0.3 mm' } };
    const found = answer('turns', { inductance: '64 µH', coil });
    expect(found.turns).toBeCloseTo(16, 9);
    expect(found.whole).toBe(16);
  });
});

describe('calc band', () => {
  it('puts both ends where they were wanted', () => {
    const { covers, trimmer, padder } = answer('band', {
      inductance: '190 µH',
      from: '550 kHz',
      to: '1500 kHz',
      min: '15 pF',
      max: '500 pF',
      stray: '20 pF',
    });
    expect(covers.map((f: { value: number }) => Math.round(f.value))).toEqual([550_000, 1_500_000]);
    // By the definition: f = 1/(2π√(LC)) with padder in series, trimmer and strays across.
    const at = (C: number) =>
      1 / (2 * Math.PI * Math.sqrt(190e-6 * (20e-12 + trimmer.value + (C * padder.value) / (C + padder.value))));
    expect(at(500e-12)).toBeCloseTo(550e3, 0);
    expect(at(15e-12)).toBeCloseTo(1500e3, 0);
  });

  it('says when no fitting can do it and which coil would', () => {
    const fit = answer('band', { inductance: '2 mH', from: '550 kHz', to: '1500 kHz', min: '30 pF', max: '500 pF' });
    expect(fit.possible).toBe(false);
    expect(fit.betterInductance.value).toBeLessThan(2e-3);
  });
});

describe('calc best-wire', () => {
  it('lists wires by falling Q, each within the length there is', () => {
    const { wires } = answer('best-wire', {
      inductance: '190 µH',
      frequency: '1 MHz',
      formerDiameter: '63 mm',
      longest: '100 mm',
    });
    expect(wires.length).toBeGreaterThan(3);
    for (const [i, w] of wires.entries()) {
      expect(w.length.value).toBeLessThanOrEqual(0.1 + 1e-9);
      if (i > 0) expect(w.q).toBeLessThanOrEqual(wires[i - 1].q);
    }
  });
});
