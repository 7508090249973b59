import type { DetectorWarnings } from '../../../../engine/facts/detector-warnings.ts';
import { formatNumber, formatQuantity } from '../../../../engine/units/format.ts';
import type { SentencesFor } from './sentences-for.ts';

const volts = (v: number): string => formatQuantity(v, 'voltage', 2);
const kelvins = (t: number): string => `${Math.round(t)} K`;

export const detectorWarnings: SentencesFor<DetectorWarnings> = {
  'detector.whisker-loose': () => 'The cat’s whisker barely touches: the contact will crackle and fail.',
  'detector.whisker-crushing': () =>
    'The cat’s whisker presses so hard that it crushes the spot, which then conducts both ways.',
  'detector.cathode-cold': ({ temperature, emission }) =>
    `The cathode is too cold (${kelvins(temperature)}) to detect: it emits ${formatQuantity(emission, 'current', 2)} at most.`,
  'detector.cathode-hot': ({ temperature }) =>
    `A coated cathode does not last at ${kelvins(temperature)}: lower the heater voltage.`,
  'detector.measured-without-zero': () =>
    'No point was measured at 0 V or on both sides of it: no current at 0 V is assumed.',
  'detector.measured-few': ({ count }) =>
    `The curve rests on ${count} points: saturation current, slope, series resistance and leakage need four, three forwards and one in reverse. The result may be several dB out.`,
  'detector.measured-averaged': () =>
    'Some measured currents fall as the voltage rises; neighbouring points were averaged.',
  'detector.measured-no-current': () =>
    'No current flows at any measured point: nothing will be heard through this detector.',
  'detector.measured-range-short': ({ highest }) =>
    `The curve was measured to ${volts(highest)} only; above that a straight line is assumed.`,
  'detector.measured-no-junction': () =>
    'The measured points do not fit a one-way junction or valve: the result for a faint signal is a guess.',
  'detector.reverse-voltage': ({ reverse, limit }) =>
    `The reverse voltage of ${volts(reverse)} is above the detector’s rating of ${volts(limit)}: it will conduct backwards and give less than calculated.`,
  'detector.measured-points-apart': ({ carrier, gap }) =>
    `The carrier at the detector, ${volts(carrier)} peak, is smaller than the ${volts(gap)} between the points measured about 0 V: the result rests on the curve fitted through all points.`,
  'detector.outside-measured-range': ({ from, to, lowest, highest }) =>
    `The detector works from ${volts(from)} to ${volts(to)}, outside the measured ${volts(lowest)} to ${volts(highest)}.`,
  'detector.audio-unsolved': () =>
    'The audio of this signal cannot be calculated: the equations of the detector have no solution within reach.',
  'detector.negative-peak-clipping': () =>
    'Negative-peak clipping: the detector is cut off in the troughs of the modulation. Bring its audio load nearer to its direct-current load.',
  'detector.loaded-q-low': ({ loadedQ }) =>
    `The detector loads the tuned circuit to a Q of ${formatNumber(loadedQ, 2)}: harmonics of the carrier matter, and loudness may be 0.2 dB out. A tap nearer the earthed end would load it less.`,
  'detector.saturation-current-extrapolated': ({ measuredAt, temperature }) =>
    `The saturation current was measured at ${kelvins(measuredAt)} and is extrapolated to ${kelvins(temperature)}: it may be a factor of two or more out.`,
  'detector.harmonics-unsolved': () =>
    'The harmonics on the tuned circuit could not be calculated; these figures leave them out.',
};
