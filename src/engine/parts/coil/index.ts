export { coilInductance, makeCoil } from './coil.ts';
export { type Coupling, couple, type Placing } from './coupling.ts';
export { bestWire, spreadFor, type TurnsWanted, turnsFor, type Unwound, type WireChoice } from './design.ts';
export { FORMER_FIGURES, FORMERS, type Former } from './dielectrics.ts';
export type { CoilModel, Part } from './model.ts';
export { meanDiameterOn, windingOf } from './shapes.ts';
export type {
  BankSpec,
  BasketSpec,
  CoilShape,
  CoilSpec,
  CoreSpec,
  MeasuredSpec,
  MultilayerSpec,
  SolenoidSpec,
  SpiderSpec,
  SpiralSpec,
  WoundSpec,
} from './spec.ts';
export { type Section, type TappedCoil, tapForRatio, tappedCoil, tapRatio } from './taps.ts';
export { type Variometer, variometer } from './variometer.ts';
export type { Weave, Winding } from './winding.ts';
