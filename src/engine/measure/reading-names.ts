import { closest } from '../fields/fields.ts';
import { isRecord } from '../fields/introspect.ts';
import type { Problem } from '../fields/problem.ts';
import { isLoop } from '../kinds/loops.ts';
import type { SetDescription } from '../set/description.ts';
import { noSuchStation, stationNamed } from '../set/want-problems.ts';
import { givenValue } from '../units/refusal.ts';
import { MEASUREMENTS, type MeasurementKind } from './measurements.ts';

function isOfCoil({ kind, of }: Readonly<Record<string, unknown>>): boolean {
  if (kind === 'value') return typeof of === 'string' && of.startsWith('coil.');
  if (typeof kind !== 'string' || !Object.hasOwn(MEASUREMENTS, kind)) return false;
  return Object.values(MEASUREMENTS[kind as MeasurementKind].yields).some(({ settles }) =>
    settles?.startsWith('coil.'),
  );
}

/**
 * Readings that name a coil or a station that the set has not, and those of a set with a band switch that name no coil: it
 * has one in circuit on each band.
 * @param set as read
 * @param readings as written
 * @returns a problem each, at "measurements[i].coil" or ".station"
 */
export function namesNotOf(set: SetDescription, readings: readonly unknown[]): readonly Problem[] {
  const { bands, aerial, coils, place } = set;
  const names = coils.map(({ name }) => name);
  return readings.flatMap((one, i): Problem[] => {
    if (!isRecord(one)) return [];
    const problems: Problem[] = [];
    const { coil, station } = one;
    const expected = { code: 'coil-name', names } as const;
    const path = `measurements[${i}]`;
    if (coil === undefined && bands && !isLoop(aerial) && isOfCoil(one))
      problems.push({ path: `${path}.coil`, expected });
    if (typeof coil === 'string' && names.length > 0 && !names.includes(coil)) {
      const near = closest(coil, names);
      problems.push({
        path: `${path}.coil`,
        expected,
        given: givenValue(coil),
        ...(near !== undefined && { hint: { code: 'did-you-mean', option: near } as const }),
      });
    }
    if (typeof station === 'string' && stationNamed(place.stations, station) === undefined)
      problems.push(noSuchStation(`${path}.station`, place.stations, station));
    return problems;
  });
}
