import {
  type AudioLimits,
  type CoilQPoint,
  type CurveOptions,
  type SetDescription,
  stationCurves,
} from '../../engine/index.ts';
import {
  type BandPlot,
  type DetectorCurve,
  detectorPlot,
  type QCurves,
  qPlots,
  type ResonancePlot,
} from '../../outputs/plots/index.ts';

/** What the plots of the tuned circuit and the detector are drawn from. */
export interface Curves {
  /** What the detector and what follows it do to the programme. */
  readonly audio: AudioLimits;
  readonly resonance: ResonancePlot;
  readonly band: BandPlot;
  /** A plot for each coil. */
  readonly q: readonly QCurves[];
  /** Of each coil, at the station's frequency. */
  readonly qAtStation: readonly CoilQPoint[];
  readonly detector: DetectorCurve;
}

/**
 * The set tuned to one station: what it passes beside it and across the band, and where its detector works.
 * @param covered ends of what the set tunes to, Hz.
 * @returns undefined where there is no such station.
 */
export function curvesFor(
  set: SetDescription,
  index: number,
  covered: readonly [number, number],
  options: CurveOptions = {},
): Curves | undefined {
  const curves = stationCurves(set, index, covered, options);
  if (!curves) return undefined;
  const { audio, resonance, band } = curves;
  const q = qPlots(curves, covered);
  const qAtStation = curves.q.map(({ atStation }) => atStation);
  return { audio, resonance, band, q, qAtStation, detector: detectorPlot(curves, set) };
}
