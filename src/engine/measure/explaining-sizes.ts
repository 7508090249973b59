import type { Path } from '../kinds/adjustment.ts';
import { root } from '../numerics/roots.ts';
import type { SetDescription } from '../set/description.ts';
import { valueAtPath, withValueAt } from '../set/write.ts';
import { attempt } from '../uncertainty/attempt.ts';
import type { Fitted } from './fitted.ts';
import {
  type Agreement,
  calculatedFigure,
  type MeasurableFigure,
  measurableFigures,
  withoutMeasured,
} from './measurable.ts';

interface Size {
  readonly part: 'coil' | 'loop' | 'tuning' | 'aerial' | 'earth';
  readonly key: string;
  /** Standard deviation of a maker's figure for it, a share. Common practice, no source. */
  readonly usual: number;
  /** The furthest that it may be off, a share. Common practice, no source. */
  readonly most: number;
  readonly isWhole?: true;
}

const SIZES = {
  'coil.turns': { part: 'coil', key: 'turns', usual: 0.01, most: 0.15, isWhole: true },
  'coil.turnsPerLayer': { part: 'coil', key: 'turnsPerLayer', usual: 0.01, most: 0.15, isWhole: true },
  'coil.formerDiameter': { part: 'coil', key: 'formerDiameter', usual: 0.015, most: 0.12 },
  'coil.innerDiameter': { part: 'coil', key: 'innerDiameter', usual: 0.02, most: 0.15 },
  'coil.pegCircle': { part: 'coil', key: 'pegCircle', usual: 0.02, most: 0.12 },
  'coil.pitch': { part: 'coil', key: 'pitch', usual: 0.05, most: 0.3 },
  'coil.layerSpacing': { part: 'coil', key: 'layerSpacing', usual: 0.1, most: 0.4 },
  'coil.perTurnSquared': { part: 'coil', key: 'perTurnSquared', usual: 0.1, most: 0.4 },
  'loop.turns': { part: 'loop', key: 'turns', usual: 0.01, most: 0.15, isWhole: true },
  'loop.side': { part: 'loop', key: 'side', usual: 0.02, most: 0.12 },
  'loop.pitch': { part: 'loop', key: 'pitch', usual: 0.05, most: 0.3 },
  'loop.winding': { part: 'loop', key: 'winding', usual: 0.05, most: 0.3 },
  'loop.permeability': { part: 'loop', key: 'permeability', usual: 0.15, most: 0.5 },
  'tuning.vanes': { part: 'tuning', key: 'vanes', usual: 0.02, most: 0.3, isWhole: true },
  'tuning.sheets': { part: 'tuning', key: 'sheets', usual: 0.02, most: 0.3, isWhole: true },
  'tuning.gap': { part: 'tuning', key: 'gap', usual: 0.1, most: 0.5 },
  'tuning.thickness': { part: 'tuning', key: 'thickness', usual: 0.1, most: 0.5 },
  'tuning.outerRadius': { part: 'tuning', key: 'outerRadius', usual: 0.02, most: 0.12 },
  'tuning.width': { part: 'tuning', key: 'width', usual: 0.02, most: 0.15 },
  'tuning.length': { part: 'tuning', key: 'length', usual: 0.02, most: 0.15 },
  'tuning.permittivity': { part: 'tuning', key: 'permittivity', usual: 0.1, most: 0.5 },
  'aerial.length': { part: 'aerial', key: 'length', usual: 0.05, most: 0.3 },
  'aerial.height': { part: 'aerial', key: 'height', usual: 0.1, most: 0.4 },
  'earth.length': { part: 'earth', key: 'length', usual: 0.05, most: 0.5 },
  'earth.side': { part: 'earth', key: 'side', usual: 0.05, most: 0.3 },
  'earth.soilResistivity': { part: 'earth', key: 'soilResistivity', usual: 0.7, most: 3 },
} as const satisfies Record<string, Size>;

/** A size of a part that a builder may have counted or measured wrongly. */
export type ExplainingSizeId = keyof typeof SIZES;

/** One size that by itself makes the calculated figure the measured one. SI. */
export interface ExplainingSize {
  readonly size: ExplainingSizeId;
  readonly path: Path;
  readonly described: number;
  /** Whole where it is counted: then the nearest. */
  readonly explaining: number;
}

/** A measured figure differs for certain beyond so many of its own standard errors. */
const CERTAIN = 2;
/** Differences below this share are within what the calculation itself can say. */
const SAME = 0.005;
/** Share of a size to which it is solved for. */
const NEAR = 1e-6;

/** The part of a set that a size is of, for the figure at this place; undefined where it has no bearing on it. */
function partOfSize(part: Size['part'], [first, index]: Path): Path | undefined {
  switch (part) {
    case 'coil':
      return first === 'coils' ? [first, index] : undefined;
    case 'loop':
    case 'aerial':
      return first === 'aerial' ? ['aerial'] : undefined;
    case 'tuning':
      return first === 'tuning' ? ['tuning'] : undefined;
    case 'earth':
      return first === 'earth' || first === 'aerial' ? ['earth'] : undefined;
  }
}

/**
 * Which one size, changed by itself, would make the calculated figure the measured one.
 * @param set as read; what was measured in it says at which frequency the figure counts, and nothing else
 * @param path where the measured value of the figure stands in the description
 * @param measured the figure as measured
 * @returns the sizes within what is plausible, the smallest change against the usual error of such a size first; none
 *   where the measured value is as calculated within its own errors
 */
export function explainingSizes(set: SetDescription, path: Path, measured: Fitted): readonly ExplainingSize[] {
  const bare = withoutMeasured(set);
  const calculated = calculatedFigure(bare, path, set)?.calculated.value;
  if (!calculated || !(measured.value > 0)) return [];
  const apart = Math.log(measured.value / calculated);
  if (!(Math.abs(apart) > Math.max(SAME, (CERTAIN * measured.standardError) / measured.value))) return [];
  const found = (Object.keys(SIZES) as ExplainingSizeId[]).flatMap((size) => {
    const { part, key, ...about }: Size = SIZES[size];
    const of = partOfSize(part, path);
    if (!of || (part === 'loop') !== isOfLoop(path)) return [];
    const at = [...of, key];
    const described = valueAtPath(bare, at);
    if (typeof described !== 'number' || !(described > 0)) return [];
    const explaining = solve(bare, set, path, at, described, measured.value, about);
    return explaining === undefined ? [] : [{ size, path: at, described, explaining, usual: about.usual }];
  });
  const far = ({ described, explaining, usual }: (typeof found)[number]) =>
    Math.abs(Math.log(explaining / described)) / usual;
  return found.sort((a, b) => far(a) - far(b)).map(({ usual: _, ...one }) => one);
}

/** A figure that has a measured value in the description, which wins over the calculated one. */
export interface MeasuredFigure extends MeasurableFigure {
  readonly measured: Fitted;
  readonly agreement: Agreement;
  readonly sizes: readonly ExplainingSize[];
  /** As the description has it. */
  readonly method?: string;
  readonly date?: string;
}

/**
 * Every figure of a set whose measured value wins, beside the calculated one.
 * @param set as read
 * @param figures its measurable figures, where they are there already
 * @returns in the order of the parts, with the sizes that would explain each difference
 */
export const measuredFigures = (
  set: SetDescription,
  figures: readonly MeasurableFigure[] = measurableFigures(set),
): readonly MeasuredFigure[] =>
  figures.flatMap((figure) => {
    const { measured, agreement, path } = figure;
    if (!measured || !agreement) return [];
    const { method, date } = valueAtPath(set, path) as { readonly method?: string; readonly date?: string };
    return [{ ...figure, measured, agreement, sizes: explainingSizes(set, path, measured), method, date }];
  });

/** Of a loop the winding is measured, of a wire aerial the wire. */
const isOfLoop = (path: Path): boolean =>
  path[0] === 'aerial' && ['inductance', 'q', 'selfCapacitance'].includes(String(path[path.length - 1]));

/** The size at which the figure is the one wanted; undefined where none between the bounds makes it so. */
function solve(
  bare: SetDescription,
  read: SetDescription,
  path: Path,
  at: Path,
  described: number,
  wanted: number,
  { most, isWhole }: Omit<Size, 'part' | 'key'>,
): number | undefined {
  const offAt = (factor: number): number => {
    const changed = withValueAt(bare, at, described * factor);
    const value = calculatedFigure(changed, path, read)?.calculated.value ?? Number.NaN;
    return Math.log(value / wanted);
  };
  // None where there is no root between the bounds, or a part cannot be built with such a size.
  const factor = attempt(() => root(offAt, 1 / (1 + most), 1 + most, NEAR));
  if (factor === undefined || !isWhole) return factor && described * factor;
  const whole = Math.round(described * factor);
  return whole === described || whole < 1 ? undefined : whole;
}
