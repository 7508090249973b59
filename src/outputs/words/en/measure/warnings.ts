import type { MeasureWarnings } from '../../../../engine/facts/measure-warnings.ts';
import { formatQuantity } from '../../../../engine/units/format.ts';
import type { SentencesFor } from '../warnings/sentences-for.ts';

const hertz = (f: number): string => formatQuantity(f, 'frequency', 4);

export const measureWarnings: SentencesFor<MeasureWarnings> = {
  'measure.reading-misread': ({ index, frequency, there, from, to }) =>
    Number.isFinite(there)
      ? `readings[${index}] (${hertz(frequency)}) does not fit the other readings and was left out: its position fits ${hertz(there)} (${hertz(from)} to ${hertz(to)}).`
      : `readings[${index}] (${hertz(frequency)}) does not fit the other readings and was left out: no frequency belongs to its position.`,
  'measure.too-few-to-suspect': ({ given, least }) =>
    `With ${given} readings a misread one cannot be found; that takes at least ${least}.`,
  'measure.series-resistance-unseen': () =>
    'The series resistance cannot be seen in these points: measure at higher currents.',
};
