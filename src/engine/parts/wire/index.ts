export { enamelMaximum, enamelUsual } from './enamel.ts';
export { METAL_FIGURES, METALS, type Metal, ROOM, resistivity } from './metal.ts';
export { skinImpedance, skinParameter, transverseLoss, wireResistance } from './skin.ts';
export {
  bundleDiameter,
  COVERINGS,
  type Covering,
  closePitch,
  metalArea,
  overallDiameter,
  turnsThatFit,
  type Wire,
  wireWeight,
} from './wire.ts';
