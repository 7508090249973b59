import { intelligibilityWhen } from '../reception/hearing/index.ts';
import type { HeardBand } from '../reception/hearing/types.ts';
import type { Decibels, Ratio } from '../units/quantities.ts';
import { DRAWS, type Drawn, rangedOf } from './draws.ts';
import type { EarDraws } from './hearing-spreads.ts';

/** Every so many draws are enough for an index that goes by steps of a hundredth. */
const STEP = 8;

/**
 * The index of intelligibility of sets drawn: its median at the median level, as the verdict has it.
 * @param bands of speech at the level that the middle of `levels` is of.
 * @param ratios wanted over unwanted programmes, dB.
 */
export function intelligibilityDraws(
  bands: readonly HeardBand[],
  ratios: readonly Decibels[],
  levels: { readonly middle: Decibels; readonly median: Decibels; readonly draws: Float64Array },
  ears: EarDraws,
): Drawn {
  const when = intelligibilityWhen(bands, ratios);
  const at = (louder: Decibels, threshold: Decibels, noise: Decibels): Ratio => when({ louder, threshold, noise });
  const median = at(levels.median - levels.middle, 0, 0);
  const draws = Float64Array.from({ length: Math.floor(DRAWS / STEP) }, (_, i) => {
    const k = i * STEP;
    return at(levels.draws[k] - levels.middle, ears.threshold[k], ears.noise[k]);
  });
  const [low, high] = rangedOf(draws).range;
  return { middle: at(0, 0, 0), median, range: [Math.min(low, median), Math.max(high, median)] };
}
