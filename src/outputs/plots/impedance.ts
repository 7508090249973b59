import { scaleLinear, scaleLog } from 'd3-scale';
import type { ImpedanceAt } from '../../engine/measure/sound-card/impedance-sweep.ts';
import { formatNumber } from '../../engine/units/format.ts';
import { circle, line, polyline } from '../scene/build.ts';
import type { Item, Point, Scene } from '../scene/scene.ts';
import { impedanceSweepWords } from '../words/index.ts';
import { minus } from './figures.ts';
import { frameOf, type PlotSize, plotScene, xAxis, yAxis } from './frame.ts';

export interface ImpedanceCurves {
  /** At least one. */
  readonly measured: readonly ImpedanceAt[];
  /** As calculated, Hz and Ω; may be empty. */
  readonly calculated: readonly { readonly frequency: number; readonly impedance: number }[];
}

const TICKS = [20, 50, 100, 200, 500, 1000, 2000, 5000, 10000, 20000];
const OHMS = [1, 2, 5];

const STRIP = 64;

/** The calculated impedance at a frequency, Ω, between its points by logarithms; undefined beyond them. */
function calculatedAt(calculated: ImpedanceCurves['calculated'], frequency: number): number | undefined {
  const next = calculated.findIndex((one) => one.frequency >= frequency);
  if (next < 0) return undefined;
  const [a, b] = [calculated[Math.max(0, next - 1)], calculated[next]];
  if (frequency < a.frequency) return undefined;
  if (a === b) return a.impedance;
  const share = Math.log(frequency / a.frequency) / Math.log(b.frequency / a.frequency);
  return a.impedance * (b.impedance / a.impedance) ** share;
}

/** By how many percent each measured impedance, with its range, is above the calculated one. */
function differencesOf({ measured, calculated }: ImpedanceCurves) {
  return measured.flatMap(({ frequency, magnitude: { value, range } }) => {
    const there = calculatedAt(calculated, frequency);
    const above = (one: number): number => (100 * (one - there!)) / there!;
    return there === undefined ? [] : [{ frequency, value: above(value), low: above(range[0]), high: above(range[1]) }];
  });
}

/**
 * Impedance over frequency: what was measured with its ranges, and the calculated curve; below it what one is above the
 * other.
 * @param data Hz and Ω
 * @param size px; default as the page has it
 * @returns a scene, px
 */
export function impedanceCurve({ measured, calculated }: ImpedanceCurves, size: PlotSize = {}): Scene {
  const differences = differencesOf({ measured, calculated });
  const hasStrip = differences.length > 0;
  const frame = frameOf(size, { left: 56, bottom: hasStrip ? 40 + STRIP + 30 : 40 }, hasStrip ? 0.72 : 0.5);
  const { box } = frame;
  const sizes = [
    ...measured.flatMap(({ magnitude: { value, range } }) => [value, ...range]),
    ...calculated.map(({ impedance }) => impedance),
  ].filter((one) => one > 0 && Number.isFinite(one));
  const x = scaleLog([20, 20_000], [box.x, box.x + box.w]);
  const ends: [number, number] = [Math.min(...sizes) / 1.2, Math.max(...sizes) * 1.2];
  const y = scaleLog(ends, [box.y + box.h, box.y]).clamp(true);
  const decades = Array.from({ length: 12 }, (_, k) => OHMS.map((m) => m * 10 ** (k - 2))).flat();
  const hertz = {
    unit: 'Hz',
    format: impedanceSweepWords.frequency,
    ticks: frame.narrow ? TICKS.filter((_, i) => i % 3 === 0) : TICKS,
  };
  const items: Item[] = [
    ...(hasStrip
      ? [line([box.x, box.y + box.h], [box.x + box.w, box.y + box.h], { stroke: 'soft' })]
      : xAxis(frame, x, hertz)),
    ...yAxis(frame, y, {
      unit: 'Ω',
      format: impedanceSweepWords.ohms,
      ticks: decades.filter((one) => one >= ends[0] && one <= ends[1]),
    }),
  ];
  if (calculated.length > 1)
    items.push(
      polyline(
        calculated.map(({ frequency, impedance }): Point => [x(frequency), y(impedance)]),
        { stroke: 'copper', width: 2, title: impedanceSweepWords.calculated },
      ),
    );
  for (const one of measured) {
    const { frequency, magnitude } = one;
    const at = x(frequency);
    items.push(
      line([at, y(magnitude.range[0])], [at, y(magnitude.range[1])], { stroke: 'accent', width: 1.5 }),
      circle([at, y(magnitude.value)], 3.5, { stroke: 'accent', fill: 'accent', title: impedanceSweepWords.at(one) }),
    );
  }
  if (hasStrip) {
    const low = { ...frame, box: { ...box, y: box.y + box.h + 30, h: STRIP } };
    const most = Math.max(0.1, ...differences.map(({ value }) => Math.abs(value))) * 1.2;
    const above = scaleLinear([-most, most], [low.box.y + low.box.h, low.box.y]).clamp(true);
    items.push(
      ...yAxis(low, above, {
        name: impedanceSweepWords.differences,
        unit: '%',
        format: (one) => minus(formatNumber(one, 2)),
        ticks: [-most / 1.2, 0, most / 1.2],
        grid: false,
      }),
      ...xAxis(low, x, { ...hertz, grid: false }),
      line([box.x, above(0)], [box.x + box.w, above(0)], { stroke: 'soft' }),
    );
    for (const one of differences) {
      const at = x(one.frequency);
      items.push(
        line([at, above(one.low)], [at, above(one.high)], { stroke: 'accent', width: 1.2 }),
        circle([at, above(one.value)], 3, { stroke: 'accent', fill: 'accent', width: 1.2 }),
      );
    }
  }
  return plotScene(frame, impedanceSweepWords.title, impedanceSweepWords.text(measured, calculated.length > 1), items);
}
