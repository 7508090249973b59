import { demandWithin } from '../../facts/impossible-values.ts';
import { warning } from '../../facts/warning.ts';
import type { CoilModel } from './model.ts';
import type { MeasuredSpec } from './spec.ts';

/**
 * A coil known by its measured inductance and Q. Its resistance is taken to rise in proportion to frequency, between the
 * skin effect (√f) and dielectric loss (f³), so that Q stays as measured, as it nearly does over one band.
 */
export function measuredCoil(spec: MeasuredSpec): CoilModel {
  const { inductance: L, q, at, selfCapacitance = 5e-12, turns = 100 } = spec;
  demandWithin('coil.inductance', L, { above: 0 });
  demandWithin('coil.q', q, { above: 0 });
  demandWithin('coil.at', at, { above: 0 });
  const resistanceAt = (f: number) => (2 * Math.PI * f * L) / q;
  // Inside unknown: parts as of a coil of medium length, L(n) ∝ n^1.6 (exact sums give exponents 1.4 to 1.9).
  const part = (n: number) => L * (Math.max(0, n) / turns) ** 1.6;
  const block = (a: number, b: number) => (part(a) + part(b) - part(Math.abs(a - b))) / 2;
  return {
    shape: 'measured',
    turns,
    inductance: L,
    dcResistance: Number.NaN,
    wireLength: Number.NaN,
    windingLength: Number.NaN,
    outerDiameter: Number.NaN,
    weight: Number.NaN,
    selfCapacitance,
    selfCapacitanceMethod: 'given',
    selfCapacitanceLoss: 0,
    selfResonance: 1 / (2 * Math.PI * Math.sqrt(L * selfCapacitance)),
    inductanceAt: () => L,
    wireResistanceAt: resistanceAt,
    dielectricResistanceAt: () => 0,
    resistanceAt,
    qAt: () => q,
    // What a builder's bridge or resonance leaves.
    inductanceRange: [L / 1.02, L * 1.02],
    selfCapacitanceRange: [selfCapacitance / 1.25, selfCapacitance * 1.25],
    qRangeAt: (f) => {
      const away = 1.1 * Math.max(f / at, at / f) ** 0.5;
      return [q / away, q * away];
    },
    partial: (from, to) => block(to, to) - 2 * block(from, to) + block(from, from),
    mutual: ([a, b], [c, d]) => block(b, d) - block(b, c) - block(a, d) + block(a, c),
    wireLengthTo: () => Number.NaN,
    warnings: [warning('coil.measured-taps')],
  };
}
