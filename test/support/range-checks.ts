import { setCircuit } from '../../src/engine/built/set-circuit.ts';
import { receive } from '../../src/engine/reception/path/receive.ts';
import type { SetDescription } from '../../src/engine/set/description.ts';
import { DRAWS, type Ranged, rangedOf } from '../../src/engine/uncertainty/draws.ts';
import type { FigureId } from '../../src/engine/uncertainty/figures.ts';
import { uncertaintyOf } from '../../src/engine/uncertainty/uncertainty.ts';
import { plainDraws } from './plain-draws.ts';

/** Figures whose ranges are compared, in the order of the path. */
export const CHECKED = [
  'fieldStrength',
  'emf',
  'tunedCircuitVoltage',
  'detectorVoltage',
  'directVoltage',
  'audioVoltage',
  'phonesPower',
  'soundPressureLevel',
] as const satisfies readonly (FigureId | 'fieldStrength')[];
export type Checked = (typeof CHECKED)[number];

/** A stated range against sets drawn plainly, both in dB. */
export interface RangeCheck {
  readonly station: string;
  readonly figure: Checked;
  readonly stated: Ranged;
  readonly plain: Ranged;
  /** Width of the stated range over that of the plain one. */
  readonly width: number;
  /** Stated median less the plain one, dB. */
  readonly median: number;
}

const width = ({ range: [low, high] }: Ranged): number => high - low;

/** Of levels as they are, of powers and voltages in dB, so that one tolerance serves. */
const inDecibels = (figure: Checked, x: number): number =>
  figure === 'soundPressureLevel' ? x : (figure === 'phonesPower' ? 10 : 20) * Math.log10(x);

/** The set with three of its stations: the strongest at the ear, the middle one and the faintest. */
export function withThreeStations(set: SetDescription): SetDescription {
  const { stations } = receive(set);
  const heard = stations.filter(({ soundPressureLevel }) => soundPressureLevel !== undefined);
  const byLevel = heard.toSorted((a, b) => b.soundPressureLevel! - a.soundPressureLevel!);
  const kept = [0, Math.floor(byLevel.length / 2), byLevel.length - 1].map((k) => byLevel[k].index);
  return { ...set, place: { ...set.place, stations: [...new Set(kept)].map((i) => set.place.stations[i]) } };
}

/**
 * The ranges that the program states for the stations of a set, against sets drawn plainly from the same spreads
 * and each followed through the whole engine.
 * @param set as read; all its stations are compared
 * @param count how many sets are drawn plainly
 * @param seed of the plain draws
 * @returns one row for each station and figure
 */
export function rangeChecks(set: SetDescription, count: number = DRAWS, seed = 20260101): readonly RangeCheck[] {
  const circuit = setCircuit(set);
  const plain = plainDraws(circuit, count, seed);
  return uncertaintyOf(circuit).flatMap((station, i) => {
    if (!station) return [];
    // Ranges are of sets tuned to the station: those that do not reach it count for the chance of hearing it alone.
    const drawn = plain.flatMap((sets) => (sets[i]?.within ? [sets[i]] : []));
    return CHECKED.map((figure): RangeCheck => {
      const { median, range } = figure === 'fieldStrength' ? station.fieldStrength : station.figures[figure];
      const [low, high] = range.map((x) => inDecibels(figure, x));
      const stated = { median: inDecibels(figure, median), range: [low, high] as const };
      const of = rangedOf(
        Float64Array.from(drawn, (d) =>
          inDecibels(figure, figure === 'fieldStrength' ? d.fieldStrength : d.figures[figure]),
        ),
      );
      return {
        station: set.place.stations[i].name,
        figure,
        stated,
        plain: of,
        width: width(stated) / width(of),
        median: stated.median - of.median,
      };
    });
  });
}
