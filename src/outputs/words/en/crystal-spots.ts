import { ofHundred, type SpotWorth } from '../../../engine/reception/detection/spots.ts';
import { formatNumber } from '../../../engine/units/format.ts';
import { listOf } from './grammar.ts';

const dB = (x: number): string => {
  const level = Math.abs(x);
  return level < 3 ? `${formatNumber(level, level < 1 ? 1 : 2)} dB` : `${Math.round(level)} dB`;
};

/** How loud a station is through one spot against another. */
function against(one: SpotWorth, other: SpotWorth): string {
  const difference = one.soundPressureLevel - other.soundPressureLevel;
  if (Math.abs(difference) < 0.5) return 'no louder';
  return difference > 0 ? `${dB(difference)} louder` : `${dB(difference)} quieter`;
}

/** What a very good spot adds to a good one. */
const added = (more: number): string =>
  more < 0.3 ? 'a very good one adds almost nothing' : `a very good one adds ${dB(more)}`;

/**
 * What the spots of the crystal at hand are worth on a station, in a few sentences: its spots are not the median good,
 * fair and poor ones of the library.
 */
export function crystalSpots(worth: readonly SpotWorth[], station: string): string {
  const of = (quality: SpotWorth['quality']) => worth.find((spot) => spot.quality === quality);
  const [poor, fair, good, best] = [of('poor'), of('fair'), of('good'), of('very good')];
  const counts = ofHundred(worth.map((spot) => spot.share));
  const grains = `Of 100 grains of this crystal about ${listOf(worth.map(({ quality }, i) => `${counts[i]} are ${quality}`))}.`;
  if (!good || !fair) return grains;
  const through = poor
    ? `${against(good, fair)} than through a fair one and ${against(good, poor)} than through a poor one`
    : `${against(good, fair)} than through a fair one`;
  const gain = best ? `; ${added(best.soundPressureLevel - good.soundPressureLevel)}` : '';
  return `On this crystal ${station} is, through a good spot, ${through}${gain}. Crystals differ: elsewhere a good, fair or poor spot means the median of its kind. ${grains}`;
}
