export { type BandPlot, bandResponse, bandText } from './band.ts';
export { besideCalculated, type FigureBeside } from './beside-calculated.ts';
export { type CoveragePlot, coverage } from './coverage.ts';
export { type DetectorCurve, detectorCurve, detectorCurveText } from './detector-curve.ts';
export {
  type ComparedCurve,
  detectorsCompared,
  isNearZero,
  MOST_COMPARED,
} from './detectors-compared.ts';
export { dialsCompared, dialsOf, dialsReadout } from './dials-compared.ts';
export type { PlotSize } from './frame.ts';
export { heardWhen } from './heard-when.ts';
export { type HeaterCurves, heaterCurve } from './heater.ts';
export { type ImpedanceCurves, impedanceCurve } from './impedance.ts';
export { type FieldProfile, fieldProfile } from './profile.ts';
export { type QCurves, qAgainstFrequency, qText } from './q.ts';
export type { PlotReadout } from './read-off.ts';
export { readingsFit } from './readings-fit.ts';
export { type ResonancePlot, resonanceCurve, resonanceText } from './resonance.ts';
export { resonancesCompared, resonancesOf, resonancesReadout } from './resonances-compared.ts';
export { MOST_SETS } from './set-looks.ts';
export { audioSpectrumCurve } from './spectrum-beside.ts';
export { detectorPlot, qPlots } from './station-plots.ts';
export { tradeOff } from './trade-off.ts';
