import { scaleLinear, scaleLog } from 'd3-scale';
import type { Fitted } from '../../engine/measure/fitted.ts';
import type { QuantityKind } from '../../engine/units/quantity-kind.ts';
import { circle, line, text } from '../scene/build.ts';
import type { Item, Scene } from '../scene/scene.ts';
import { besideCalculatedWords } from '../words/index.ts';
import { axisUnitOf, tickText } from './axis-unit.ts';
import { type AxisScale, type Frame, frameOf, PLOT_LETTERS, type PlotSize, plotScene, xAxis } from './frame.ts';

/** A measured figure, SI, and the calculated one where there is one. */
export interface FigureBeside {
  readonly label: string;
  /** Left out for a number without a unit. */
  readonly quantity?: QuantityKind;
  readonly measured: Fitted;
  readonly calculated?: Fitted;
}

const ROW = 104;
const BARS = { measured: 30, calculated: 50 } as const;
/** Ranges further apart than this are drawn by their logarithms. */
const WIDE = 20;

const endsOf = ({ value, range }: Fitted): number[] => [value, ...range].filter(Number.isFinite);

/**
 * Measured figures, each over the calculated one with the range of both, on a scale of its own.
 * @param figures at least one, each with a finite value
 * @param size px; the height follows from the figures
 * @returns a scene, px
 */
export function besideCalculated(
  { name, figures }: { readonly name: string; readonly figures: readonly FigureBeside[] },
  size: PlotSize = {},
): Scene {
  const frame = frameOf({ width: size.width, height: 8 + ROW * figures.length }, { left: 84, right: 24, top: 0 });
  const items = figures.flatMap((figure, i) => rowItems(frame, figure, 8 + i * ROW));
  return plotScene(
    frame,
    besideCalculatedWords.title(name),
    figures.map(besideCalculatedWords.sentence).join(' '),
    items,
  );
}

function rowItems(frame: Frame, { label, quantity, measured, calculated }: FigureBeside, top: number): Item[] {
  const { box } = frame;
  const ends = [measured, ...(calculated ? [calculated] : [])].flatMap(endsOf);
  const [unit, factor] = axisUnitOf(Math.max(...ends.map(Math.abs)), quantity);
  const [low, high] = [Math.min(...ends) * factor, Math.max(...ends) * factor];
  const room: [number, number] = [box.x, box.x + box.w];
  const isWide = low > 0 && high > WIDE * low;
  const more = 0.08 * (high - low) || Math.abs(high) * 0.1 || 1;
  const x = isWide
    ? scaleLog([low / 1.2, high * 1.2], room).clamp(true)
    : scaleLinear([low - more, high + more], room).clamp(true);
  const row: Frame = { ...frame, box: { ...box, y: top + 18, h: 46 } };
  const at = (value: number): number =>
    Number.isNaN(value) ? room[0] : Number.isFinite(value) ? x(value * factor) : room[value > 0 ? 1 : 0];
  const bar = (of: keyof typeof BARS, { value, range }: Fitted): Item[] => {
    const y = top + BARS[of];
    const stroke = of === 'measured' ? 'accent' : 'copper';
    const [from, to] = range.map(at);
    return [
      text([box.x - 8, y], besideCalculatedWords[of], PLOT_LETTERS, { anchor: 'end', sits: 'middle', role: 'soft' }),
      line([from, y], [to, y], { stroke, width: 2 }),
      ...[from, to].map((end) => line([end, y - 4], [end, y + 4], { stroke, width: 1.5 })),
      ...(Number.isFinite(value) ? [circle([at(value), y], 4, { stroke, fill: stroke, width: 1.5 })] : []),
    ];
  };
  return [
    text([4, top + 6], label, PLOT_LETTERS, { sits: 'middle' }),
    ...xAxis(row, x, { unit, format: tickText, grid: true, ticks: ticksOf(x, isWide, box.w) }),
    ...(calculated ? bar('calculated', calculated) : []),
    ...bar('measured', measured),
  ];
}

/** Of a logarithmic scale 1, 2 and 5 of each decade. */
function ticksOf(x: AxisScale, isWide: boolean, width: number): readonly number[] {
  if (!isWide) return x.ticks(Math.max(2, Math.floor(width / 80)));
  const [low, high] = x.domain();
  const decades = Math.ceil(Math.log10(high / low)) + 1;
  const first = Math.floor(Math.log10(low));
  return Array.from({ length: decades }, (_, i) => [1, 2, 5].map((m) => m * 10 ** (first + i)))
    .flat()
    .filter((one) => one >= low && one <= high);
}
