import type { Farads } from '../../units/quantities.ts';
import {
  type BookCapacitor,
  bookCapacitor,
  type FoilCapacitor,
  foilCapacitor,
  type TubeCapacitor,
  tubeCapacitor,
} from './homemade.ts';
import { type MeasuredVariable, measuredVariable } from './measured.ts';
import { type Bare, type Fittings, fitted, type VariableCapacitor } from './model.ts';
import { type MarkedVariable, markedVariable, solveRising, type VanedVariable, vanedVariable } from './vanes.ts';

/** A capacitor that does not move; every position is the same. */
export interface FixedTuning {
  readonly kind: 'fixed';
  readonly capacitance: Farads;
  readonly lossTangent?: number;
  /** ± share of its marking; default 5 %. */
  readonly tolerance?: number;
}

export type VariableSpec = (
  | MarkedVariable
  | VanedVariable
  | MeasuredVariable
  | FoilCapacitor
  | TubeCapacitor
  | BookCapacitor
  | FixedTuning
) &
  Fittings;

/**
 * Any tuning capacitor from what is known of it: its marking, its vanes, measured points, or how it was made.
 * Strays, trimmer and padder of the same description are included.
 * @throws RangeError when it cannot be as described.
 */
export const variableCapacitor = (spec: VariableSpec): VariableCapacitor => fitted(bareOf(spec), spec);

function bareOf(spec: VariableSpec): Bare {
  switch (spec.kind) {
    case 'variable':
      return markedVariable(spec);
    case 'vanes':
      return vanedVariable(spec);
    case 'measured':
      return measuredVariable(spec);
    case 'foil':
    case 'plates':
      return foilCapacitor(spec);
    case 'tubes':
      return tubeCapacitor(spec);
    case 'book':
      return bookCapacitor(spec);
    case 'fixed': {
      const { capacitance: C, lossTangent = 1e-3, tolerance = 0.05 } = spec;
      if (!(C > 0)) throw new RangeError(`capacitance must be above 0, got ${C}`);
      const range = [C * (1 - tolerance), C * (1 + tolerance)] as const;
      return {
        own: () => C,
        ownPosition: (c) => (Math.abs(c - C) <= 1e-9 * C ? 0 : undefined),
        ownMinRange: range,
        ownMaxRange: range,
        ownLossTangent: () => lossTangent,
      };
    }
  }
}

/** "A 500 pF variable": everything but the maximum is guessed, and the warnings say so. */
export const plainVariable = (maximum: Farads, minimum?: Farads): VariableCapacitor =>
  variableCapacitor({ kind: 'variable', maximum, minimum });

/** Sections on one shaft. */
export interface Gang {
  readonly sections: readonly VariableCapacitor[];
  capacitancesAt(position: number): Farads[];
  /** All sections joined in parallel. */
  readonly parallel: VariableCapacitor;
}

/** @param sections each with its own trimmer and padder; they share the shaft's position. */
export function ganged(sections: readonly VariableCapacitor[]): Gang {
  if (sections.length === 0) throw new RangeError('a gang needs at least one section');
  const capacitancesAt = (p: number): Farads[] => sections.map((s) => s.capacitanceAt(p));
  const sum = (f: (s: VariableCapacitor) => number): number => sections.reduce((total, s) => total + f(s), 0);
  const own = (p: number): Farads => sum((s) => s.capacitanceAt(p));
  const [min, max] = [own(0), own(1)];
  const parallel = fitted({
    own,
    ownPosition: (C) => (C >= min * (1 - 1e-12) && C <= max * (1 + 1e-12) ? solveRising(own, C, 0, 1) : undefined),
    ownMinRange: [sum((s) => s.minRange[0]), sum((s) => s.minRange[1])],
    ownMaxRange: [sum((s) => s.maxRange[0]), sum((s) => s.maxRange[1])],
    ownLossTangent: (p) => sum((s) => s.lossTangentAt(p) * s.capacitanceAt(p)) / own(p),
    angleAt: sections[0].angleAt,
    swing: sections[0].swing,
    outline: sections[0].rotorOutline,
    outlineAssumed: sections[0].outlineAssumed,
    warnings: [...new Set(sections.flatMap((s) => s.warnings))],
  });
  return { sections, capacitancesAt, parallel };
}
