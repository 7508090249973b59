import { type ResonanceCurve, resonanceSpan, stationCurves } from '../reception/curves.ts';
import type { FieldOptions } from '../reception/path/field.ts';
import type { ComparedSets } from './compare-sets.ts';

/**
 * What each of several sets passes around the station that it is tuned to, all as far on either side: as far as the
 * broadest of them needs.
 * @param compared from `compareSets`
 * @param options time and coastline, the same as there
 * @returns levels (dB) against frequency (Hz), in the order of the sets; undefined for one that does not tune so far
 * @throws RangeError for a set that cannot be built
 */
export function comparedCurves({ sets }: ComparedSets, options: FieldOptions = {}): (ResonanceCurve | undefined)[] {
  const spans = sets.flatMap(({ station }) =>
    station.dial ? [resonanceSpan(station.frequency, station.loadedQ)] : [],
  );
  const span = Math.max(...spans);
  return sets.map(({ set, station, dial }) =>
    station.dial
      ? stationCurves(set, station.index, [dial.lowest, dial.highest], { ...options, figures: station, span })
          ?.resonance
      : undefined,
  );
}
