import type { TransformerDescription } from '../kinds/loads/load-schema.ts';
import type { SetDescription } from '../set/description.ts';
import { formatNumber } from '../units/format.ts';
import { type BestOfSet, bestOf, checkStation, type FindOptions, levelOf } from './best.ts';

export interface BestTransformer extends BestOfSet {
  /** Without any transformer the station loses this against the best, dB; below 0: better without. */
  readonly lostWithout: number;
}

export interface TransformerOptions extends FindOptions {
  /** Everything but the ratio; default the set's own transformer, or an ordinary small one. */
  readonly like?: Omit<TransformerDescription, 'ratio'>;
}

/** Ordinary small output transformer of the valve days. Common practice, no source. */
const ORDINARY = { primaryResistance: 500, secondaryResistance: 1, primaryInductance: 30, leakage: 0.01 };

/**
 * The best turns ratio between detector and phones for a station: too low loads the detector, too high leaves the phones
 * little. Losses of the transformer are in it.
 * @param station index in the set's place. @throws RangeError for a station the set does not have.
 */
export function bestTransformer(
  set: SetDescription,
  station: number,
  options: TransformerOptions = {},
): BestTransformer {
  checkStation(set, station);
  const { transformer, ...bare } = set.load;
  const { ratio: now, ...own } = transformer ?? { ...ORDINARY, ratio: undefined };
  const like = options.like ?? own;
  const best = bestOf(
    {
      low: 0.3,
      high: 100,
      whole: false,
      with: (ratio) => ({ ...set, load: { ...set.load, transformer: { ...like, ratio } } as typeof set.load }),
      now,
      say: (ratio) => `with a ratio of ${formatNumber(ratio, 2)} to 1`,
    },
    station,
    options,
  );
  const without = levelOf({ ...set, load: bare as typeof set.load }, station, options);
  if (!best || without === undefined) throw new RangeError('the set cannot be built as described');
  const lostWithout = best.level - without;
  const plain =
    lostWithout > 0.5
      ? ` Without a transformer it loses ${formatNumber(lostWithout, 2)} dB.`
      : ` It is ${lostWithout < -0.5 ? `${formatNumber(-lostWithout, 2)} dB louder` : 'as loud'} without a transformer.`;
  return { ...best, lostWithout, sentence: best.sentence + plain };
}
