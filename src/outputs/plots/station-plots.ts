import type { StationCurves } from '../../engine/reception/curves.ts';
import type { SetDescription } from '../../engine/set/description.ts';
import { detectorName, detectorShortNames } from '../words/index.ts';
import type { DetectorCurve } from './detector-curve.ts';
import type { QCurves } from './q.ts';

/** A plot for each coil. @param covered ends of the tuning range, Hz. */
export const qPlots = ({ q }: Pick<StationCurves, 'q'>, covered: readonly [number, number]): QCurves[] =>
  q.map((coil) => ({ covered, coils: [coil] }));

/** The set's own detector where it works. */
export const detectorPlot = (
  { detector: { id, points, operating } }: Pick<StationCurves, 'detector'>,
  { detector }: Pick<SetDescription, 'detector'>,
): DetectorCurve => ({
  curves: [{ name: detectorName(id), shorter: detectorShortNames(detector), points }],
  operating,
});
