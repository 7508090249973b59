import type { Kilograms, Metres, Ratio } from '../../units/quantities.ts';
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
  'PVC',
  'stranded PVC',
  'zip cord',
  'PTFE',
] as const;
export type Covering = (typeof COVERINGS)[number];

/** Wire as bought. */
export interface Wire {
  /** Bare diameter, of one strand of Litz, over all the bare strands of a stranded wire; m, above 0. */
  readonly diameter: Metres;
  /** Default bare. */
  readonly covering?: Covering;
  /** Default copper. */
  readonly metal?: Metal;
  /** Insulated strands twisted together (Litz); default 1. */
  readonly strands?: number;
  /** Diameter over the covering, measured; m. Default the usual one of the covering. */
  readonly overall?: Metres;
}

/** What a covering adds to the diameter, and how sure that is. */
interface Serving {
  /** Increase of diameter, m, by the diameter under it. */
  readonly adds: (d: Metres) => Metres;
  /** ×/÷, 90 %; of enamel, its whole increase. */
  readonly spread: Ratio;
}

/**
 * Cotton and silk: fine counts of thread on fine wire, coarser on thick. Trade figures (single cotton 4 to 5 mils on the
 * diameter, double 8 to 10, single silk 1.25 to 2, double 2.5 to 4): common practice, no source.
 */
const thread = (fine: number, thick: number, spread = 1.3): Serving => ({
  adds: (d) => fine + (thick - fine) * Math.min(1, Math.max(0, (d - 0.1e-3) / 0.9e-3)),
  spread,
});
const wall = (thickness: Metres, spread: number): Serving => ({ adds: () => 2 * thickness, spread });
/**
 * Enamel: the least to the largest increase of the standard, grade 1 or 2 (see enamel). PVC: nominal walls of equipment
 * wire, 0.25 mm for 300 V thin, 0.4 mm for 300 V, 0.8 mm for 600 V (UL 758 styles 1061, 1007, 1015; from memory); PTFE
 * 0.25 mm, 0.15 mm thin (MIL-W-16878 types E and ET; from memory). Half of a zip cord: common practice, no source.
 */
const SERVINGS: Readonly<Record<Covering, Serving>> = {
  bare: { adds: () => 0, spread: 1 },
  enamel: { adds: () => 0, spread: 1.5 },
  'single cotton': thread(0.1e-3, 0.13e-3),
  'double cotton': thread(0.2e-3, 0.25e-3),
  'single silk': thread(0.032e-3, 0.05e-3, 1.4),
  'double silk': thread(0.064e-3, 0.1e-3, 1.4),
  'enamel and cotton': thread(0.1e-3, 0.13e-3),
  'enamel and silk': thread(0.032e-3, 0.05e-3, 1.4),
  PVC: wall(0.4e-3, 1.6),
  'stranded PVC': wall(0.4e-3, 1.6),
  'zip cord': wall(0.8e-3, 1.4),
  PTFE: wall(0.25e-3, 1.5),
};

/** Bare strands twisted under one covering: how they conduct, against solid wire of their outline. */
interface Stranding {
  /** Part of the outline that is copper, strands running a little longer than the wire allowed for. */
  readonly copper: Ratio;
  /** Loss at radio frequency: current crosses from strand to strand, and tin or corrosion lies in its way. */
  readonly loss: Ratio;
  /** ×/÷, 90 %. */
  readonly spread: Ratio;
}
/** New hook-up wire: common practice, no source. Zip cord, often old: one published coil (149 to 167 at 1 and 2 MHz). */
const STRANDED: Readonly<Partial<Record<Covering, Stranding>>> = {
  'stranded PVC': { copper: 0.77, loss: 1.4, spread: 1.4 },
  'zip cord': { copper: 0.77, loss: 1.8, spread: 1.8 },
};
/** Of bare strands twisted together; undefined for solid wire and Litz. */
export const strandingOf = ({ covering = 'bare', strands = 1 }: Wire): Stranding | undefined =>
  strands > 1 ? undefined : STRANDED[covering];

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
  if (wire.overall !== undefined) return Math.max(wire.overall, conductorDiameter(wire));
  return inner + SERVINGS[wire.covering ?? 'bare'].adds(inner);
}

/**
 * Where the diameter over the covering lies, 90 %: 3 % of what is measured, the covering's spread otherwise.
 * @param wire bare diameter (m) and covering
 * @returns the two ends, m
 */
export function overallRange(wire: Wire): readonly [Metres, Metres] {
  const over = overallDiameter(wire);
  const bare = conductorDiameter(wire);
  const spread = wire.overall === undefined ? SERVINGS[wire.covering ?? 'bare'].spread : 1.03;
  return [bare + (over - bare) / spread, bare + (over - bare) * spread];
}

/** Diameter over pitch of wire wound close whose covering is not said: from cotton or PVC to enamel. Common practice. */
export const UNKNOWN_COVER = { least: 0.6, usual: 0.75, most: 0.93 };
export const isCoveringUnknown = ({ covering, strands = 1, overall }: Wire): boolean =>
  covering === undefined && strands === 1 && overall === undefined;

/** Bare wire, or the bundle of Litz. */
export const conductorDiameter = (wire: Wire): Metres =>
  (wire.strands ?? 1) > 1 ? bundleDiameter(wire) : wire.diameter;

/**
 * Centre-to-centre distance of turns wound touching: the overall diameter and the 2 % that hands leave.
 * Bare wire may not touch: the pitch is then that of a thread of its own diameter laid between the turns.
 * @param wire bare diameter (m) and covering; with no covering said, some covering of a third of its diameter
 * @returns m
 */
export function closePitch(wire: Wire): Metres {
  if (isCoveringUnknown(wire)) return wire.diameter / UNKNOWN_COVER.usual;
  if ((wire.covering ?? 'bare') === 'bare' && (wire.strands ?? 1) === 1) return 2 * wire.diameter;
  return 1.02 * overallDiameter(wire);
}

/** Cross-section of the metal, m². */
export const metalArea = (wire: Wire): number =>
  (Math.PI / 4) * wire.diameter * wire.diameter * (wire.strands ?? 1) * (strandingOf(wire)?.copper ?? 1);

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
