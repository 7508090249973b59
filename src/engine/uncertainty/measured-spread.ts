import type { MeasuredValue } from '../kinds/measured/measured-schema.ts';
import { standardErrorOf } from '../kinds/measured/usual-errors.ts';
import { NINETY, plusOrMinus, type Spread, timesOrOver } from './spread.ts';

const AS_MEASURED = 'as measured';

/** Of a measured value whose error is a share of it: a factor about 1. @param usual standard error where none is stated. */
export const shareSpread = (measured: MeasuredValue, usual: number): Spread =>
  timesOrOver(Math.exp(NINETY * standardErrorOf(measured, usual)), AS_MEASURED);

/** Of a measured value, as a difference from it in its own unit. @param error one standard error in that unit. */
export const amountSpread = (error: number): Spread => plusOrMinus(NINETY * error, AS_MEASURED);
