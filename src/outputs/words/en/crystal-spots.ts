import { type CrystalSpot, ofHundred } from '../../../engine/reception/detection/crystal-survey.ts';
import { formatNumber } from '../../../engine/units/format.ts';
import { listOf, plural } from './grammar.ts';

const dB = (x: number): string => {
  const level = Math.abs(x);
  return level < 3 ? `${formatNumber(level, level < 1 ? 1 : 2)} dB` : `${Math.round(level)} dB`;
};

/** How loud a station is through one spot against another. */
function against(one: CrystalSpot, other: CrystalSpot): string {
  const difference = one.soundPressureLevel - other.soundPressureLevel;
  if (Math.abs(difference) < 0.5) return 'no louder';
  return difference > 0 ? `${dB(difference)} louder` : `${dB(difference)} quieter`;
}

/** What a very good spot adds to a good one. */
const added = (more: number): string =>
  more < 0.3 ? 'a very good one adds almost nothing' : `a very good one adds ${dB(more)}`;

type Grains = readonly Pick<CrystalSpot, 'quality' | 'share'>[];

/** @param crystal what crystal: " of this crystal"; default any. */
export function grainsText(grains: Grains, crystal = ''): string {
  const counts = ofHundred(grains.map(({ share }) => share));
  const each = grains.map(({ quality }, i) => `${counts[i]} ${plural(counts[i], 'is', 'are')} ${quality}`);
  return `Of 100 grains${crystal} about ${listOf(each)}.`;
}

/**
 * What the spots of the crystal at hand are worth on a station, in a few sentences: its spots are not the median good,
 * fair and poor ones of the library.
 */
export function crystalSpots(worth: readonly CrystalSpot[], station: string): string {
  const of = (quality: CrystalSpot['quality']) => worth.find((spot) => spot.quality === quality);
  const [poor, fair, good, best] = [of('poor'), of('fair'), of('good'), of('very good')];
  const grains = grainsText(worth, ' of this crystal');
  if (!good || !fair) return grains;
  const through = poor
    ? `${against(good, fair)} than through a fair one and ${against(good, poor)} than through a poor one`
    : `${against(good, fair)} than through a fair one`;
  const gain = best ? `; ${added(best.soundPressureLevel - good.soundPressureLevel)}` : '';
  return `On this crystal ${station} is, through a good spot, ${through}${gain}. Crystals differ: elsewhere a good, fair or poor spot means the median of its kind. ${grains}`;
}
