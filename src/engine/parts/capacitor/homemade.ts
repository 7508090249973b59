import { demandWithin, ImpossibleValues } from '../../facts/impossible-values.ts';
import { type Warning, warning } from '../../facts/warning.ts';
import { root } from '../../numerics/roots.ts';
import { type Degrees, EPSILON_0, type Farads, type Metres } from '../../units/quantities.ts';
import { type Dielectric, type DielectricName, dielectric, dielectricWarnings } from './dielectrics.ts';
import { platesApart, rectangularPlates } from './fringe.ts';
import { type Bare, positionWithin } from './model.ts';

interface Sheet {
  /** Default paper for foil, air for plates, paper for tubes and book. */
  readonly dielectric?: DielectricName;
  /** Its relative permittivity where it is known better than the table's. */
  readonly permittivity?: number;
  /** Air left between conductor and dielectric where it does not lie flat, in all; default 0. */
  readonly airGap?: Metres;
  /** tan δ; default the dielectric's usual one. */
  readonly lossTangent?: number;
}

/** Sheets of foil, or stiff plates, that slide over one another on both faces of a dielectric. */
export interface FoilCapacitor extends Sheet {
  readonly kind: 'foil' | 'plates';
  /** Overlap when pushed home, along the slide. */
  readonly length: Metres;
  readonly width: Metres;
  /** Of the dielectric: the distance between neighbouring sheets when pressed. */
  readonly thickness: Metres;
  /** Conductors in all; 2 make one capacitor, 3 two in parallel. Default 2. */
  readonly sheets?: number;
  /** Measured when pulled apart; left out: estimated. */
  readonly minimum?: Farads;
}

/** One tube in another, in the manner of a trombone. */
export interface TubeCapacitor extends Sheet {
  readonly kind: 'tubes';
  readonly length: Metres;
  /** Outside diameter of the inner tube. */
  readonly innerDiameter: Metres;
  /** From the inner tube's outside to the outer tube's inside. */
  readonly gap: Metres;
  readonly minimum?: Farads;
}

/** Two leaves hinged along one edge, a dielectric sheet on one of them. */
export interface BookCapacitor extends Sheet {
  readonly kind: 'book';
  /** From hinge to edge. */
  readonly length: Metres;
  readonly width: Metres;
  /** Widest opening; default 60°. */
  readonly opening?: Degrees;
  readonly thickness: Metres;
  /** From the hinge's axis to where the foil begins; default 3 mm. */
  readonly inset?: Metres;
}

/** Spread of thickness and of overlap as a builder makes them. Common practice, no source. */
const HOMEMADE_SPREAD = 0.1;
/** Air that a hand-pressed foil leaves; used for the low end of the range only. Common practice, no source. */
const LOOSE_AIR: Metres = 2e-5;

/** Dielectric and air in series between the plates: the same capacitance per area as `separation` filled with K. */
interface Filling {
  readonly separation: Metres;
  readonly K: number;
  readonly lossTangent: number;
  readonly spread: readonly [number, number];
  readonly warnings: Warning[];
}

function filling(spec: Sheet, fallback: DielectricName, thickness: Metres): Filling {
  const name = spec.dielectric ?? fallback;
  const material: Dielectric = dielectric(name);
  const { airGap = 0 } = spec;
  const [low, usual, high] = material.permittivity;
  const K0 = spec.permittivity ?? usual;
  if (!(thickness > 0) || !(airGap >= 0) || !(K0 >= 1)) throw new ImpossibleValues({ code: 'capacitor.sizes' });
  const separation = thickness + airGap;
  const K = separation / (thickness / K0 + airGap);
  const solid = name !== 'air';
  // Share of the voltage across the lossy part.
  const tan = spec.lossTangent ?? material.lossTangent[1] * ((thickness / K0) * (K / separation));
  const warnings: Warning[] = dielectricWarnings(name, spec.lossTangent);
  const pressed = thickness / K0 / (thickness / K0 + LOOSE_AIR);
  if (solid && airGap === 0 && pressed < 0.9)
    warnings.push(warning('capacitor.air-film', { dielectric: name, film: LOOSE_AIR, share: pressed }));
  const known = spec.permittivity !== undefined || !solid;
  return {
    separation,
    K,
    lossTangent: tan,
    spread: [
      (known ? 1 : low / usual) * (1 - HOMEMADE_SPREAD) * (solid && airGap === 0 ? pressed : 1),
      (known ? 1 : high / usual) * (1 + HOMEMADE_SPREAD),
    ],
    warnings,
  };
}

/** Straight from `min` to `max` with the overlap, which is the position. */
function sliding(min: Farads, max: Farads, fill: Filling, travel: Metres, minimumKnown: boolean): Bare {
  if (!(max > min)) throw new ImpossibleValues({ code: 'capacitor.ends', minimum: min, maximum: max });
  const own = (p: number): Farads => min + (max - min) * p;
  return {
    own,
    ownPosition: (C) => positionWithin((C - min) / (max - min)),
    ownMinRange: minimumKnown ? [0.9 * min, 1.1 * min] : [min / 1.5, min * 1.5],
    ownMaxRange: [max * fill.spread[0], max * fill.spread[1]],
    // Pulled apart, about half of what is left is still in the sheet.
    ownLossTangent: (p) => (fill.lossTangent * (0.5 * min * (1 - p) + max * p)) / own(p),
    travel,
    warnings: fill.warnings,
  };
}

/** @throws RangeError when it cannot be as described. */
export function foilCapacitor(spec: FoilCapacitor): Bare {
  const { length, width, thickness, sheets = 2 } = spec;
  if (!(length > 0) || !(width > 0) || !(Number.isInteger(sheets) && sheets >= 2))
    throw new ImpossibleValues({ code: 'capacitor.sizes' });
  const fill = filling(spec, spec.kind === 'foil' ? 'paper' : 'air', thickness);
  const { separation: d, K } = fill;
  const faces = sheets - 1;
  // Inner sheets have their edges shielded by their neighbours: the edge field counts once, not on every face.
  const flat = (EPSILON_0 * K * length * width) / d;
  const max = faces * flat + (rectangularPlates(length, width, d, K) - flat);
  const min = spec.minimum ?? Math.min(platesApart(width, length, d, K), 0.5 * max);
  if (d > 0.05 * Math.min(length, width)) fill.warnings.push(warning('capacitor.fringe-estimated'));
  if (spec.minimum === undefined) fill.warnings.push(warning('capacitor.residual', { capacitance: min }));
  return sliding(min, max, fill, length, spec.minimum !== undefined);
}

/** Coaxial overlap 2πε₀Kl/ln(b/a), plus the field at its two ends taken as that of a plate's edge. */
export function tubeCapacitor(spec: TubeCapacitor): Bare {
  const { length: l, innerDiameter, gap } = spec;
  if (!(l > 0) || !(innerDiameter > 0) || !(gap > 0)) throw new ImpossibleValues({ code: 'capacitor.sizes' });
  const { airGap = 0 } = spec;
  demandWithin('capacitor.air-gap', airGap, { below: gap });
  const fill = filling(spec, 'paper', gap - airGap);
  const a = innerDiameter / 2;
  const b = a + gap;
  const K0 = spec.permittivity ?? dielectric(spec.dielectric ?? 'paper').permittivity[1];
  // The dielectric lies on the inner tube, what air there is outside it.
  const c = b - airGap;
  const coaxial = (2 * Math.PI * EPSILON_0 * l) / (Math.log(c / a) / K0 + Math.log(b / c));
  const round = 2 * Math.PI * Math.sqrt(a * b);
  const strip = rectangularPlates(round, l, gap, fill.K) - (EPSILON_0 * fill.K * round * l) / gap;
  // A closed ring has two edges where the flat rectangle has four.
  const max = coaxial + (strip * round) / (round + l);
  const min = spec.minimum ?? Math.min(platesApart(round, l, gap, fill.K), 0.5 * max);
  if (!(gap < a)) fill.warnings.push(warning('capacitor.tube-ends-estimated'));
  return sliding(min, max, fill, l, spec.minimum !== undefined);
}

/**
 * Leaves at angle α: arcs of length rα in series with the sheet, C = (ε₀w/α) ln((t/K + r₂α)/(t/K + r₁α)), and the outside
 * field ε₀w/(2π − α) ln(r₂/r₁), both exact for arcs. Position 0 is widest open, 1 closed; nearly all happens near 1.
 */
export function bookCapacitor(spec: BookCapacitor): Bare {
  const { length, width: w, opening = 60, thickness, inset = 3e-3 } = spec;
  if (!(length > 0) || !(w > 0) || !(inset > 0) || !(opening > 0 && opening <= 180))
    throw new ImpossibleValues({ code: 'capacitor.sizes' });
  const fill = filling(spec, 'paper', thickness);
  const t = fill.separation / fill.K;
  const widest = (opening * Math.PI) / 180;
  const [r1, r2] = [inset, inset + length];
  const inside = (angle: number): Farads =>
    angle < 1e-9
      ? (EPSILON_0 * w * (r2 - r1)) / t
      : ((EPSILON_0 * w) / angle) * Math.log1p(((r2 - r1) * angle) / (t + r1 * angle));
  const own = (p: number): Farads => {
    const angle = widest * (1 - p);
    return inside(angle) + ((EPSILON_0 * w) / (2 * Math.PI - angle)) * Math.log(r2 / r1);
  };
  const [min, max] = [own(0), own(1)];
  return {
    own,
    ownPosition: (C) =>
      !(C >= min * (1 - 1e-12) && C <= max * (1 + 1e-12))
        ? undefined
        : positionWithin(root((p) => own(p) - Math.min(max, Math.max(min, C)), 0, 1)),
    ownMinRange: [min / 1.5, min * 1.5],
    ownMaxRange: [max * fill.spread[0], max * fill.spread[1]],
    // Opening puts air in series with the lossy sheet.
    ownLossTangent: (p) => (fill.lossTangent * own(p)) / max,
    angleAt: (p) => opening * (1 - Math.min(1, Math.max(0, p))),
    swing: opening,
    warnings: [...fill.warnings, warning('capacitor.book-tunes-late')],
  };
}
