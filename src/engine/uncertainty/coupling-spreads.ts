import type { SetCircuit } from '../built/set-circuit.ts';
import { USUAL_ERROR } from '../kinds/measured/usual-errors.ts';
import type { SetInput } from './input.ts';
import { shareSpread } from './measured-spread.ts';
import { COMMON_PRACTICE, timesOrOver } from './spread.ts';

/** The coupling of two coils by where they stand, and where it is given, ×/÷. */
export const COUPLING_FACTORS = { placed: 1.3, given: 1.1 } as const;
const PLACED = timesOrOver(COUPLING_FACTORS.placed, COMMON_PRACTICE);
const GIVEN = timesOrOver(COUPLING_FACTORS.given, COMMON_PRACTICE);

/** How closely two coils link each other: their distance as built and the field of other metal are not as drawn. */
export function couplingSpreads({ set: { arrangement } }: SetCircuit): SetInput[] {
  if (arrangement.kind !== 'coupled' && arrangement.kind !== 'two circuits') return [];
  const { coupling: given, measured } = arrangement;
  const calculated = given === undefined ? PLACED : GIVEN;
  return [
    {
      id: 'coupling',
      settledBy: 'coupling',
      spread: measured?.coupling ? shareSpread(measured.coupling, USUAL_ERROR.coupling) : calculated,
      changes: (coupling) => ({ coupling }),
    },
  ];
}
