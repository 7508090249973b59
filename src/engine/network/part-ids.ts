import { type PartId, partId } from './ids.ts';

/** The parts of which a set has at most one. */
export const PART = {
  aerial: partId('aerial'),
  earth: partId('earth'),
  /** A frame or rod: aerial and coil in one. */
  loop: partId('loop'),
  tuning: partId('tuning'),
  aerialTuning: partId('aerial-tuning'),
  seriesCapacitor: partId('series-capacitor'),
  parallelCapacitor: partId('parallel-capacitor'),
  pumpCapacitor: partId('pump-capacitor'),
  detector: partId('detector'),
  secondDetector: partId('second-detector'),
  biasCell: partId('bias-cell'),
  byPass: partId('by-pass'),
  equaliserResistor: partId('equaliser/resistor'),
  equaliserCapacitor: partId('equaliser/capacitor'),
  transformer: partId('transformer'),
  loadResistor: partId('load-resistor'),
  couplingCapacitor: partId('coupling-capacitor'),
  load: partId('load'),
} as const;

/**
 * Coil i of the description.
 * @param i its place in `coils`, from 0
 * @returns the part's id
 */
export const coilPart = (i: number): PartId => partId(`coil:${i}`);
export const trapCoil = (i: number): PartId => partId(`trap:${i}/coil`);
export const trapCapacitor = (i: number): PartId => partId(`trap:${i}/capacitor`);
/** Entry i of a list of elements. */
export const listedPart = (i: number): PartId => partId(`element:${i}`);
