import type { MeasureWarnings } from '../../../../engine/facts/measure-warnings.ts';
import { formatQuantity } from '../../../../engine/units/format.ts';
import { optionName } from '../fields/options.ts';
import type { SentencesFor } from '../warnings/sentences-for.ts';

const hertz = (f: number): string => formatQuantity(f, 'frequency', 4);
const lawName = (id: string): string => optionName('tuning.law', id);
const percent = (share: number): string => `${(100 * share).toFixed(share > 0.995 || share < 0.005 ? 1 : 0)} %`;

export const measureWarnings: SentencesFor<MeasureWarnings> = {
  'measure.reading-misread': ({ index, frequency, there, from, to }) =>
    Number.isFinite(there)
      ? `readings[${index}] (${hertz(frequency)}) does not fit the other readings and was left out: its position fits ${hertz(there)} (${hertz(from)} to ${hertz(to)}).`
      : `readings[${index}] (${hertz(frequency)}) does not fit the other readings and was left out: no frequency belongs to its position.`,
  'measure.too-few-to-suspect': ({ given, least }) =>
    `With ${given} readings a misread one cannot be found; that takes at least ${least}.`,
  'measure.law-chosen': ({ law, share, other, otherShare }) =>
    `The readings fit a ${lawName(law)} capacitor best (${percent(share)} likely${other === undefined ? '' : `; ${lawName(other)}: ${percent(otherShare ?? 0)}`}); the ranges count every law by how likely it is.`,
  'measure.law-not-as-described': ({ law, described }) =>
    `The readings exclude the ${lawName(described)} capacitor of the description: ${lawName(law)} fits. Inductance and strays are taken by themselves, and the readings do not correct the ends of the capacitor. Correct its law in the description.`,
  'measure.other-law': ({ stated, described }) =>
    described === undefined
      ? `The readings state a ${lawName(stated)} capacitor, the description has one of another kind: the scale of the described one is used. Correct whichever is wrong.`
      : `The readings state a ${lawName(stated)} capacitor, the description a ${lawName(described)} one: the described law is used. Correct whichever is wrong.`,
  'measure.dial-not-described': () =>
    'The description has no variable capacitor whose capacitance rises along its scale: inductance and strays are taken by themselves, and the readings cannot correct the capacitor.',
  'measure.no-coupled-coils': () =>
    'The description has no two coils whose coupling is known: nothing is set beside this figure, and it has no place there.',
  'measure.no-prediction': ({ station }) =>
    station === undefined
      ? 'The reading names no station: nothing predicted is set beside it. State "station".'
      : `Nothing is predicted for a station “${station}” of this set: it is not among its stations, out of range, or too weak for ranges.`,
  'measure.temperature-supposed': ({ temperature, deviation }) =>
    `No temperature is stated: ${Math.round(temperature - 273.15)} °C is supposed, ${deviation} K more or less. State it, for the ideality to be surer.`,
  'measure.loudness-shared': () =>
    'Field, aerial, detector, phones and hearing all make the level. Used, it corrects the field of the station and the sensitivity of the phones, each by its share of the doubt; the same reading of another station tells the two apart.',
  'measure.series-resistance-unseen': () =>
    'The series resistance cannot be seen in these points: measure at higher currents.',
  'measure.leakage-unseen': ({ least }) =>
    `The leakage cannot be seen in these points, only that it is above ${formatQuantity(least, 'resistance', 2)}: measure at higher reverse voltages.`,
  'measure.scatter-above-errors': ({ times }) =>
    `The readings scatter ${times.toFixed(1)} times as much as their errors allow; the ranges are widened by that.`,
  'measure.level-ratio-small': ({ ratio, least }) =>
    `A level ratio of ${ratio.toFixed(2)} is too near the peak: most of the error of Q is that of the ratio. Take at least ${least}, best 1.5 to 3.`,
  'measure.natural-frequency-unseen': () =>
    'The natural frequency cannot be seen in these readings; the figure is the usual one of a wire aerial. Read at a higher frequency too.',
  'measure.coupling-unseen': ({ most }) =>
    `The mutual inductance is within the error of the readings; it is below ${formatQuantity(most, 'inductance', 2)}.`,
  'measure.coupling-without-q': () =>
    'Without the Q of the circuits the coupling coefficient is a little low: it is √(k² + 1/Q²).',
  'measure.auxiliary-earths-poor': ({ share }) =>
    `The standard error is ${Math.round(100 * share)} % of the resistance: the auxiliary earths have too much resistance. Drive them deeper or wet them.`,
  'measure.electrodes-share-soil': () =>
    'Electrodes near each other share soil and the resistance comes out low: by 9 % for 1 m rods 2 m apart, 2 % at 10 m. Give the rods and their distances to correct it.',
  'measure.earth-of-dry-soil': ({ resistance }) =>
    `${formatQuantity(resistance, 'resistance', 2)} is the resistance at the low frequency of the measurement. So much means dry soil or little metal in it; in dry soil the same earth has less at radio frequency, down to a third.`,
  'measure.phase-unseen': () => 'The phase is within the errors of the three voltages: the range is open at one end.',
  'measure.ringing-at-audio': ({ frequency }) =>
    `At ${hertz(frequency)} Q is that of the copper and of the input’s resistance, not the Q at radio frequency: it is not taken into the description.`,
  'measure.one-trial': ({ deviation }) =>
    `One trial scatters by about ${deviation} dB: repeat it four times, twice from below and twice from above.`,
  'measure.current-near-floor': ({ current }) =>
    `${formatQuantity(current, 'current', 2)} is near the least that the meter shows: most of the error is the meter’s.`,
  'measure.q-lower-bound': ({ least }) =>
    `Q is above ${least.toFixed(0)}; this measurement cannot say more. Measure the width of the resonance.`,
  'measure.analyser-not-calibrated': ({ highest }) =>
    `The reflection reaches ${highest.toFixed(3)}; no passive part reflects more than 1. The analyser was not calibrated: only the resonance is given.`,
  'measure.fixture-not-thin': ({ disagreement }) =>
    `S11 and S21 do not agree (by ${disagreement.toFixed(3)}): the fixture is more than the part between its ports. Take its leads off by calibration at its ends.`,
};
