import { aerialLead } from './aerial-lead.ts';
import type { ArrangementDescription } from './arrangement-schema.ts';

/** Fields of an arrangement that name a coil; its traps and listed elements name others. */
export const COIL_KEYS = ['coil', 'aerialCoil', 'rotor'] as const;

/**
 * Whether a field of an arrangement names a coil.
 * @param key of the field
 * @returns true for the fields in `COIL_KEYS`
 */
export const namesCoil = (key: string): boolean => COIL_KEYS.some((one) => one === key);

/**
 * Coils that an arrangement has in circuit, those of its traps among them.
 * @param arrangement as read
 * @returns their names
 */
export function coilNamesOf(arrangement: ArrangementDescription): ReadonlySet<string> {
  const fields = arrangement as Partial<Record<string, unknown>>;
  const listed = arrangement.kind === 'elements' ? arrangement.elements : [];
  return new Set([
    ...COIL_KEYS.flatMap((key) => (typeof fields[key] === 'string' ? [fields[key]] : [])),
    ...aerialLead(arrangement).traps.flatMap(({ coil }) => coil ?? []),
    ...listed.flatMap((element) => (element.kind === 'coil' ? [element.coil] : [])),
  ]);
}
