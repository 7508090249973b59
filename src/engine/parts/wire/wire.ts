import type { Kilograms, Metres } from '../../units/quantities.ts';
import { enamelUsual } from './enamel.ts';
import { METAL_FIGURES, type Metal } from './metal.ts';

/** What wire is covered with. */
export const COVERINGS = [
  'bare',
  'enamel',
  'single cotton',
  'double cotton',
  'single silk',
  'double silk',
  'enamel and cotton',
  'enamel and silk',
] as const;
export type Covering = (typeof COVERINGS)[number];

/** Wire as bought. */
export interface Wire {
  /** Bare diameter, of one strand when there are several; m, above 0. */
  readonly diameter: Metres;
  /** Default bare. */
  readonly covering?: Covering;
  /** Default copper. */
  readonly metal?: Metal;
  /** Insulated strands twisted together (Litz); default 1. */
  readonly strands?: number;
}

/** Increase of diameter by one or two servings of thread, m, by bare diameter. */
type Serving = (d: Metres) => Metres;

/**
 * Cotton and silk: fine counts of thread on fine wire, coarser on thick. Trade figures (single cotton 4 to 5 mils on the
 * diameter, double 8 to 10, single silk 1.25 to 2, double 2.5 to 4): common practice, no source.
 */
const thread =
  (fine: number, thick: number): Serving =>
  (d) =>
    fine + (thick - fine) * Math.min(1, Math.max(0, (d - 0.1e-3) / 0.9e-3));
const SERVINGS: Readonly<Record<Covering, Serving>> = {
  bare: () => 0,
  enamel: () => 0,
  'single cotton': thread(0.1e-3, 0.13e-3),
  'double cotton': thread(0.2e-3, 0.25e-3),
  'single silk': thread(0.032e-3, 0.05e-3),
  'double silk': thread(0.064e-3, 0.1e-3),
  'enamel and cotton': thread(0.1e-3, 0.13e-3),
  'enamel and silk': thread(0.032e-3, 0.05e-3),
};

const hasEnamel = (covering: Covering) => covering.startsWith('enamel');

/** Metal takes up about this part of a Litz bundle's circle of enamelled strands (common practice, no source). */
const LITZ_FILL = 0.65;

/** Diameter of the circle round a Litz bundle's strands, under its covering; for one strand, over its enamel if any. */
function bundleDiameter({ diameter, covering = 'bare', strands = 1 }: Wire): Metres {
  if (!(diameter > 0)) throw new RangeError(`wire diameter ${diameter} m is not above 0`);
  if (!(strands >= 1)) throw new RangeError(`${strands} strands: at least 1 is needed`);
  // Strands of Litz are enamelled whatever is round them.
  if (strands > 1) return enamelUsual(diameter) * Math.sqrt(strands / LITZ_FILL);
  return hasEnamel(covering) ? enamelUsual(diameter) : diameter;
}

/**
 * Diameter over the covering.
 * @param wire bare diameter (m) and covering
 * @returns m; cotton and silk figures are good to about 20 % of the covering's thickness.
 */
export function overallDiameter(wire: Wire): Metres {
  const inner = bundleDiameter(wire);
  return inner + SERVINGS[wire.covering ?? 'bare'](inner);
}

/** Bare wire, or the bundle of Litz. */
export const conductorDiameter = (wire: Wire): Metres =>
  (wire.strands ?? 1) > 1 ? bundleDiameter(wire) : wire.diameter;

/**
 * Centre-to-centre distance of turns wound touching: the overall diameter and the 2 % that hands leave.
 * Bare wire may not touch: the pitch is then that of a thread of its own diameter laid between the turns.
 * @param wire bare diameter (m) and covering
 * @returns m
 */
export function closePitch(wire: Wire): Metres {
  if ((wire.covering ?? 'bare') === 'bare' && (wire.strands ?? 1) === 1) return 2 * wire.diameter;
  return 1.02 * overallDiameter(wire);
}

/** Cross-section of the metal, m². */
export const metalArea = ({ diameter, strands = 1 }: Wire): number => (Math.PI / 4) * diameter * diameter * strands;

/** kg/m³ of what lies between the metal and the outside, wax and air included. */
const COVERING_DENSITY = 1000;

/**
 * Weight of a length of wire with its covering.
 * @param wire bare diameter (m), covering and metal
 * @param length m
 * @returns kg
 */
export function wireWeight(wire: Wire, length: Metres): Kilograms {
  const metal = metalArea(wire);
  const outside = (Math.PI / 4) * overallDiameter(wire) ** 2;
  // Litz strands lie spirally: about 3 % more metal than the length of the bundle.
  const lay = (wire.strands ?? 1) > 1 ? 1.03 : 1;
  return (
    length *
    (metal * lay * METAL_FIGURES[wire.metal ?? 'copper'].density +
      Math.max(0, outside - metal) * COVERING_DENSITY * 0.6)
  );
}
