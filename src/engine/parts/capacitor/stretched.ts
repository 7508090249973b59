import type { Ratio } from '../../units/quantities.ts';
import type { VariableCapacitor } from './model.ts';

/** Ends may come this near to each other, no nearer: something is left to tune with. */
const LEAST_SWING = 1.02;

/**
 * A variable capacitor whose ends are otherwise than marked: between them its curve is stretched evenly.
 * @param capacitor as marked.
 * @param factors on its least and its greatest capacitance; default 1. Of a fixed one only the greatest counts.
 * @returns the same kind of model; its spread and its outline stay those of the marking.
 */
export function stretched(
  capacitor: VariableCapacitor,
  { minimum = 1, maximum = 1 }: { readonly minimum?: Ratio; readonly maximum?: Ratio },
): VariableCapacitor {
  if (minimum === 1 && maximum === 1) return capacitor;
  const { min, max, capacitanceAt, positionFor } = capacitor;
  const isFixed = !(max > min);
  const top = max * maximum;
  const bottom = isFixed ? top : Math.min(min * minimum, top / LEAST_SWING);
  const by = isFixed ? maximum : (top - bottom) / (max - min);
  const from = isFixed ? 0 : min;
  const to = isFixed ? 0 : bottom;
  return {
    ...capacitor,
    min: bottom,
    max: top,
    capacitanceAt: (position) => to + (capacitanceAt(position) - from) * by,
    // Rounding at the very ends must not lose them.
    positionFor: (C) => positionFor(Math.abs(C - top) <= 1e-12 * top ? max : from + (C - to) / by),
  };
}
