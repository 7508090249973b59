import { aerial } from './aerial.ts';
import { band } from './band.ts';
import { bestWire } from './best-wire.ts';
import type { Calculation } from './calculation.ts';
import { coil } from './coil.ts';
import { coupling } from './coupling.ts';
import { detection } from './detection.ts';
import { detector } from './detector.ts';
import { earth } from './earth.ts';
import { fit } from './fit.ts';
import { groundwave } from './groundwave.ts';
import { noise } from './noise.ts';
import { reception } from './reception.ts';
import { skywave } from './skywave.ts';
import { turns } from './turns.ts';
import { vary } from './vary.ts';
import { wire } from './wire.ts';

export const CALCULATIONS: readonly Calculation[] = [
  coil,
  coupling,
  wire,
  turns,
  bestWire,
  band,
  aerial,
  earth,
  groundwave,
  skywave,
  noise,
  detector,
  detection,
  reception,
  vary,
  fit,
];
