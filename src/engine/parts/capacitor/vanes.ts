import { demand, demandWithin, ImpossibleValues } from '../../facts/impossible-values.ts';
import { type Warning, warning } from '../../facts/warning.ts';
import { root } from '../../numerics/roots.ts';
import { type Degrees, EPSILON_0, type Farads, type Metres } from '../../units/quantities.ts';
import { type DielectricName, dielectric, dielectricWarnings } from './dielectrics.ts';
import { lawCapacitance, lawPosition, lawSlope, type VaneLaw, type VanePoint, vane } from './law.ts';
import { type Bare, positionWithin } from './model.ts';

interface VaneCommon {
  /** Least capacitance, vanes out; left out: a usual one for its size, and it says so. */
  readonly minimum?: Farads;
  /** Default semicircular. */
  readonly law?: VaneLaw;
  /** Fixed capacitance that the law was designed to include; default 0. */
  readonly lawStray?: Farads;
  /** Turn of the shaft from open to meshed; default 180°. Above 180° a slow-motion drive is meant. */
  readonly swing?: Degrees;
  /** tan δ of the capacitor as a whole; left out: from its dielectric and supports. */
  readonly lossTangent?: number;
}

/** A bought or salvaged variable capacitor known by its marking. */
export interface MarkedVariable extends VaneCommon {
  readonly kind: 'variable';
  /** Capacitance, vanes in. */
  readonly maximum: Farads;
  /** ± share of the maximum; default 10 %. */
  readonly tolerance?: number;
}

/** A variable capacitor known by its vanes. */
export interface VanedVariable extends VaneCommon {
  readonly kind: 'vanes';
  /** Largest radius of a moving vane; this or `area`. */
  readonly outerRadius?: Metres;
  /** Area of one face of a moving vane that meshes, m²; wins over `outerRadius`. */
  readonly area?: number;
  /** Of the cut-out round the shaft in the fixed vanes; default 8 mm. */
  readonly innerRadius?: Metres;
  /** Between a moving and a fixed vane. */
  readonly gap: Metres;
  /** Moving and fixed together. */
  readonly vanes: number;
  /** Default air. */
  readonly dielectric?: DielectricName;
  /** How exactly the gap is known; default 0.02 mm. */
  readonly gapTolerance?: Metres;
}

/** Usual least capacitance of a variable capacitor of this size. Common practice, no source: half to twice is possible. */
const usualMinimum = (maximum: Farads): Farads => Math.min(8e-12 + 0.015 * maximum, 0.5 * maximum);

/** Insulators that carry the fixed vanes: a quarter of the minimum runs through them, at this tan δ. From memory. */
const SUPPORT_SHARE = 0.25;
const SUPPORT_LOSS = 0.01;
/** Radii drawn when only the marking is known. */
const DRAWN_INNER = 8e-3;
const DRAWN_OUTER = 25e-3;

const minimumOf = (spec: VaneCommon, size: Farads, warnings: Warning[]): readonly [Farads, [Farads, Farads]] => {
  if (spec.minimum !== undefined) {
    demandWithin('capacitor.minimum', spec.minimum, { above: 0 });
    return [spec.minimum, [0.9 * spec.minimum, 1.1 * spec.minimum]];
  }
  const guess = usualMinimum(size);
  warnings.push(warning('capacitor.minimum-typical', { capacitance: guess }));
  return [guess, [guess / 2, Math.min(guess * 2, 0.9 * size)]];
};

const lossOf = (spec: VaneCommon, min: Farads, between: number) => {
  if (spec.lossTangent !== undefined) {
    const tan = spec.lossTangent;
    demandWithin('capacitor.loss-tangent', tan, { min: 0 });
    return () => tan;
  }
  return (C: Farads) => (SUPPORT_SHARE * min * SUPPORT_LOSS + (C - min) * between) / C;
};

const vaneAngle = (swing: Degrees): number => (Math.min(swing, 180) * Math.PI) / 180;

/** @throws RangeError unless the maximum is above the minimum. */
export function markedVariable(spec: MarkedVariable): Bare {
  const { maximum: max, law = 'semicircular', lawStray = 0, swing = 180, tolerance = 0.1 } = spec;
  demand(swing > 0, { code: 'capacitor.sizes' });
  demandWithin('capacitor.maximum', max, { above: 0 });
  const warnings: Warning[] = [];
  const [min, minRange] = minimumOf(spec, max, warnings);
  const shape = vane(law, (max + lawStray) / (min + lawStray), DRAWN_INNER, DRAWN_OUTER, vaneAngle(swing));
  const maxRange = [max * (1 - tolerance), max * (1 + tolerance)] as const;
  return bare(spec, min, max, minRange, maxRange, lossOf(spec, min, 0), (n) => shape.outline(n), true, warnings);
}

/** @throws RangeError when the vanes cannot be as described. */
export function vanedVariable(spec: VanedVariable): Bare {
  const { innerRadius = 8e-3, gap, vanes, law = 'semicircular', lawStray = 0, swing = 180 } = spec;
  const between = dielectric(spec.dielectric ?? 'air');
  if (!(gap > 0) || !(innerRadius >= 0) || !(swing > 0) || !(Number.isInteger(vanes) && vanes >= 2))
    throw new ImpossibleValues({ code: 'capacitor.sizes' });
  const warnings: Warning[] = [];
  const angle = vaneAngle(swing);
  // NBS Circular 74, C = ε₀ K (N − 1) A / t: a handbook formula without edge field, which the minimum stands for.
  const perArea = (EPSILON_0 * between.permittivity[1] * (vanes - 1)) / gap;
  const peakOf = (delta: Farads): number => {
    const min = spec.minimum ?? usualMinimum(delta);
    return lawSlope(law, (min + delta + lawStray) / (min + lawStray), 1);
  };
  let delta: Farads;
  let outer: Metres;
  if (spec.area !== undefined) {
    demandWithin('capacitor.area', spec.area, { above: 0 });
    delta = perArea * spec.area;
    outer = Math.sqrt(innerRadius ** 2 + (2 * spec.area * peakOf(delta)) / angle);
  } else {
    outer = spec.outerRadius ?? Number.NaN;
    demandWithin('capacitor.outer-radius', outer, { above: innerRadius });
    // The shape depends on max/min and the area on the shape: find the swing for which both agree.
    const whole = ((perArea * angle) / 2) * (outer ** 2 - innerRadius ** 2);
    delta = law === 'semicircular' ? whole : root((x) => x * peakOf(x) - whole, 1e-9 * whole, 2 * whole);
  }
  const [min, minRange] = minimumOf(spec, delta, warnings);
  const max = min + delta;
  const shape = vane(law, (max + lawStray) / (min + lawStray), innerRadius, outer, angle);
  const { gapTolerance = 2e-5 } = spec;
  const [low, usual, high] = between.permittivity;
  const maxRange = [
    minRange[0] + ((delta * low) / usual) * (gap / (gap + gapTolerance)),
    minRange[1] + ((delta * high) / usual) * (gap / Math.max(gap - gapTolerance, gap / 2)),
  ] as const;
  if (gap > 0.1 * (outer - innerRadius)) warnings.push(warning('capacitor.gap-wide'));
  if (shape.narrowest < 1.5e-3) warnings.push(warning('capacitor.vane-narrow', { width: shape.narrowest }));
  // The loss given for the whole is that of its insulators, the sheet between the vanes apart.
  warnings.push(...dielectricWarnings(spec.dielectric ?? 'air'));
  const loss = lossOf(spec, min, between.lossTangent[1]);
  return bare(spec, min, max, minRange, maxRange, loss, (n) => shape.outline(n), false, warnings);
}

function bare(
  spec: VaneCommon,
  min: Farads,
  max: Farads,
  ownMinRange: readonly [Farads, Farads],
  ownMaxRange: readonly [Farads, Farads],
  loss: (C: Farads) => number,
  outline: (points?: number) => readonly VanePoint[],
  outlineAssumed: boolean,
  warnings: readonly Warning[],
): Bare {
  const { law = 'semicircular', lawStray = 0, swing = 180 } = spec;
  if (!(max > min)) throw new ImpossibleValues({ code: 'capacitor.ends', minimum: min, maximum: max });
  const own = (p: number): Farads => lawCapacitance(law, min + lawStray, max + lawStray, p) - lawStray;
  return {
    own,
    ownPosition: (C) => positionWithin(lawPosition(law, min + lawStray, max + lawStray, C + lawStray)),
    ownMinRange,
    ownMaxRange,
    ownLossTangent: (p) => loss(own(p)),
    swing,
    outline,
    outlineAssumed,
    warnings,
  };
}
