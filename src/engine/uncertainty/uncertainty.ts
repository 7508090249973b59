import type { SetCircuit } from '../built/set-circuit.ts';
import { lazily } from '../numerics/lazily.ts';
import { MASKED } from '../reception/interference/separation.ts';
import { type FieldOptions, fieldsAtSite } from '../reception/path/field.ts';
import type { TunedStation } from '../reception/path/receive-station.ts';
import { speechBands } from '../reception/path/speech-bands.ts';
import { type Degrees, fromDecibels, type Ratio } from '../units/quantities.ts';
import { type BudgetItem, budgetOf } from './budget.ts';
import { dialDraws } from './dial-draws.ts';
import { type DrawnStation, drawnFigure, drawnSet } from './drawn-set.ts';
import { type Drawn, rangedOf, shareOfDraws } from './draws.ts';
import { fieldDraws } from './field-draws.ts';
import { FIGURE_IDS, type FigureId } from './figures.ts';
import { earDraws } from './hearing-spreads.ts';
import { intelligibilityDraws } from './intelligibility-draws.ts';

/** How sure the figures of one station are. */
export interface StationUncertainty {
  /** Of the station in the set's list. */
  readonly index: number;
  /** V/m. */
  readonly fieldStrength: Drawn;
  /** Of the aerial at the station, m. */
  readonly effectiveHeight: Drawn;
  readonly figures: Readonly<Record<FigureId, Drawn>>;
  /** Over the hearing threshold in the room, and in silence, dB. */
  readonly margin: Drawn;
  readonly marginInSilence: Drawn;
  /** Speech intelligibility index, 0 to 1, other programmes in the phones counted; of music and tones none. */
  readonly intelligibility?: Drawn;
  /** 90 % of the readings of the dial's scale, degrees about the reading in the middle; out of range none. */
  readonly reading?: readonly [below: Degrees, above: Degrees];
  /** Those that may mask it in some such sets: what it stands over them, dB. */
  readonly disturbances: readonly { readonly index: number; readonly separation: Drawn }[];
  /** Of all such sets, the share whose dial reaches the station, in which it is heard and no other masks it. */
  readonly chance: Ratio;
  /** What makes the doubt about the level at the ear, most first. */
  readonly budget: readonly BudgetItem[];
}

export interface UncertaintyOptions extends FieldOptions {
  /** Which of the set's stations; default all. */
  readonly stations?: readonly number[];
}

/**
 * How sure every figure of a station's path is: each input that is not measured is spread as its kind has it, all of
 * them are drawn together 2,000 times, and the figure is the median of the draws with its 90 % range. A set is evaluated
 * five times along the strength of the emf and twice for every other input; between, figures run as smooth curves, and
 * their departures add (in logarithms where they are powers and voltages). docs/physics/uncertainty.md has how well.
 * @param circuit the set as parts made and joined.
 * @param options which stations, and the fields at the site; default all stations.
 * @returns in the order asked; undefined for a station of which nothing arrives.
 * @throws RangeError for parts that cannot be built.
 */
export function uncertaintyOf(
  circuit: SetCircuit,
  options: UncertaintyOptions = {},
): readonly (StationUncertainty | undefined)[] {
  const { set } = circuit;
  const { stations } = set.place;
  const indices = options.stations ?? stations.map((_, i) => i);
  const drawnStation = drawnSet(
    circuit,
    fieldsAtSite(set.place, options),
    lazily((index) => fieldDraws(set, stations[index], options)),
  );
  return indices.map((index) => {
    const station = drawnStation(index);
    return station && stationUncertainty(circuit, index, station);
  });
}

function stationUncertainty(circuit: SetCircuit, index: number, station: DrawnStation): StationUncertainty {
  const { base, isMoved, field, effectiveHeight, draws, figure } = station;
  const { tuned } = base;
  const { margin, marginInSilence, levels, margins } = station.hearing();
  const { audioRatios, separations } = station.interference();
  const { fieldStrength } = tuned.field;
  const { frequency } = circuit.set.place.stations[index];
  const dial = dialDraws(circuit);
  const isReached = dial.reaches(frequency);
  const isHeard = (k: number): boolean =>
    margins[k] >= 0 && isReached(k) && separations.every(({ draws }) => draws[k] >= MASKED);
  const level = draws('soundPressureLevel');
  return {
    index,
    fieldStrength: drawnFigure(
      fieldStrength,
      field.draws.map((dB) => fieldStrength * fromDecibels(dB)),
    ),
    effectiveHeight: effectiveHeight(),
    figures: Object.fromEntries(FIGURE_IDS.map((id) => [id, figure(id)])) as Record<FigureId, Drawn>,
    margin,
    marginInSilence,
    intelligibility:
      tuned.heard.intelligibility === undefined || !tuned.within
        ? undefined
        : intelligibilityDraws(
            speechBands(base.set, tuned),
            audioRatios,
            { ...figure('soundPressureLevel'), draws: levels },
            earDraws(),
          ),
    reading:
      tuned.within && !isMoved ? readingOf(circuit, dial.positions(frequency, tuned.position), tuned) : undefined,
    disturbances: separations.map(({ middle, draws }) => ({
      index: middle.index,
      separation: drawnFigure(middle.separation, draws),
    })),
    chance: tuned.within ? shareOfDraws(isHeard) : 0,
    budget: budgetOf(level.with, level.measurables),
  };
}

/** 90 % of the readings of the scale, degrees about the reading with every input in its middle. */
function readingOf({ tuning }: SetCircuit, positions: Float64Array, { position }: TunedStation) {
  const angle = tuning.angleAt(position);
  const { range } = rangedOf(positions.map((at) => tuning.angleAt(at) - angle));
  return [Math.min(0, range[0]), Math.max(0, range[1])] as const;
}
