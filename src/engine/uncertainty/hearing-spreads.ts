import { type Heard, PEAKS } from '../reception/hearing/index.ts';
import { MASKING } from '../reception/hearing/intelligibility.ts';
import { LISTENERS } from '../reception/hearing/threshold.ts';
import type { StationDescription } from '../set/place.ts';
import { type Decibels, decibels } from '../units/quantities.ts';
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
const HEARING = between('difference', [GOOD - USUAL, 0, POOR - USUAL], 'ISO 7029:2000, from memory');

/** Noise of a room of its kind, dB. */
const ROOM_NOISE = plusOrMinus(6, COMMON_PRACTICE);

/** What ear and room are in every set drawn, dB about the usual ones. */
export interface EarDraws {
  readonly threshold: (draw: number) => Decibels;
  readonly noise: (draw: number) => Decibels;
}

/** One listener and one room for all stations. */
export function earDraws(): EarDraws {
  const ears = deviates('hearing');
  const rooms = deviates('room noise');
  return { threshold: (k) => valueAtDeviate(HEARING, ears[k]), noise: (k) => valueAtDeviate(ROOM_NOISE, rooms[k]) };
}

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
  const margin = new Float64Array(DRAWS);
  const inSilence = new Float64Array(DRAWS);
  for (let k = 0; k < DRAWS; k++) {
    const up = levels[k] - heard.spl + peaks;
    const deaf = threshold(k);
    const noisy = noise(k) - MASKING;
    let best = Number.NEGATIVE_INFINITY;
    let silent = Number.NEGATIVE_INFINITY;
    for (const band of heard.bands) {
      const over = band.level + up - band.threshold - deaf;
      silent = Math.max(silent, over);
      best = Math.max(best, Math.min(over, band.level + up - band.noise - noisy));
    }
    margin[k] = best;
    inSilence[k] = silent;
  }
  return { margin, inSilence };
}
