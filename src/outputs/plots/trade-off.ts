import { scaleLinear } from 'd3-scale';
import { circle } from '../scene/build.ts';
import type { Item, Point, Scene } from '../scene/scene.ts';
import { type TradeOffAxis, tradeOffWords } from '../words/index.ts';
import { minus } from './figures.ts';
import { type AxisScale, frameOf, type PlotSize, plotScene, xAxis, yAxis } from './frame.ts';

/** What two axes say of sets. A set that lacks a figure has no point. */
interface TradeOff {
  readonly x: TradeOffAxis;
  readonly y: TradeOffAxis;
  /** The sets worth building. */
  readonly sets: readonly (readonly [x: number | undefined, y: number | undefined])[];
  /** Others that were calculated. */
  readonly others: readonly (readonly [x: number | undefined, y: number | undefined])[];
}

type Placed = readonly [x: number, y: number];
const isPlaced = (point: TradeOff['sets'][number]): point is Placed => point.every(Number.isFinite);

/**
 * What found sets give of one thing against another.
 * @param data two axes and the sets, in the units of the axes
 * @param size px
 * @returns the axes with the other sets as small dots, and the place of each found set, px; none for one without a figure
 */
export function tradeOff(
  { x, y, sets, others }: TradeOff,
  size: PlotSize = {},
): { readonly scene: Scene; readonly places: readonly (Point | undefined)[] } {
  const frame = frameOf(size, { left: 48, right: 22, top: 34 }, 0.62);
  const { box } = frame;
  const known = [...sets, ...others].filter(isPlaced);
  const scaleOf = (values: readonly number[], range: [number, number]) => {
    const [low, high] = values.length > 0 ? [Math.min(...values), Math.max(...values)] : [0, 1];
    const more = 0.08 * (high - low) || Math.max(1, 0.1 * Math.abs(high));
    return scaleLinear([low - more, high + more], range);
  };
  const xScale = scaleOf(
    known.map(([value]) => value),
    [box.x, box.x + box.w],
  );
  const yScale = scaleOf(
    known.map(([, value]) => value),
    [box.y + box.h, box.y],
  );
  const ticksOf = (scale: AxisScale, { isWhole }: TradeOffAxis, count: number): readonly number[] =>
    scale.ticks(count).filter((tick) => !isWhole || Number.isInteger(tick));
  const format = (value: number): string => minus(String(Number(value.toPrecision(6))));
  const items: Item[] = [
    ...yAxis(frame, yScale, {
      name: y.name,
      unit: y.unit,
      format,
      ticks: ticksOf(yScale, y, Math.floor(box.h / 36)),
    }),
    ...xAxis(frame, xScale, {
      name: x.name,
      unit: x.unit,
      format,
      grid: false,
      ticks: ticksOf(xScale, x, Math.floor(box.w / 70)),
    }),
    ...others
      .filter(isPlaced)
      .map(([a, b]) => circle([xScale(a), yScale(b)], 3, { stroke: 'soft', fill: 'paper', width: 1 })),
  ];
  return {
    scene: plotScene(
      frame,
      tradeOffWords.title(x.name, y.name),
      tradeOffWords.text(sets.filter(isPlaced).length, others.filter(isPlaced).length),
      items,
    ),
    places: sets.map((point) => (isPlaced(point) ? [xScale(point[0]), yScale(point[1])] : undefined)),
  };
}
