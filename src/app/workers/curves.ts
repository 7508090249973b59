import { type AudioLimits, type CurveOptions, type SetDescription, stationCurves } from '../../engine/index.ts';
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
  return { audio, resonance, band, q: qPlots(curves, covered), detector: detectorPlot(curves, set) };
}
