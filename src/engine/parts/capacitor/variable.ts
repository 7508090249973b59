import { demandWithin } from '../../facts/impossible-values.ts';
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
import { type Bare, type Fittings, type VariableCapacitor, withFittings } from './model.ts';
import { type MarkedVariable, markedVariable, type VanedVariable, vanedVariable } from './vanes.ts';

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
 * @param spec one of the ways to know a capacitor, SI
 * @returns capacitance (F) by position (0 open to 1 meshed), its spread and losses
 * @throws RangeError when it cannot be as described.
 */
export const variableCapacitor = (spec: VariableSpec): VariableCapacitor => withFittings(bareOf(spec), spec);

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
      demandWithin('capacitor.capacitance', C, { above: 0 });
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
