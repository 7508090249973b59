export { DIELECTRICS, type Dielectric, type DielectricName, dielectric } from './dielectrics.ts';
export { type BandFit, type BandWanted, fitBand } from './fit.ts';
export { type FixedCapacitor, type FixedCapacitorSpec, fixedCapacitor } from './fixed.ts';
export { circularPlates, rectangularPlates } from './fringe.ts';
export type { BookCapacitor, FoilCapacitor, TubeCapacitor } from './homemade.ts';
export { lawCapacitance, lawPosition, lawSlope, type Vane, type VaneLaw, type VanePoint, vane } from './law.ts';
export type { MeasuredVariable } from './measured.ts';
export type { Fittings, VariableCapacitor } from './model.ts';
export { E24, type PreferredValue, preferredValue } from './preferred.ts';
export type { MarkedVariable, VanedVariable } from './vanes.ts';
export { usualMinimum } from './vanes.ts';
export {
  type FixedTuning,
  type Gang,
  ganged,
  plainVariable,
  type VariableSpec,
  variableCapacitor,
} from './variable.ts';
