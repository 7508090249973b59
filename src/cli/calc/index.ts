import { aerialCalculation } from './aerial.ts';
import { bandCalculation } from './band.ts';
import { bestWireCalculation } from './best-wire.ts';
import type { Calculation } from './calculation.ts';
import { coilCalculation } from './coil.ts';
import { couplingCalculation } from './coupling.ts';
import { detectionCalculation } from './detection.ts';
import { detectorCalculation } from './detector.ts';
import { earthCalculation } from './earth.ts';
import { fitCalculation } from './fit.ts';
import { groundwaveCalculation } from './groundwave.ts';
import { noiseCalculation } from './noise.ts';
import { receptionCalculation } from './reception.ts';
import { skywaveCalculation } from './skywave.ts';
import { turnsCalculation } from './turns.ts';
import { varyCalculation } from './vary.ts';
import { wireCalculation } from './wire.ts';

export const CALCULATIONS: readonly Calculation[] = [
  coilCalculation,
  couplingCalculation,
  wireCalculation,
  turnsCalculation,
  bestWireCalculation,
  bandCalculation,
  aerialCalculation,
  earthCalculation,
  groundwaveCalculation,
  skywaveCalculation,
  noiseCalculation,
  detectorCalculation,
  detectionCalculation,
  receptionCalculation,
  varyCalculation,
  fitCalculation,
];
