import { once } from '../numerics/lazily.ts';
import { paretoBest } from '../numerics/pareto.ts';
import { type Heard, PEAKS } from '../reception/hearing/index.ts';
import { MASKING } from '../reception/hearing/intelligibility.ts';
import { LISTENERS } from '../reception/hearing/threshold.ts';
import type { StationDescription } from '../set/place.ts';
import { decibels } from '../units/quantities.ts';
import { DRAWS, deviates } from './draws.ts';
import { between, COMMON_PRACTICE, plusOrMinus, timesOrOver, valueAtDeviate } from './spread.ts';

/** Mean depth of a programme against the usual depth stated. */
export const MODULATION = timesOrOver(1.4, COMMON_PRACTICE);

/** Depth of a programme in every set drawn, dB about the usual one. @param name of the station's draws */
export function depthDraws(name: string): Float64Array {
  return deviates(`modulation/${name}`).map((u) => decibels(valueAtDeviate(MODULATION, u)));
}

/** Threshold of hearing about that of the usual listener, dB. */
const [GOOD, USUAL, POOR] = LISTENERS;
export const HEARING = between('difference', [GOOD - USUAL, 0, POOR - USUAL], 'ISO 7029:2000, from memory');

/** Noise of a room of its kind, dB. */
export const ROOM_NOISE = plusOrMinus(6, COMMON_PRACTICE);

/** What ear and room are in every set drawn, dB about the usual ones. */
export interface EarDraws {
  readonly threshold: Float64Array;
  readonly noise: Float64Array;
}

/** One listener and one room for all stations. */
export const earDraws = once(
  (): EarDraws => ({
    threshold: deviates('hearing').map((u) => valueAtDeviate(HEARING, u)),
    noise: deviates('room noise').map((u) => valueAtDeviate(ROOM_NOISE, u)),
  }),
);

/**
 * How far a programme stands over threshold and room in every set drawn, by level, hearing and room drawn together.
 * @param heard at the level that `levels` is about.
 */
export function marginDraws(
  station: StationDescription,
  heard: Heard,
  levels: Float64Array,
): { margin: Float64Array; inSilence: Float64Array } {
  const { threshold, noise } = earDraws();
  const peaks = PEAKS[station.programme];
  // Only bands that no other is ahead of, over threshold and room: the programme stands out most in one of these.
  const bands = paretoBest(
    heard.bands.map(({ level, threshold, noise }) => ({ scores: [level - threshold, level - noise] as const })),
  );
  const margin = new Float64Array(DRAWS);
  const inSilence = new Float64Array(DRAWS);
  for (let k = 0; k < DRAWS; k++) {
    const up = levels[k] - heard.spl + peaks;
    const deaf = threshold[k];
    const noisy = noise[k] - MASKING;
    let best = Number.NEGATIVE_INFINITY;
    let silent = Number.NEGATIVE_INFINITY;
    for (let i = 0; i < bands.length; i++) {
      const [overThreshold, overNoise] = bands[i].scores;
      const over = overThreshold - deaf;
      silent = Math.max(silent, over);
      best = Math.max(best, Math.min(over, overNoise - noisy));
    }
    margin[k] = up + best;
    inSilence[k] = up + silent;
  }
  return { margin, inSilence };
}
