import { scaleLog } from 'd3-scale';
import type { ImpedanceAt } from '../../engine/measure/sound-card/impedance-sweep.ts';
import { circle, line, polyline } from '../scene/build.ts';
import type { Item, Point, Scene } from '../scene/scene.ts';
import { impedanceSweepWords } from '../words/index.ts';
import { frameOf, type PlotSize, plotScene, xAxis, yAxis } from './frame.ts';

export interface ImpedanceCurves {
  /** At least one. */
  readonly measured: readonly ImpedanceAt[];
  /** As calculated, Hz and Ω; may be empty. */
  readonly calculated: readonly { readonly frequency: number; readonly impedance: number }[];
}

const TICKS = [20, 50, 100, 200, 500, 1000, 2000, 5000, 10000, 20000];
const OHMS = [1, 2, 5];

/**
 * Impedance over frequency: what was measured with its ranges, and the calculated curve.
 * @param data Hz and Ω
 * @param size px; default as the page has it
 * @returns a scene, px
 */
export function impedanceCurve({ measured, calculated }: ImpedanceCurves, size: PlotSize = {}): Scene {
  const frame = frameOf(size, { left: 56 });
  const { box } = frame;
  const sizes = [
    ...measured.flatMap(({ magnitude: { value, range } }) => [value, ...range]),
    ...calculated.map(({ impedance }) => impedance),
  ].filter((one) => one > 0 && Number.isFinite(one));
  const x = scaleLog([20, 20_000], [box.x, box.x + box.w]);
  const ends: [number, number] = [Math.min(...sizes) / 1.2, Math.max(...sizes) * 1.2];
  const y = scaleLog(ends, [box.y + box.h, box.y]).clamp(true);
  const decades = Array.from({ length: 12 }, (_, k) => OHMS.map((m) => m * 10 ** (k - 2))).flat();
  const items: Item[] = [
    ...xAxis(frame, x, {
      unit: 'Hz',
      format: impedanceSweepWords.frequency,
      ticks: frame.narrow ? TICKS.filter((_, i) => i % 3 === 0) : TICKS,
    }),
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
  return plotScene(frame, impedanceSweepWords.title, impedanceSweepWords.text(measured, calculated.length > 1), items);
}
