export { METALS } from './metal.ts';
export { wireResistance } from './skin.ts';
export {
  COVERINGS,
  closePitch,
  overallDiameter,
  wireWeight,
} from './wire.ts';
