import { ImpossibleValues } from '../../facts/impossible-values.ts';
import type { Warning } from '../../facts/warning.ts';
import type { Degrees, Farads, Metres } from '../../units/quantities.ts';
import type { VanePoint } from './law.ts';

/** Any capacitor with a pointer, as the rest of the engine sees it. Plain functions of the position, 0 open … 1 meshed. */
export interface VariableCapacitor {
  /** Everything across the terminals: vanes, minimum, trimmer, strays. Positions outside 0..1 count as the end. */
  capacitanceAt(position: number): Farads;
  /** Where it has this capacitance; undefined when it never has. */
  positionFor(capacitance: Farads): number | undefined;
  readonly min: Farads;
  readonly max: Farads;
  /** Lowest and highest each end may well be, from the spread of what it is made of. */
  readonly minRange: readonly [Farads, Farads];
  readonly maxRange: readonly [Farads, Farads];
  /** Scale reading. */
  angleAt(position: number): Degrees;
  readonly swing: Degrees;
  /** tan δ of the whole when meshed. */
  readonly lossTangent: number;
  lossTangentAt(position: number): number;
  /** Full movement of a slide, for those that slide. */
  readonly travel?: Metres;
  /** The moving vane at full size, a closed shape; empty for a capacitor without vanes. */
  rotorOutline(points?: number): readonly VanePoint[];
  /** True when the outline's size was assumed, only its shape following from the law. */
  readonly outlineAssumed: boolean;
  readonly warnings: readonly Warning[];
}

/** What is fixed across a variable capacitor, and in series with it. */
export interface Fittings {
  /** Wiring, terminals, the coil's end of things. Default 0. */
  readonly stray?: Farads;
  /** Trimmer as set, in parallel. Default 0. */
  readonly trimmer?: Farads;
  /** Padder, in series with the vanes only; default none. */
  readonly padder?: Farads;
  /** What of it was measured; it wins. */
  readonly measured?: MeasuredEnds;
}

/** A measured capacitance with its 90 % range. */
export interface MeasuredEnd {
  readonly value: Farads;
  readonly range: readonly [Farads, Farads];
}

/** Ends of a capacitor as measured by itself, and the strays across it. */
export interface MeasuredEnds {
  readonly minimum?: MeasuredEnd;
  readonly maximum?: MeasuredEnd;
  readonly stray?: MeasuredEnd;
}

/** A capacitor whose measured ends win; between them it runs as calculated. @throws RangeError when they do not rise. */
function withEnds(bare: Bare, { minimum, maximum }: MeasuredEnds): Bare {
  if (!minimum && !maximum) return bare;
  const [a, b] = [bare.own(0), bare.own(1)];
  const [low, high] = [minimum?.value ?? a, maximum?.value ?? b];
  if (!(low >= 0 && high >= low)) throw new ImpossibleValues({ code: 'capacitor.ends', minimum: low, maximum: high });
  const slope = b > a ? (high - low) / (b - a) : 0;
  const about = (range: readonly [Farads, Farads], from: Farads, to: Farads): readonly [Farads, Farads] => [
    Math.max(0, range[0] + to - from),
    range[1] + to - from,
  ];
  return {
    ...bare,
    own: (p) => (b > a ? low + slope * (bare.own(p) - a) : high),
    ownPosition: (C) => (slope > 0 ? bare.ownPosition(a + (C - low) / slope) : bare.ownPosition(a + (C - high))),
    ownMinRange: minimum?.range ?? about(bare.ownMinRange, a, low),
    ownMaxRange: maximum?.range ?? about(bare.ownMaxRange, b, high),
  };
}

/** A capacitor's own curve before strays, trimmer and padder. */
export interface Bare {
  readonly own: (position: number) => Farads;
  readonly ownPosition: (capacitance: Farads) => number | undefined;
  readonly ownMinRange: readonly [Farads, Farads];
  readonly ownMaxRange: readonly [Farads, Farads];
  readonly ownLossTangent: (position: number) => number;
  readonly angleAt?: (position: number) => Degrees;
  readonly swing?: Degrees;
  readonly travel?: Metres;
  readonly outline?: (points?: number) => readonly VanePoint[];
  readonly outlineAssumed?: boolean;
  readonly warnings?: readonly Warning[];
}

/** How far off a stray or a trimmer's marking may well be. Common practice, no source. */
const FITTING_SPREAD = 0.3;

/** @throws RangeError when a fitting is negative or not a number. */
export function withFittings(calculated: Bare, fittings: Fittings = {}): VariableCapacitor {
  const { trimmer = 0, padder = Number.POSITIVE_INFINITY, measured = {} } = fittings;
  const stray = measured.stray?.value ?? fittings.stray ?? 0;
  const bare = withEnds(calculated, measured);
  if (!(stray >= 0) || !(trimmer >= 0) || !(padder > 0)) throw new ImpossibleValues({ code: 'capacitor.sizes' });
  const across = stray + trimmer;
  const padded = (C: Farads): Farads => (padder === Number.POSITIVE_INFINITY ? C : (C * padder) / (C + padder));
  const clamp = (p: number): number => {
    if (Number.isNaN(p)) throw new RangeError('position must be a number from 0 (open) to 1 (meshed)');
    return Math.min(1, Math.max(0, p));
  };
  const capacitanceAt = (p: number): Farads => across + padded(bare.own(clamp(p)));
  const lossTangentAt = (p: number): number => {
    // In series with a lossless padder the loss is shared in proportion to the voltage across the vanes.
    const own = bare.own(clamp(p));
    if (!(own > 0)) return 0;
    const series = padded(own);
    return (bare.ownLossTangent(clamp(p)) * series * (series / own)) / (across + series);
  };
  const [strayLow, strayHigh] = measured.stray?.range ?? [stray * (1 - FITTING_SPREAD), stray * (1 + FITTING_SPREAD)];
  const range = (own: readonly [Farads, Farads]): [Farads, Farads] => [
    strayLow + trimmer * (1 - FITTING_SPREAD) + padded(own[0]),
    strayHigh + trimmer * (1 + FITTING_SPREAD) + padded(own[1]),
  ];
  const swing = bare.swing ?? 180;
  const [a, b] = [capacitanceAt(0), capacitanceAt(1)];
  return {
    capacitanceAt,
    positionFor: (C) => {
      const series = C - across;
      if (!(series > 0) || !(series < padder)) return undefined;
      const own = padder === Number.POSITIVE_INFINITY ? series : (series * padder) / (padder - series);
      // Rounding at the very ends must not lose them.
      const eps = 1e-12;
      if (Math.abs(C - a) <= eps * a) return 0;
      if (Math.abs(C - b) <= eps * b) return 1;
      return bare.ownPosition(own);
    },
    min: Math.min(a, b),
    max: Math.max(a, b),
    minRange: range(bare.ownMinRange),
    maxRange: range(bare.ownMaxRange),
    angleAt: bare.angleAt ?? ((p) => swing * clamp(p)),
    swing,
    lossTangent: lossTangentAt(1),
    lossTangentAt,
    travel: bare.travel,
    rotorOutline: bare.outline ?? (() => []),
    outlineAssumed: bare.outlineAssumed ?? false,
    warnings: bare.warnings ?? [],
  };
}

/** Position within 0..1 (a hair of rounding allowed), else undefined. */
export const positionWithin = (p: number): number | undefined =>
  p >= -1e-12 && p <= 1 + 1e-12 ? Math.min(1, Math.max(0, p)) : undefined;
