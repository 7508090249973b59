import type { ResonanceCurve } from '../../../engine/reception/curves.ts';
import type { ComparedSets } from '../../../engine/vary/compare-sets.ts';
import { dialsCompared, dialsOf, resonancesCompared, resonancesOf } from '../../plots/index.ts';
import { type ComparedRow, comparedParts, comparedPath } from '../../tables/sets-table.ts';
import { setsComparedText, comparisonSheetWords as texts } from '../../words/index.ts';
import { Flow } from '../paper/flow.ts';
import { PAGE_SMALL, type PaperName, type Sheet } from '../paper/page.ts';

/** Letters of tables, mm, from the usual down to the smallest that is still read with ease. */
const SIZES = [2.8, 2.6, 2.5] as const;
/** Between rows, mm. */
const GAP = 1.2;
/** Of both plots together, px; their letters are then as large as those of the tables. */
const PLOT_WIDTH = 400;
const PLOT_HEIGHT = 236;

/**
 * Several sets side by side on one page: differences in words, path of the station, curves, dials, parts. Where the page
 * is too small for all, letters become smaller, then ranges are left out but that at the ear.
 * @param compared from `compareSets`
 * @param curves from `comparedCurves`, of the same
 * @param paper default A4
 * @returns one sheet, mm
 */
export function comparisonSheet(
  compared: ComparedSets,
  curves: readonly (ResonanceCurve | undefined)[],
  paper: PaperName = 'a4',
): Sheet {
  let least: Sheet | undefined;
  for (const allRanges of [true, false])
    for (const size of SIZES) {
      const sheet = laidOut(compared, curves, { paper, size, allRanges });
      if (!least || sheet.pages.length < least.pages.length) least = sheet;
      if (least.pages.length === 1) return least;
    }
  return least!;
}

interface Layout {
  readonly paper: PaperName;
  readonly size: number;
  readonly allRanges: boolean;
}

function laidOut(
  compared: ComparedSets,
  curves: readonly (ResonanceCurve | undefined)[],
  { paper, size, allRanges }: Layout,
): Sheet {
  const { sets, moved } = compared;
  const [first] = sets;
  const names = sets.map(({ set }) => set.name);
  const { station } = first;
  const { name: place } = first.set.place;
  const flow = new Flow({
    id: 'comparison',
    title: texts.title,
    heading: setsComparedText.title(station, place),
    set: names.join(', '),
    paper,
  });
  const sentences = sets.flatMap(({ difference }, i) =>
    difference ? [setsComparedText.difference(i, difference)] : [],
  );
  flow.list([...sentences, ...(moved.length > 0 ? [setsComparedText.moved(moved)] : [])], 'dot', PAGE_SMALL + 0.2);
  const columns = (title: string) => [
    { title, share: 1.5 },
    ...names.map((name, i) => ({ title: setsComparedText.name(i, name), share: 2 })),
  ];
  const path = comparedPath(compared);
  const ear = path.findLastIndex(({ ranges }) => ranges !== undefined);
  flow.table(
    columns(setsComparedText.rows.stage),
    path.map((row, i) => cellsOf(row, allRanges || i === ear)),
    { size, gap: GAP },
  );
  flow.para(texts.ranges, { small: true });
  const dials = dialsCompared(dialsOf(compared), { width: PLOT_WIDTH });
  const resonances = resonancesCompared(resonancesOf(compared, curves), {
    width: PLOT_WIDTH,
    height: Math.max(PLOT_HEIGHT, dials.height),
  });
  flow.figures([resonances, dials]);
  flow.para(texts.dials, { small: true });
  flow.table(
    columns(setsComparedText.rows.part),
    comparedParts(compared).map((row) => cellsOf(row, false)),
    { size, gap: GAP },
  );
  return flow.finish(texts.description(names));
}

const cellsOf = ({ name, cells, ranges }: ComparedRow, withRanges: boolean): string[] => [
  name,
  ...cells.map((cell, i) => (withRanges && ranges?.[i] ? texts.withRange(cell, ranges[i]) : cell)),
];
