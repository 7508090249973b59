import { demandWithin } from '../../facts/impossible-values.ts';
import { type Warning, warning } from '../../facts/warning.ts';
import { monotoneCurve } from '../../numerics/monotone.ts';
import type { Degrees, Farads } from '../../units/quantities.ts';
import { type Bare, positionWithin } from './model.ts';

/** A capacitor known by measured points: scale reading and capacitance, its own only. */
export interface MeasuredVariable {
  readonly kind: 'measured';
  /** At least two, scale readings rising. Capacitance may rise or fall along the scale. */
  readonly points: readonly { readonly scale: Degrees; readonly capacitance: Farads }[];
  /** Default 0.001. */
  readonly lossTangent?: number;
  /** ± share of a measured capacitance; default 2 %. */
  readonly tolerance?: number;
}

/** A curve through the points that rises wherever they rise. Position 0 is the end of the scale with less capacitance. */
export function measuredVariable(spec: MeasuredVariable): Bare {
  const { points, lossTangent = 1e-3, tolerance = 0.02 } = spec;
  const C = points.map((p) => p.capacitance);
  for (const c of C) demandWithin('capacitor.capacitance', c, { above: 0 });
  const curve = monotoneCurve(
    points.map((p) => p.scale),
    C,
  );
  const reversed = C[0] > C[C.length - 1];
  const span = curve.last - curve.first;
  const scaleAt = (p: number): Degrees => (reversed ? curve.last - span * p : curve.first + span * p);
  const steps = C.slice(1).map((c, i) => (c - C[i]) * (reversed ? -1 : 1));
  const warnings: Warning[] = [];
  const turn = steps.findIndex((s) => s < 0);
  if (turn >= 0)
    warnings.push(warning('capacitor.measured-turns-back', { from: points[turn].scale, to: points[turn + 1].scale }));
  if (steps.some((s) => s === 0)) warnings.push(warning('capacitor.measured-repeats'));
  if (points.length < 5) warnings.push(warning('capacitor.measured-few', { count: points.length }));
  const [low, high] = reversed ? [C[C.length - 1], C[0]] : [C[0], C[C.length - 1]];
  return {
    own: (p) => curve.at(scaleAt(p)),
    ownPosition: (c) => {
      const x = curve.inverse(c);
      return x === undefined ? undefined : positionWithin((reversed ? curve.last - x : x - curve.first) / span);
    },
    ownMinRange: [low * (1 - tolerance), low * (1 + tolerance)],
    ownMaxRange: [high * (1 - tolerance), high * (1 + tolerance)],
    ownLossTangent: () => lossTangent,
    angleAt: scaleAt,
    swing: span,
    warnings,
  };
}
