import { aerial } from './aerial.ts';
import type { Calculation } from './calculation.ts';
import { detection } from './detection.ts';
import { detector } from './detector.ts';
import { earth } from './earth.ts';
import { groundwave } from './groundwave.ts';
import { noise } from './noise.ts';
import { reception } from './reception.ts';
import { skywave } from './skywave.ts';

export const CALCULATIONS: readonly Calculation[] = [
  aerial,
  earth,
  groundwave,
  skywave,
  noise,
  detector,
  detection,
  reception,
];
