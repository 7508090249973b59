import { changedDetector } from '../built/changed-parts.ts';
import type { Detector } from '../parts/detector/detector.ts';
import { temperatureVoltage } from '../units/quantities.ts';
import { attempt } from './attempt.ts';
import { deviceSpreads, type KnownDevice } from './detector-spreads.ts';
import { deviatesOf } from './deviates-of.ts';
import { DRAWS, rangedOf } from './draws.ts';
import { addResponse } from './figure-response.ts';
import { NINETY, valueAtDeviate } from './spread.ts';

type Range = readonly [low: number, high: number];

/** What a device is known by. */
const LAW = {
  saturationCurrent: ({ law }: Detector) => law?.saturationCurrent ?? Number.NaN,
  ideality: ({ law, temperature }: Detector) => (law ? law.slopeVoltage / temperatureVoltage(temperature) : Number.NaN),
  seriesResistance: ({ law }: Detector) => law?.seriesResistance ?? Number.NaN,
} as const;
type LawFigure = keyof typeof LAW;

/** A figure with its 90 % range. */
export interface FigureWithRange {
  readonly value: number;
  readonly range: Range;
}

/**
 * Figures of a device and of what follows from it, each with what nine samples in ten of such devices have: its saturation
 * current, ideality and series resistance are drawn together, as its kind spreads them.
 * @param device which of the library, the figures given for it, and its model as they make it.
 * @param figuresOf what follows, in SI units; evaluated for the device and twice for each figure of it.
 * @returns by name; of a device without an exponential law (a valve) only what follows. Each range holds its figure.
 * @throws RangeError what `figuresOf` throws for the device itself.
 */
export function detectorRanges<Figure extends string>(
  device: KnownDevice,
  figuresOf: (model: Detector) => Readonly<Record<Figure, number>>,
): Readonly<Record<Figure, FigureWithRange> & Partial<Record<LawFigure, FigureWithRange>>> {
  const { model } = device;
  const inputs = deviceSpreads(device);
  const all = (one: Detector): Record<string, number> => {
    const law = Object.entries(LAW).map(([name, of]) => [name, of(one)] as const);
    return { ...figuresOf(one), ...Object.fromEntries(one.law ? law : []) };
  };
  const base = all(model);
  const turned = inputs.map((input) => {
    const at = (deviate: number) =>
      attempt(() => all(changedDetector(model, input.changes!(valueAtDeviate(input.spread, deviate)))));
    return { deviates: deviatesOf(input), low: at(-NINETY), high: at(NINETY) };
  });
  const rangeOf = (name: string): Range => {
    const now = base[name];
    const isFactor = now > 0 && turned.every(({ low, high }) => [low, high].every((s) => !s || s[name] > 0));
    const to = isFactor ? Math.log : (x: number) => x;
    const from = isFactor ? Math.exp : (x: number) => x;
    const draws = new Float64Array(DRAWS).fill(to(now));
    for (const { deviates, low, high } of turned) {
      const off = (s: Record<string, number> | undefined) => (s ? to(s[name]) - to(now) : Number.NaN);
      addResponse(draws, deviates, off(low), off(high));
    }
    const [low, high] = rangedOf(draws).range;
    return [Math.min(now, from(low)), Math.max(now, from(high))];
  };
  const ranged = Object.keys(base).map((name) => [name, { value: base[name], range: rangeOf(name) }] as const);
  return Object.fromEntries(ranged) as ReturnType<typeof detectorRanges<Figure>>;
}
