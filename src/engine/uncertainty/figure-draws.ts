import type { TunedStation } from '../reception/path/receive-station.ts';
import type { Decibels } from '../units/quantities.ts';
import { valuesDrawn } from './deviates-of.ts';
import { DRAWS } from './draws.ts';
import { parabola, throughPoints } from './figure-response.ts';
import { FIGURES, type FigureId, IN_DECIBELS } from './figures.ts';
import type { Measurable, SetInput } from './input.ts';
import { NINETY } from './spread.ts';

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
  const add = (what: Measurable, of: (k: number) => number): void => {
    const draws = parts.get(what) ?? new Float64Array(DRAWS);
    for (let k = 0; k < DRAWS; k++) draws[k] += of(k);
    parts.set(what, draws);
  };
  for (const { input, deviates, low, high } of turned) {
    const response = parabola([-NINETY, off(low)], [NINETY, off(high)]);
    add(input.settledBy, (k) => response(deviates[k]));
  }
  for (const input of inputs) {
    const share = addedShare(id, input) * scale.perDecibel;
    if (share === 0) continue;
    const values = valuesDrawn(input);
    add(input.settledBy, (k) => share * values[k]);
  }
  const follows = modulationShare(id) * scale.perDecibel;
  if (follows !== 0) add('modulation', (k) => follows * depths[k]);

  return {
    measurables: ['field strength', 'effective height', ...parts.keys()],
    with: (known) => {
      const fieldKnown = known('field strength');
      const heightKnown = known('effective height');
      const unknown = [...parts].filter(([what]) => !known(what)).map(([, draws]) => draws);
      const middle = scale.to(start);
      const draws = new Float64Array(DRAWS);
      for (let k = 0; k < DRAWS; k++)
        draws[k] = middle + strength((fieldKnown ? 0 : field[k]) + (heightKnown ? 0 : heights[k]));
      for (const part of unknown) for (let k = 0; k < DRAWS; k++) draws[k] += part[k];
      for (let k = 0; k < DRAWS; k++) draws[k] = scale.from(draws[k]);
      return draws;
    },
  };
}

/** How a figure takes part in an input that merely adds decibels: of the load's power only what a transformer loses. */
const addedShare = (id: FigureId, { adds, id: input }: SetInput): number =>
  !adds ? 0 : id === 'soundPressureLevel' ? 1 : id === 'phonesPower' && input === 'transformer loss' ? 2 : 0;

/** Exponent of a figure on the depth of modulation: what comes after the detector follows it. */
const modulationShare = (id: FigureId): number =>
  id === 'audioVoltage' || id === 'soundPressureLevel' ? 1 : id === 'phonesPower' ? 2 : 0;

interface Scale {
  readonly to: (value: number) => number;
  readonly from: (value: number) => number;
  /** What a factor of 1 dB on voltage adds here. */
  readonly perDecibel: number;
}
const LOGARITHM: Scale = { to: Math.log, from: Math.exp, perDecibel: Math.LN10 / 20 };
const AS_IT_IS: Scale = { to: (x) => x, from: (x) => x, perDecibel: 0 };
const LEVEL: Scale = { ...AS_IT_IS, perDecibel: 1 };

const scaleOf = (id: FigureId, values: readonly number[]): Scale =>
  IN_DECIBELS.has(id) ? LEVEL : values.every((x) => Number.isNaN(x) || x > 0) ? LOGARITHM : AS_IT_IS;
