import type { Warned } from '../../facts/warning.ts';
import type { Farads } from '../../units/quantities.ts';
import { type DielectricName, dielectric } from './dielectrics.ts';

export interface FixedCapacitorSpec {
  readonly capacitance: Farads;
  /** ± share of the marking; default 10 %. */
  readonly tolerance?: number;
  /** Default mica. */
  readonly dielectric?: DielectricName;
  readonly lossTangent?: number;
}

export interface FixedCapacitor {
  readonly capacitance: Farads;
  readonly range: readonly [Farads, Farads];
  readonly lossTangent: number;
  readonly warnings: readonly Warned[];
}

/** @throws RangeError unless capacitance > 0 and 0 ≤ tolerance < 1. */
export function fixedCapacitor(spec: FixedCapacitorSpec): FixedCapacitor {
  const { capacitance: C, tolerance = 0.1 } = spec;
  if (!(C > 0) || !(tolerance >= 0 && tolerance < 1))
    throw new RangeError(`capacitance ${C} and tolerance ${tolerance} are not a capacitor`);
  const material = dielectric(spec.dielectric ?? 'mica');
  const lossTangent = spec.lossTangent ?? material.lossTangent[1];
  return {
    capacitance: C,
    range: [C * (1 - tolerance), C * (1 + tolerance)],
    lossTangent,
    warnings:
      lossTangent > 0.005
        ? [`A capacitor of ${material.label} in the tuned circuit lowers its Q; mica or polystyrene does not.`]
        : [],
  };
}
