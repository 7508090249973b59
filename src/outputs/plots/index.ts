export { type BandResponse, bandResponse, bandText } from './band.ts';
export { type Coverage, type CoveredBand, coverage, coverageText, gapsBetween } from './coverage.ts';
export { type DetectorCurve, detectorCurve, detectorCurveText } from './detector-curve.ts';
export {
  type ComparedCurve,
  detectorsCompared,
  detectorsComparedText,
  isNearZero,
  MOST_COMPARED,
} from './detectors-compared.ts';

export type { PlotSize } from './frame.ts';
export { type HeaterCurves, heaterCurve } from './heater.ts';
export { type FieldProfile, fieldProfile, profileText } from './profile.ts';
export { type QCurves, type QPoint, qAgainstFrequency, qText } from './q.ts';
export { halfPowerPoints, type ResonanceCurve, resonanceCurve, resonanceText } from './resonance.ts';
export { detectorPlot, qPlots } from './station-plots.ts';
