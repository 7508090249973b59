import type { PartChanges } from '../built/changed-parts.ts';
import { changedCircuit, type SetCircuit } from '../built/set-circuit.ts';
import type { FieldAtSite, FieldOptions } from '../reception/path/field.ts';
import { fieldsAtSite } from '../reception/path/field.ts';
import { receiver, receiveStation, type TunedStation } from '../reception/path/receive-station.ts';
import type { StationDescription } from '../set/place.ts';
import { decibels, fromDecibels, type Ratio } from '../units/quantities.ts';
import { type BudgetItem, budgetOf } from './budget.ts';
import { deviatesOf } from './deviates-of.ts';
import { DRAWS, deviates, type Ranged, rangedOf } from './draws.ts';
import { fieldDraws, stationDraw } from './field-draws.ts';
import { type Evaluations, type FigureDraws, figureDraws } from './figure-draws.ts';
import { FIGURE_IDS, FIGURES, type FigureId } from './figures.ts';
import { MODULATION, marginDraws } from './hearing-spreads.ts';
import type { SetInput } from './input.ts';
import { changesFor, setInputs } from './inputs.ts';
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
  /** Of all such sets, the share in which the station is heard with no other beside it; 0 out of range. */
  readonly chance: Ratio;
  /** What makes the doubt about the level at the ear, most first. */
  readonly budget: readonly BudgetItem[];
}

/** A figure over all sets drawn, beside what it is in the set with every input in its middle. */
export interface Drawn extends Ranged {
  readonly middle: number;
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
  const stations = asked.map((index) => {
    const station = set.place.stations[index];
    return { index, station, field: fieldDraws(set, station, options) };
  });
  const height = inputs.find(({ id }) => id === 'effective height');
  const heights = heightDraws(height, inputs);
  const widths = stations.map(({ field }) => field && widthOf(sum(field.drawn, heights)));

  const evaluate = (changes: PartChanges, strength = 0): (TunedStation | undefined)[] => {
    const shifted = (station: StationDescription): FieldAtSite => {
      const field = fieldOf(station);
      const i = stations.findIndex((s) => s.station === station);
      return { ...field, fieldStrength: field.fieldStrength * fromDecibels(strength * (widths[i] ?? 0)) };
    };
    const set = attempt(() => receiver(changedCircuit(circuit, changes), shifted));
    return stations.map(({ station, field }) => set && field && attempt(() => receiveStation(set, station)));
  };

  const usual = changesFor(inputs, () => 0);
  const middle = evaluate(usual);
  const strengths = STRENGTHS.map((share) => evaluate(usual, share));
  const turned = inputs
    .filter((input) => input.changes && input.id !== 'effective height')
    .map((input) => ({
      input,
      drawn: deviatesOf(input, inputs),
      low: evaluate({ ...usual, ...input.changes!(valueAtDeviate(input.spread, -NINETY)) }),
      high: evaluate({ ...usual, ...input.changes!(valueAtDeviate(input.spread, NINETY)) }),
    }));

  return stations.map(({ index, station, field }, i): StationUncertainty | undefined => {
    const base = middle[i];
    if (!base || !field) return undefined;
    const evaluated: Evaluations = {
      base,
      strengths: STRENGTHS.map((share, j) => [share * (widths[i] ?? 0), strengths[j][i]] as const),
      turned: turned.map(({ input, drawn, low, high }) => ({ input, drawn, low: low[i], high: high[i] })),
    };
    const depths = deviates(`modulation/${stationDraw(set.place.stations, station)}`);
    const common = {
      inputs,
      field: field.drawn,
      heights,
      depths: depths.map((u) => decibels(valueAtDeviate(MODULATION, u))),
    };
    const parts = (id: FigureId): FigureDraws => figureDraws(id, evaluated, common);
    const level = parts('soundPressureLevel');
    const levels = level.with(NOTHING_KNOWN);
    const margins = marginDraws(station, base.heard, levels);
    const drawn = (middle: number, draws: Float64Array): Drawn => ({ middle, ...rangedOf(draws) });
    const { fieldStrength } = base.field;
    return {
      index,
      fieldStrength: drawn(
        fieldStrength,
        field.drawn.map((dB) => fieldStrength * fromDecibels(dB)),
      ),
      figures: Object.fromEntries(
        FIGURE_IDS.map((id) => {
          const draws = id === 'soundPressureLevel' ? levels : parts(id).with(NOTHING_KNOWN);
          return [id, drawn(FIGURES[id](base), draws)];
        }),
      ) as Record<FigureId, Drawn>,
      margin: drawn(base.heard.margin, margins.margin),
      marginInSilence: drawn(base.heard.marginInSilence, margins.inSilence),
      chance: base.within ? margins.margin.reduce((heard, m) => heard + (m >= 0 ? 1 : 0), 0) / DRAWS : 0,
      budget: budgetOf(level.with, level.things),
    };
  });
}

const NOTHING_KNOWN = () => false;

/** What a set cannot be built or followed with is left out: its neighbours tell. */
function attempt<T>(make: () => T): T | undefined {
  try {
    return make();
  } catch (refusal) {
    if (refusal instanceof RangeError) return undefined;
    throw refusal;
  }
}

const sum = (a: Float64Array, b: Float64Array): Float64Array => a.map((x, k) => x + b[k]);

/** Half of the 90 % range. */
const widthOf = (draws: Float64Array): number => {
  const [low, high] = rangedOf(draws).range;
  return (high - low) / 2;
};

/** dB of the effective height about its middle. */
function heightDraws(input: SetInput | undefined, inputs: readonly SetInput[]): Float64Array {
  if (!input) return new Float64Array(DRAWS);
  return deviatesOf(input, inputs).map((u) => decibels(valueAtDeviate(input.spread, u) / input.spread.middle));
}
