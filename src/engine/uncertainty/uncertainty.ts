import { type PartChanges, together } from '../built/changed-parts.ts';
import { changedCircuit, type SetCircuit } from '../built/set-circuit.ts';
import { MASKED } from '../reception/interference/separation.ts';
import type { FieldAtSite, FieldOptions } from '../reception/path/field.ts';
import { fieldsAtSite } from '../reception/path/field.ts';
import { receiver, receiveStation, type TunedStation } from '../reception/path/receive-station.ts';
import { speechBands } from '../reception/path/speech-bands.ts';
import type { StationDescription } from '../set/place.ts';
import { type Degrees, decibels, fromDecibels, type Ratio } from '../units/quantities.ts';
import { attempt } from './attempt.ts';
import { type BudgetItem, budgetOf } from './budget.ts';
import { deviatesOf } from './deviates-of.ts';
import { type DialDraws, dialDraws } from './dial-draws.ts';
import { DRAWS, type Drawn, deviates, rangedOf } from './draws.ts';
import { fieldDraws, stationDraw } from './field-draws.ts';
import { type Evaluations, type FigureDraws, figureDraws } from './figure-draws.ts';
import { FIGURE_IDS, FIGURES, type FigureId } from './figures.ts';
import { earDraws, MODULATION, marginDraws } from './hearing-spreads.ts';
import type { SetInput } from './input.ts';
import { changesFor, setInputs } from './inputs.ts';
import { intelligibilityDraws } from './intelligibility-draws.ts';
import { disturbersAmong, type StationDraws, separationDraws, type TunedOn } from './interference-draws.ts';
import { NINETY, valueAtDeviate } from './spread.ts';

/** How sure the figures of one station are. */
export interface StationUncertainty {
  /** Of the station in the set's list. */
  readonly index: number;
  /** V/m. */
  readonly fieldStrength: Drawn;
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

/** Where along the strength of the emf a set is tried, in shares of the 90 % range. */
const STRENGTHS = [-1.6, -0.8, 0.8, 1.6];

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
  const inputs = setInputs(circuit);
  const asked = options.stations ?? set.place.stations.map((_, i) => i);
  const fieldOf = fieldsAtSite(set.place, options);
  const height = inputs.find(({ id }) => id === 'effective height');
  const heights = heightDraws(height);
  const dial = dialDraws(circuit);
  const depthsOf = (station: StationDescription): Float64Array =>
    deviates(`modulation/${stationDraw(set.place.stations, station)}`).map((u) =>
      decibels(valueAtDeviate(MODULATION, u)),
    );
  const stations = asked.map((index) => {
    const station = set.place.stations[index];
    const field = fieldDraws(set, station, options);
    return {
      index,
      station,
      tunedTo: withinReach(dial, station),
      field,
      width: field ? widthOf(sum(field.drawn, heights)) : 0,
    };
  });
  const evaluate = (changes: PartChanges, strength = 0): (TunedOn | undefined)[] => {
    const shifted = (tunedTo: StationDescription): FieldAtSite => {
      const own = stations.find((s) => s.tunedTo === tunedTo);
      const field = fieldOf(own?.station ?? tunedTo);
      return { ...field, fieldStrength: field.fieldStrength * fromDecibels(strength * (own?.width ?? 0)) };
    };
    const set = attempt(() => receiver(changedCircuit(circuit, changes), shifted));
    return stations.map(({ tunedTo, field }) => {
      const tuned = set && field && attempt(() => receiveStation(set, tunedTo));
      return set && tuned && { set, tuned };
    });
  };

  const usual = changesFor(inputs, () => 0);
  const middle = evaluate(usual);
  // What a set does not reach at all it says nothing about.
  const reached = (evaluated: readonly (TunedOn | undefined)[]) =>
    evaluated.map((one, i) => (one && middle[i]?.tuned.within && !one.tuned.within ? undefined : one));
  const strengths = STRENGTHS.map((share) => reached(evaluate(usual, share)));
  const turned = inputs
    .filter((input) => input.changes && input.id !== 'effective height' && input.moves !== 'dial')
    .map((input) => {
      const at = (deviate: number) =>
        reached(evaluate(together(usual, input.changes!(valueAtDeviate(input.spread, deviate)))));
      return { input, drawn: deviatesOf(input), low: at(-NINETY), high: at(NINETY) };
    });
  const drawsOf = remembered((station: StationDescription): StationDraws | undefined => {
    const field = fieldDraws(set, station, options);
    return field && { field: field.drawn, depths: depthsOf(station) };
  });
  const [ready] = middle.flatMap((one) => (one ? [one.set] : []));
  const besides =
    ready &&
    disturbersAmong(
      ready,
      set.place.stations.map((station) => ({ station, field: fieldOf(station) })),
    );

  return stations.map(({ index, station, tunedTo, field, width }, i): StationUncertainty | undefined => {
    const base = middle[i];
    if (!base || !field) return undefined;
    const { tuned } = base;
    const inSet = turned.map(({ input, drawn, low, high }) => ({ input, drawn, low: low[i], high: high[i] }));
    const evaluated: Evaluations = {
      base: tuned,
      strengths: STRENGTHS.map((share, j) => [share * width, strengths[j][i]?.tuned] as const),
      turned: inSet.map(({ low, high, ...rest }) => ({ ...rest, low: low?.tuned, high: high?.tuned })),
    };
    const depths = depthsOf(station);
    const common = { inputs, field: field.drawn, heights, depths };
    const parts = (id: FigureId): FigureDraws => figureDraws(id, evaluated, common);
    const level = parts('soundPressureLevel');
    const levels = level.with(NOTHING_KNOWN);
    const margins = marginDraws(station, tuned.heard, levels);
    const drawn = (middle: number, draws: Float64Array): Drawn => ({ middle, ...rangedOf(draws) });
    const { fieldStrength } = tuned.field;
    const isMoved = tunedTo !== station;
    const { audioRatios, disturbers } = (!isMoved && tuned.within && besides?.(tuned)) || NOBODY;
    const separations = disturbers.flatMap((disturber) => {
      const other = drawsOf(disturber.arriving.station);
      return other ? [{ disturber, draws: separationDraws(disturber, common, other, inSet) }] : [];
    });
    const isReached = dial.reaches(station.frequency);
    const isHeard = (k: number): boolean =>
      margins.margin[k] >= 0 && isReached(k) && separations.every(({ draws }) => draws[k] >= MASKED);
    const soundPressureLevel = drawn(FIGURES.soundPressureLevel(tuned), levels);
    return {
      index,
      fieldStrength: drawn(
        fieldStrength,
        field.drawn.map((dB) => fieldStrength * fromDecibels(dB)),
      ),
      figures: Object.fromEntries(
        FIGURE_IDS.map((id) => [
          id,
          id === 'soundPressureLevel' ? soundPressureLevel : drawn(FIGURES[id](tuned), parts(id).with(NOTHING_KNOWN)),
        ]),
      ) as Record<FigureId, Drawn>,
      margin: drawn(tuned.heard.margin, margins.margin),
      marginInSilence: drawn(tuned.heard.marginInSilence, margins.inSilence),
      intelligibility:
        tuned.heard.intelligibility === undefined || !tuned.within
          ? undefined
          : intelligibilityDraws(
              speechBands(base.set, tuned),
              audioRatios,
              { ...soundPressureLevel, draws: levels },
              earDraws(),
            ),
      reading:
        tuned.within && !isMoved
          ? readingOf(circuit, dial.positions(station.frequency, tuned.position), tuned)
          : undefined,
      disturbances: separations.map(({ disturber: { middle }, draws }) => ({
        index: middle.index,
        separation: drawn(middle.separation, draws),
      })),
      chance: tuned.within ? shareOf(isHeard) : 0,
      budget: budgetOf(level.with, level.things),
    };
  });
}

/** Of all draws. */
function shareOf(holds: (draw: number) => boolean): Ratio {
  let count = 0;
  for (let k = 0; k < DRAWS; k++) if (holds(k)) count++;
  return count / DRAWS;
}

const NOBODY = { audioRatios: [], disturbers: [] } as const;

/** A share of the draws too small to follow a station for. */
const RARELY = 0.005;
/** Within an end of the scale, as a ratio. */
const INSIDE = 1.0005;

/** What a set is tuned to for a station: one beyond the scale that some such sets reach is followed at the end of it. */
function withinReach({ lowest, highest, reaches }: DialDraws, station: StationDescription): StationDescription {
  const { frequency } = station;
  if ((frequency >= lowest && frequency <= highest) || shareOf(reaches(frequency)) < RARELY) return station;
  return { ...station, frequency: frequency < lowest ? lowest * INSIDE : highest / INSIDE };
}

/** 90 % of the readings of the scale, degrees about the reading with every input in its middle. */
function readingOf({ tuning }: SetCircuit, positions: Float64Array, { position }: TunedStation) {
  const here = tuning.angleAt(position);
  const { range } = rangedOf(positions.map((at) => tuning.angleAt(at) - here));
  return [Math.min(0, range[0]), Math.max(0, range[1])] as const;
}

/** Asked for again, what was found before. */
function remembered<K, V>(find: (key: K) => V): (key: K) => V {
  const found = new Map<K, V>();
  return (key) => {
    if (!found.has(key)) found.set(key, find(key));
    return found.get(key) as V;
  };
}

const NOTHING_KNOWN = () => false;

const sum = (a: Float64Array, b: Float64Array): Float64Array => a.map((x, k) => x + b[k]);

/** Half of the 90 % range. */
const widthOf = (draws: Float64Array): number => {
  const [low, high] = rangedOf(draws).range;
  return (high - low) / 2;
};

/** dB of the effective height about its middle. */
function heightDraws(input: SetInput | undefined): Float64Array {
  if (!input) return new Float64Array(DRAWS);
  return deviatesOf(input).map((u) => decibels(valueAtDeviate(input.spread, u) / input.spread.middle));
}
