import { fromMap, lazily } from '../numerics/lazily.ts';
import type { TunedStation } from '../reception/path/receive-station.ts';
import type { Decibels } from '../units/quantities.ts';
import { valuesDrawn } from './deviates-of.ts';
import { DRAWS } from './draws.ts';
import { addResponse, throughPoints } from './figure-response.ts';
import { FIGURES, type FigureId, IN_DECIBELS } from './figures.ts';
import type { Measurable, SetInput } from './input.ts';

/** A station in the sets that were evaluated; undefined where one could not be. */
export interface Evaluations {
  /** Every input in its middle. */
  readonly base: TunedStation;
  /** With a stronger or weaker emf, dB. */
  readonly strengths: readonly (readonly [strength: Decibels, station: TunedStation | undefined])[];
  /** One input at the ends of its 90 % range, and its deviates in the sets drawn. */
  readonly turned: readonly {
    readonly input: SetInput;
    readonly deviates: Float64Array;
    readonly low: TunedStation | undefined;
    readonly high: TunedStation | undefined;
  }[];
}

/** What is drawn for all figures alike, dB about the middle. */
export interface CommonDraws {
  readonly inputs: readonly SetInput[];
  readonly field: Float64Array;
  readonly heights: Float64Array;
  readonly depths: Float64Array;
}

/** A figure in every set drawn. */
export interface FigureDraws {
  /** What moves it. */
  readonly measurables: readonly Measurable[];
  /** Its draws with some of them known: those stay in their middle. */
  readonly with: (known: (what: Measurable) => boolean) => Float64Array;
}

/**
 * A figure drawn: a curve along the strength of the emf, a parabola for every input, added in logarithms, or as they are
 * where the figure is a level or may be below 0.
 */
export function figureDraws(
  id: FigureId,
  { base, strengths, turned }: Evaluations,
  { inputs, field, heights, depths }: CommonDraws,
): FigureDraws {
  const figure = FIGURES[id];
  const start = figure(base);
  const evaluated = [...strengths.map(([, s]) => s), ...turned.flatMap(({ low, high }) => [low, high])];
  const values = new Map(evaluated.map((s) => [s, s ? figure(s) : Number.NaN]));
  const scale = scaleOf(id, [start, ...values.values()]);
  const off = (s: TunedStation | undefined): number => scale.to(values.get(s) ?? Number.NaN) - scale.to(start);
  const strength = throughPoints([[0, 0], ...strengths.map(([x, s]): [number, number] => [x, off(s)])]);

  const parts = new Map<Measurable, Float64Array>();
  const partOf = (what: Measurable): Float64Array => fromMap(parts, what, () => new Float64Array(DRAWS));
  for (const { input, deviates, low, high } of turned)
    addResponse(partOf(input.settledBy), deviates, off(low), off(high));
  for (const input of inputs) {
    const share = addedShare(id, input) * scale.perDecibel;
    if (share !== 0) addTimes(partOf(input.settledBy), share, valuesDrawn(input));
  }
  const follows = modulationShare(id) * scale.perDecibel;
  if (follows !== 0) addTimes(partOf('modulation'), follows, depths);

  const middle = scale.to(start);
  // Of what moves the figure only these two go by a curve: the same whatever else is known.
  const byStrength = lazily((emf: 'both' | 'field' | 'height' | 'neither') => {
    const draws = new Float64Array(DRAWS).fill(middle);
    if (emf === 'neither') return draws;
    for (let k = 0; k < DRAWS; k++)
      draws[k] += strength((emf === 'height' ? 0 : field[k]) + (emf === 'field' ? 0 : heights[k]));
    return draws;
  });
  return {
    measurables: ['field strength', 'effective height', ...parts.keys()],
    with: (known) => {
      const fieldKnown = known('field strength');
      const heightKnown = known('effective height');
      const draws = byStrength(
        fieldKnown ? (heightKnown ? 'neither' : 'height') : heightKnown ? 'field' : 'both',
      ).slice();
      for (const [what, part] of parts) if (!known(what)) addTimes(draws, 1, part);
      if (scale === LOGARITHM) for (let k = 0; k < DRAWS; k++) draws[k] = Math.exp(draws[k]);
      return draws;
    },
  };
}

function addTimes(draws: Float64Array, share: number, values: Float64Array): void {
  for (let k = 0; k < DRAWS; k++) draws[k] += share * values[k];
}

/** How a figure takes part in an input that merely adds decibels: of the load's power only what a transformer loses. */
const addedShare = (id: FigureId, { adds, id: input }: SetInput): number =>
  !adds ? 0 : id === 'soundPressureLevel' ? 1 : id === 'phonesPower' && input === 'transformer loss' ? 2 : 0;

/**
 * Exponent of a figure on the depth of modulation: what comes after the detector follows it, and of the distortion its
 * second harmonic, nearly all of it until troughs are clipped (m/4 in square law).
 */
const modulationShare = (id: FigureId): number => {
  if (id === 'phonesPower') return 2;
  return id === 'audioVoltage' || id === 'soundPressureLevel' || id === 'distortion' ? 1 : 0;
};

interface Scale {
  readonly to: (value: number) => number;
  /** What a factor of 1 dB on voltage adds here. */
  readonly perDecibel: number;
}
const LOGARITHM: Scale = { to: Math.log, perDecibel: Math.LN10 / 20 };
const AS_IT_IS: Scale = { to: (x) => x, perDecibel: 0 };
const LEVEL: Scale = { ...AS_IT_IS, perDecibel: 1 };

const scaleOf = (id: FigureId, values: readonly number[]): Scale =>
  IN_DECIBELS.has(id) ? LEVEL : values.every((x) => Number.isNaN(x) || x > 0) ? LOGARITHM : AS_IT_IS;
