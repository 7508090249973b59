import { type Path, samePath } from '../kinds/adjustment.ts';
import { correlationBetween, type MeasuredCorrelation, readCorrelations } from '../set/correlations.ts';
import type { SetDescription } from '../set/description.ts';
import type { PlaceDescription } from '../set/place.ts';
import { valueAtPath } from '../set/write.ts';
import type { Ratio } from '../units/quantities.ts';
import { correlationFactor } from './correlation-factor.ts';

/** A share of the deviate of the phones' sensitivity, or of the own deviate of another station's field. */
export interface FieldFollowing {
  /** A station by its place in the list, always one before. */
  readonly other: 'sensitivity' | number;
  readonly share: Ratio;
}

/** A set with what was measured of it, or a place alone: then every field is drawn by itself. */
export interface MeasuredAtPlace {
  readonly place: PlaceDescription;
  readonly load?: SetDescription['load'];
  readonly correlations?: SetDescription['correlations'];
}

const SENSITIVITY: Path = ['load', 'measured', 'sensitivity'];

/**
 * What the field of a station is drawn together with. How loud a station sounds says something of its field and of the
 * phones at once: their errors go together, and so do those of several stations heard with the same phones.
 * @param at a set; its fields and phones as measured
 * @param station place in the list
 * @returns shares of the phones' deviate and of those of stations before, nothing where it is drawn by itself
 */
export function fieldFollows(at: MeasuredAtPlace, station: number): readonly FieldFollowing[] {
  const known = readCorrelations(at.correlations).filter(({ first, second }) =>
    [first, second].every((path) => valueAtPath(at, path) !== undefined),
  );
  const members: readonly { readonly other: FieldFollowing['other']; readonly path: Path }[] = [
    { other: 'sensitivity' as const, path: SENSITIVITY },
    ...at.place.stations.slice(0, station + 1).map((_, i) => ({
      other: i,
      path: ['place', 'stations', i, 'measured', 'fieldStrength'],
    })),
  ].filter(({ path }) => known.some((one) => isOf(one, path)));
  const last = members.length - 1;
  if (members[last]?.other !== station) return [];
  const n = members.length;
  const R = correlationFactor(
    Float64Array.from({ length: n * n }, (_, k) =>
      correlationBetween(known, members[Math.floor(k / n)].path, members[k % n].path),
    ),
    n,
  );
  return members
    .slice(0, last)
    .map(({ other }, i) => ({ other, share: R[i * n + last] }))
    .filter(({ share }) => share !== 0);
}

const isOf = ({ first, second }: MeasuredCorrelation, path: Path): boolean =>
  samePath(first, path) || samePath(second, path);
