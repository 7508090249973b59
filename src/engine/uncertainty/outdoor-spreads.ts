import { isLoop } from '../kinds/loops.ts';
import type { SetDescription } from '../set/description.ts';
import type { SetInput } from './input.ts';
import { between, COMMON_PRACTICE, type Spread, timesOrOver } from './spread.ts';

const fromDecibels = (dB: number): number => 10 ** (dB / 20);
const height = (low: number, middle: number, high: number, source: string): Spread =>
  between('factor', [fromDecibels(low), fromDecibels(middle), fromDecibels(high)], source);

/** Measured over calculated effective height of small aerials among trees and houses: six published cases, −6 to −3 dB. */
const AMONG_TREES = 'published field strengths of six aerials in gardens';

/** What is not known of aerial and earth. */
export function outdoorSpreads(set: SetDescription): SetInput[] {
  const { aerial } = set;
  const loop = isLoop(aerial);
  const given = aerial.kind === 'measured' || aerial.kind === 'impedance';
  const inputs: SetInput[] = [
    {
      id: 'effective height',
      settledBy: 'effective height',
      spread: given
        ? height(-1.5, 0, 1.5, 'as measured')
        : loop
          ? height(-6, -3, 0, COMMON_PRACTICE)
          : height(-8, -4, 0, AMONG_TREES),
      changes: (effectiveHeight) => ({ effectiveHeight }),
    },
  ];
  if (loop) return inputs;
  if (!given)
    inputs.push(
      {
        id: 'aerial capacitance',
        settledBy: 'aerial',
        spread: timesOrOver(1.13, 'three published aerials'),
        changes: (aerialCapacitance) => ({ aerialCapacitance }),
      },
      {
        id: 'aerial loss',
        settledBy: 'aerial',
        spread: timesOrOver(3, 'published series resistances of three aerials at long wave', 0.015),
        changes: (aerialLossTangent) => ({ aerialLossTangent }),
      },
    );
  return [...inputs, ...earthSpreads(set)];
}

/** Resistivity of a soil of a kind in its top metre, whatever the season: ×/÷. */
const SOIL_FACTORS: Readonly<Record<string, number>> = { clay: 6, chalk: 4 };
const ANY_SOIL = 5;

function earthSpreads({ earth }: SetDescription): SetInput[] {
  if (earth.kind === 'measured') return [];
  // A figure is taken for measured at the spot some time, and swings over the year.
  const spread =
    earth.soil === 'as its resistivity'
      ? timesOrOver(2, COMMON_PRACTICE)
      : timesOrOver(SOIL_FACTORS[earth.soil] ?? ANY_SOIL, 'published earth resistances at 1.9 MHz and below');
  return [
    { id: 'soil', settledBy: 'earth', spread, changes: (soilResistivity) => ({ soilResistivity }) },
    {
      id: 'contact with the soil',
      settledBy: 'earth',
      spread: between('factor', [0.97, 1.15, 1.55], COMMON_PRACTICE),
      changes: (earthResistance) => ({ earthResistance }),
    },
  ];
}

/** Conductivity of the ground on the way: ×/÷ 1.8 for a class read from a map, 3 for the usual one of nobody's choice. */
export function groundSpread(set: SetDescription): Spread {
  const chosen = set.place.ground !== 'average';
  return timesOrOver(
    chosen ? 1.8 : 3,
    chosen
      ? 'half a class of the maps of ground conductivity (Rec. ITU-R P.832)'
      : 'land in Rec. ITU-R P.527, 1 to 30 mS/m',
  );
}
