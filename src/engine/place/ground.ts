import type { Ratio, SiemensPerMetre } from '../units/quantities.ts';

/** Electrical constants of a kind of ground at long and medium wave. */
export interface GroundConstants {
  /** S/m, above 0. */
  readonly conductivity: SiemensPerMetre;
  /** Relative permittivity, at least 1. */
  readonly permittivity: Ratio;
}

/**
 * Ground by kind. Source: ITU Handbook on Ground Wave Propagation (2014), table 2, and the captions of the
 * Rec. ITU-R P.368 curves (reference/propagation-checks.json, "ground-1"). "dry" is the handbook's "medium dry ground".
 */
export const GROUND_KINDS = {
  sea: { conductivity: 5, permittivity: 70 },
  'fresh water': { conductivity: 3e-3, permittivity: 80 },
  'very wet': { conductivity: 3e-2, permittivity: 40 },
  wet: { conductivity: 1e-2, permittivity: 30 },
  average: { conductivity: 3e-3, permittivity: 22 },
  dry: { conductivity: 1e-3, permittivity: 15 },
  'very dry': { conductivity: 1e-4, permittivity: 3 },
} as const satisfies Readonly<Record<string, GroundConstants>>;
/** A kind of ground with figures of its own. */
export type GroundKind = keyof typeof GROUND_KINDS;

/** A kind by name, or its two figures. */
export type Ground = GroundKind | GroundConstants;

/**
 * The constants of a ground given by kind or by figures.
 * @throws RangeError for an unknown kind or impossible figures.
 */
export function groundConstants(ground: Ground): GroundConstants {
  if (typeof ground === 'string') {
    if (Object.hasOwn(GROUND_KINDS, ground)) return GROUND_KINDS[ground];
    throw new RangeError(`unknown ground "${ground}": expected one of ${Object.keys(GROUND_KINDS).join(', ')}`);
  }
  const { conductivity, permittivity } = ground;
  if (!(conductivity > 0 && conductivity < Number.POSITIVE_INFINITY))
    throw new RangeError(`conductivity must be above 0 S/m, got ${conductivity}`);
  if (!(permittivity >= 1 && permittivity < Number.POSITIVE_INFINITY))
    throw new RangeError(`permittivity must be at least 1, got ${permittivity}`);
  return { conductivity, permittivity };
}

/**
 * Whether two grounds have the same conductivity and permittivity.
 * @param a one ground
 * @param b another
 * @returns true for the same figures
 */
export const sameGround = (a: GroundConstants, b: GroundConstants): boolean =>
  a.conductivity === b.conductivity && a.permittivity === b.permittivity;
