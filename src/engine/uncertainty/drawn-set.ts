import { together } from '../built/changed-parts.ts';
import { changedCircuit, type SetCircuit } from '../built/set-circuit.ts';
import { lazily, lazilyOfPair, once } from '../numerics/lazily.ts';
import { onDial } from '../reception/dial/dial.ts';
import type { FieldAtSite } from '../reception/path/field.ts';
import {
  type Receiver,
  receiver,
  receiveStation,
  withDetector,
  withRadioParts,
} from '../reception/path/receive-station.ts';
import type { Disturbance } from '../reception/path/types.ts';
import type { StationDescription } from '../set/place.ts';
import { type Decibels, fromDecibels } from '../units/quantities.ts';
import { attempt } from './attempt.ts';
import { deviatesOf, valuesDrawn } from './deviates-of.ts';
import { dialDraws } from './dial-draws.ts';
import { DRAWS, type Drawn, rangedOf, shareOfDraws } from './draws.ts';
import { type FieldDraws, stationDraw } from './field-draws.ts';
import { type FigureDraws, figureDraws } from './figure-draws.ts';
import { FIGURES, type FigureId } from './figures.ts';
import { depthDraws, marginDraws } from './hearing-spreads.ts';
import type { Measurable } from './input.ts';
import { changesFor, setInputs } from './inputs.ts';
import { disturbersAmong, separationDraws, type TunedOn } from './interference-draws.ts';
import { NINETY, valueAtDeviate } from './spread.ts';

/** How far a station stands over the hearing threshold, in every set drawn. */
export interface DrawnHearing {
  /** dB SPL. */
  readonly level: Drawn;
  /** Over the hearing threshold in the room, and in silence, dB. */
  readonly margin: Drawn;
  readonly marginInSilence: Drawn;
  /** Level and margin in each of them. */
  readonly levels: Float64Array;
  readonly margins: Float64Array;
}

/** What is received with a station, in every set drawn. */
export interface DrawnInterference {
  /** Wanted over unwanted programmes with every input in its middle, dB. */
  readonly audioRatios: readonly Decibels[];
  /** Those that may mask it in some such sets: what it stands over each, dB. */
  readonly separations: readonly { readonly middle: Disturbance; readonly draws: Float64Array }[];
}

/** One station in all sets drawn; each figure is drawn when it is asked for. */
export interface DrawnStation {
  /** Every input in its middle. */
  readonly base: TunedOn;
  /** Beyond the scale in the middle: followed at its end, since some such sets reach the station. */
  readonly isMoved: boolean;
  readonly field: FieldDraws;
  /** Effective height of the aerial, m. */
  readonly effectiveHeight: () => Drawn;
  /** What moves a figure, and its draws with some of that known. */
  readonly draws: (id: FigureId) => FigureDraws;
  readonly figure: (id: FigureId) => Drawn;
  readonly hearing: () => DrawnHearing;
  readonly interference: () => DrawnInterference;
}

/** What settles inputs of parts that only radio frequency meets. */
const OF_RADIO: ReadonlySet<Measurable> = new Set(['aerial', 'earth', 'coil', 'coupling']);
const NO_INTERFERENCE: DrawnInterference = { audioRatios: [], separations: [] };

/** Where along the strength of the emf a set is tried, in shares of the 90 % range. */
const STRENGTHS = [-1.6, -0.8, 0.8, 1.6];

/**
 * Sets built like one, drawn 2,000 times: each input that is not measured is spread as its kind has it, and all of them
 * are drawn together. A set is evaluated five times along the strength of the emf and twice for every other input; what
 * is the same for all stations is done once.
 * @param circuit the set as parts made and joined
 * @param fieldOf what of a station arrives
 * @param drawsOf how that is drawn, by the station's place in the list; undefined where nothing arrives
 * @returns a station by its place in the list; undefined for one of which nothing arrives, or that cannot be followed
 * @throws RangeError for parts that cannot be built.
 */
export function drawnSet(
  circuit: SetCircuit,
  fieldOf: (station: StationDescription) => FieldAtSite,
  drawsOf: (station: number) => FieldDraws | undefined,
): (station: number) => DrawnStation | undefined {
  const { set } = circuit;
  const { stations } = set.place;
  const sets = setsDrawn(circuit, fieldOf);
  const { inputs, middle } = sets;
  const heights = heightDraws(sets);
  const depthsOf = lazily((index: number) => depthDraws(stationDraw(stations, stations[index])));
  const disturbersOf = once(
    () =>
      middle &&
      disturbersAmong(
        middle,
        stations.map((station) => ({ station, field: fieldOf(station) })),
      ),
  );

  return (index) => {
    const station = stations[index];
    const field = drawsOf(index);
    const followedAt = field && middle && tunedIn(circuit, middle, station);
    if (!followedAt) return undefined;
    const { base, isMoved } = followedAt;
    const { tuned } = base;
    // What a set does not reach at all it says nothing about.
    const reached = (one: TunedOn | undefined) => (tuned.within && !one?.tuned.within ? undefined : one);
    const follow = (ready: Receiver | undefined, fieldStrength = tuned.field.fieldStrength) =>
      reached(followed(ready, tuned.station, { ...tuned.field, fieldStrength }));
    const width = widthOf(field.draws, heights);
    const strengths = STRENGTHS.map(
      (share) =>
        [share * width, follow(middle, tuned.field.fieldStrength * fromDecibels(share * width))?.tuned] as const,
    );
    const inSet = sets.ends.map(({ low, high, ...rest }) => ({ ...rest, low: follow(low), high: follow(high) }));
    const turned = inSet.map(({ low, high, ...rest }) => ({ ...rest, low: low?.tuned, high: high?.tuned }));
    const common = { inputs, field: field.draws, heights, depths: depthsOf(index) };
    const draws = lazily((id: FigureId) => figureDraws(id, { base: tuned, strengths, turned }, common));
    const all = lazily((id: FigureId) => draws(id).with(NOTHING_KNOWN));
    const figure = lazily((id: FigureId) => drawnFigure(FIGURES[id](tuned), all(id)));
    const height = base.set.heightAt(tuned.station.frequency);
    const effectiveHeight = once(() =>
      drawnFigure(
        height,
        heights.map((dB) => height * fromDecibels(dB)),
      ),
    );
    const hearing = once((): DrawnHearing => {
      const levels = all('soundPressureLevel');
      const { margin, inSilence } = marginDraws(station, tuned.heard, levels);
      return {
        level: figure('soundPressureLevel'),
        margin: drawnFigure(tuned.heard.margin, margin),
        marginInSilence: drawnFigure(tuned.heard.marginInSilence, inSilence),
        levels,
        margins: margin,
      };
    });
    const interference = once((): DrawnInterference => {
      const disturbance = !isMoved && tuned.within ? disturbersOf()?.(tuned) : undefined;
      if (!disturbance) return NO_INTERFERENCE;
      const separations = disturbance.disturbers.flatMap((disturber) => {
        const other = stations.indexOf(disturber.arriving.station);
        const field = drawsOf(other);
        if (!field) return [];
        const others = { field: field.draws, depths: depthsOf(other) };
        return [{ middle: disturber.middle, draws: separationDraws(disturber, common, others, inSet) }];
      });
      return { audioRatios: disturbance.audioRatios, separations };
    });
    return { base, isMoved, field, effectiveHeight, draws, figure, hearing, interference };
  };
}

/** A figure in the middle, with its draws. */
export const drawnFigure = (middle: number, draws: Float64Array): Drawn => ({ middle, ...rangedOf(draws) });

/** A set with every input in its middle, and with each in turn at the ends of its range. */
function setsDrawn(circuit: SetCircuit, fieldOf: (station: StationDescription) => FieldAtSite) {
  const inputs = setInputs(circuit);
  const usual = changesFor(inputs, () => 0);
  const middle = attempt(() => receiver(changedCircuit(circuit, usual), fieldOf));
  // A list of elements may have its coils anywhere.
  const hasCoilAcross = circuit.set.arrangement.kind !== 'elements';
  const ends = inputs
    .filter((input) => input.changes && input.id !== 'effective height' && input.moves !== 'dial')
    .map((input) => {
      const at = (deviate: number): Receiver | undefined =>
        attempt(() => {
          const changes = together(usual, input.changes!(valueAtDeviate(input.spread, deviate)));
          const changed = changedCircuit(circuit, changes);
          // What an input leaves as it is in the middle is shared.
          if (middle && input.settledBy === 'detector') return withDetector(middle, changed);
          if (middle && hasCoilAcross && OF_RADIO.has(input.settledBy)) return withRadioParts(middle, changed);
          return receiver(changed, fieldOf);
        });
      return { input, deviates: deviatesOf(input), low: at(-NINETY), high: at(NINETY) };
    });
  return { inputs, middle, ends };
}

/** A station on a set, whatever the place of its dial it is followed at. */
const followed = (set: Receiver | undefined, station: StationDescription, field?: FieldAtSite): TunedOn | undefined =>
  set && attempt(() => ({ set, tuned: receiveStation(field ? { ...set, fieldOf: () => field } : set, station) }));

/** A share of the draws too small to follow a station for. */
const RARELY = 0.005;
/** Within an end of the scale, as a ratio. */
const INSIDE = 1.0005;

/** A station tuned in; one beyond the scale that some such sets reach is followed at the end of it. */
function tunedIn(circuit: SetCircuit, middle: Receiver, station: StationDescription) {
  const peaked = followed(middle, station);
  const base = peaked && { ...peaked, tuned: onDial(middle, peaked.tuned) };
  if (base?.tuned.within) return { base, isMoved: false };
  const { lowest, highest, reaches } = dialDraws(circuit);
  const { frequency } = station;
  const isInside = frequency >= lowest && frequency <= highest;
  if (isInside || shareOfDraws(reaches(frequency)) < RARELY) return base && { base, isMoved: false };
  const end = { ...station, frequency: frequency < lowest ? lowest * INSIDE : highest / INSIDE };
  const atEnd = followed(middle, end, middle.fieldOf(station));
  return atEnd && { base: atEnd, isMoved: true };
}

const NOTHING_KNOWN = () => false;

/** Half of the 90 % range of the emf, dB, by the draws of the field and of the effective height. */
const widthOf = lazilyOfPair((field: Float64Array, heights: Float64Array): Decibels => {
  const [low, high] = rangedOf(field.map((x, k) => x + heights[k])).range;
  return (high - low) / 2;
});

/** dB of the effective height about its middle. */
function heightDraws({ inputs }: ReturnType<typeof setsDrawn>): Float64Array {
  const input = inputs.find(({ id }) => id === 'effective height');
  return input ? valuesDrawn(input) : NO_SPREAD;
}

const NO_SPREAD = new Float64Array(DRAWS);
