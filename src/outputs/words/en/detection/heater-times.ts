import {
  type HeaterTime,
  type HeaterTimes,
  WORKING_EMISSION,
} from '../../../../engine/parts/detector/thermionic/heater-times.ts';
import { formatNumber, formatQuantity } from '../../../../engine/units/format.ts';

const EMISSION = formatQuantity(WORKING_EMISSION, 'current', 2);

const seconds = (t: number): string => formatNumber(t, t < 10 ? 1 : 2);
const ranged = ({ time, range: [low, high] }: HeaterTime): string =>
  `${seconds(time)} s (90 % range ${seconds(low)}–${seconds(high)} s)`;

/** How long a valve takes to work and goes on working: the same sentence wherever a heater is switched. */
export const heaterTimeWords = (times: HeaterTimes | undefined): string =>
  times
    ? `The cathode emits ${EMISSION}, below which nothing is detected, ${ranged(times.worksAfter)} after the heater is switched on from cold, and until ${ranged(times.worksFor)} after it is switched off.`
    : `The cathode never emits the ${EMISSION} below which nothing is detected: the heater voltage is too low.`;
