import { isGivenAerial } from '../kinds/given-aerials.ts';
import { isLoop } from '../kinds/loops.ts';
import { USUAL_ERROR } from '../kinds/measured/usual-errors.ts';
import { CAPACITANCE_FACTOR, SURROUNDINGS_LOSS_FACTOR, surroundingsEffect } from '../parts/aerial/surroundings.ts';
import { WATER_PIPE_SPREAD } from '../parts/earth/earth.ts';
import { SOILS, type SoilName, soilOverGround } from '../parts/earth/soil.ts';
import type { SetDescription } from '../set/description.ts';
import type { PlaceDescription } from '../set/place.ts';
import { fromDecibels } from '../units/quantities.ts';
import type { SetInput } from './input.ts';
import { shareSpread } from './measured-spread.ts';
import { between, COMMON_PRACTICE, type Spread, timesOrOver } from './spread.ts';

const height = (low: number, middle: number, high: number, source: string): Spread =>
  between('factor', [fromDecibels(low), fromDecibels(middle), fromDecibels(high)], source);

/** What is not known of aerial and earth. */
export function outdoorSpreads(set: SetDescription): SetInput[] {
  const { aerial } = set;
  const loop = isLoop(aerial);
  const given = isGivenAerial(aerial);
  const around = surroundingsEffect(loop, given ? undefined : aerial.surroundings);
  const [low, usual, high] = around.height;
  const inputs: SetInput[] = [
    {
      id: 'effective height',
      settledBy: 'effective height',
      spread: aerial.measured?.effectiveHeight
        ? shareSpread(aerial.measured.effectiveHeight, USUAL_ERROR.effectiveHeight)
        : given
          ? height(-1.5, 0, 1.5, 'as measured')
          : height(low - usual, 0, high - usual, around.source),
      changes: (effectiveHeight) => ({ effectiveHeight }),
    },
  ];
  if (loop) return inputs;
  const { measured } = aerial;
  if (!given || measured?.capacitance)
    inputs.push({
      id: 'aerial capacitance',
      settledBy: 'aerial',
      spread: measured?.capacitance
        ? shareSpread(measured.capacitance, USUAL_ERROR.capacitance)
        : timesOrOver(CAPACITANCE_FACTOR, 'three published aerials'),
      changes: (aerialCapacitance) => ({ aerialCapacitance }),
    });
  if (!given && around.lossTangent > 0 && !measured?.resistance)
    inputs.push({
      id: 'aerial loss',
      settledBy: 'aerial',
      spread: timesOrOver(SURROUNDINGS_LOSS_FACTOR, 'published series resistances of three aerials at long wave'),
      changes: (aerialLoss) => ({ aerialLoss }),
    });
  return [...inputs, ...earthSpreads(set)];
}

/** Soil of the top metre goes as the conductivity of the ground to this power, the rest is its own: common practice. */
const SOIL_BY_GROUND = -0.5;

/** One soil, one draw: where the ground carries waves badly an earth in it is worse too. Measured at the spot it is its own. */
function soilByGround(set: SetDescription, soil: Spread): SetInput['follows'] {
  const half = (spread: Spread): number => Math.log(spread.high / spread.low) / 2;
  const correlation = (SOIL_BY_GROUND * half(groundSpread(set.place))) / half(soil);
  return [{ other: 'ground', share: Math.max(-1, correlation) }];
}

const contact = (spread: Spread): SetInput => ({
  id: 'contact with the soil',
  settledBy: 'earth',
  spread,
  changes: (earthResistance) => ({ earthResistance }),
});

function earthSpreads(set: SetDescription): SetInput[] {
  const { aerial, earth } = set;
  // Either settles soil and contact alike; of both together the earth's own.
  const measured = earth.measured?.resistance ?? (isLoop(aerial) ? undefined : aerial.measured?.resistance);
  if (measured)
    return [
      contact(
        shareSpread(measured, earth.measured?.resistance ? USUAL_ERROR.earthResistance : USUAL_ERROR.aerialResistance),
      ),
    ];
  if (earth.kind === 'measured')
    return 'pipe' in earth ? [contact(timesOrOver(WATER_PIPE_SPREAD, COMMON_PRACTICE))] : [];
  // A figure is taken for measured at the spot some time, and swings over the year.
  const isMeasured = earth.soil === 'as its resistivity';
  const spread = isMeasured ? timesOrOver(2, COMMON_PRACTICE) : soilSpread(earth.soil);
  return [
    {
      id: 'soil',
      settledBy: 'earth',
      spread,
      changes: (soilResistivity) => ({ soilResistivity }),
      follows: isMeasured ? undefined : soilByGround(set, spread),
    },
    contact(between('factor', [1 / 1.19, 1, 1.35], COMMON_PRACTICE)),
  ];
}

function soilSpread(name: string): Spread {
  const { resistivity, range, source } = name === 'as the place' ? soilOverGround() : SOILS[name as SoilName];
  return between('factor', [range[0] / resistivity, 1, range[1] / resistivity], source);
}

/** Conductivity of the ground on the way: ×/÷ 1.8 for a class read from a map, 3 for the usual one of nobody's choice. */
export function groundSpread({ ground }: PlaceDescription): Spread {
  const isStated = ground !== 'average';
  return timesOrOver(
    isStated ? 1.8 : 3,
    isStated
      ? 'half a class of the maps of ground conductivity (Rec. ITU-R P.832)'
      : 'land in Rec. ITU-R P.527, 1 to 30 mS/m',
  );
}
