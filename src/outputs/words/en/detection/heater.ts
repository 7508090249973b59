import { HEATER_WATCHED, type HeaterRun } from '../../../../engine/reception/detection/heater.ts';
import { formatNumber, formatQuantity } from '../../../../engine/units/format.ts';
import { heaterTimeWords } from './heater-times.ts';

const volts = (v: number): string => formatQuantity(v, 'voltage', 2);
const watts = (p: number): string => formatQuantity(p, 'power', 2);
const amperes = (i: number): string => formatQuantity(i, 'current', 2);
const seconds = (t: number): string =>
  Number.isFinite(t) ? `${formatNumber(t, t < 10 ? 1 : 2)} s` : `more than ${HEATER_WATCHED} s`;

/** Changes of level smaller than this are not heard, dB. */
const HEARD = 0.5;

function cost(change: number): string {
  if (Math.abs(change) < HEARD) return 'the loudness stays the same';
  return change < 0
    ? `the station is ${formatNumber(-change, 2)} dB quieter`
    : `the station is ${formatNumber(change, 2)} dB louder, because the valve loads the coil less`;
}

/** What a run of the heater means at the bench. @param less the same with less voltage on the heater. */
export function heaterSentences(run: HeaterRun, less?: HeaterRun & { readonly emissionShare: number }): string[] {
  const { warm } = run;
  const sentences = [
    `With ${volts(run.voltage)} on the heater the cathode reaches ${Math.round(warm.temperature)} K and the heater takes ${watts(run.power)}. ${heaterTimeWords(run.times)}`,
    `This station is within 6 dB of its full loudness after ${seconds(run.halfAfter)}, within 1 dB after ${seconds(run.fullAfter)}.`,
    `Switched off, the valve goes on working while the cathode cools: 3 dB are lost after ${seconds(run.lastsFor)}, 20 dB after ${seconds(run.goneAfter)}.`,
  ];
  if (less)
    sentences.push(
      `At ${volts(less.voltage)} on the heater ${cost(less.warm.soundPressureLevel - warm.soundPressureLevel)}. It warms up in ${seconds(less.fullAfter)} and takes ${watts(less.power)}; the cathode lasts longer and can emit ${formatNumber(100 * less.emissionShare, 2)} % of the current. With the station on, ${amperes(less.warm.current)} flows instead of ${amperes(warm.current)}.`,
    );
  return sentences;
}
