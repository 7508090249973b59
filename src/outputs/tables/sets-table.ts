import type { SetDescription } from '../../engine/set/description.ts';
import { formatNumber, formatQuantity } from '../../engine/units/format.ts';
import type { ComparedSet, ComparedSets } from '../../engine/vary/compare-sets.ts';
import { aerialLabel, coilLabel, earthLabel, tuningLabel } from '../drawings/circuit/about.ts';
import {
  kindName,
  loadText,
  nameOfDetector,
  pathTableWords,
  type SymbolLabel,
  setsComparedText,
  stageLevel,
  stageTitle,
  verdictWords,
} from '../words/index.ts';
import { table } from './table.ts';

/** One thing of every set, in the order of the sets. */
export interface ComparedRow {
  readonly name: string;
  readonly cells: readonly string[];
  /** Of cells that are figures: their 90 % ranges; empty where one has none. */
  readonly ranges?: readonly string[];
}

const { rows: texts } = setsComparedText;
const inWords = ({ lines }: SymbolLabel): string => setsComparedText.part(lines);

const PARTS: readonly (readonly [string, (set: SetDescription) => string])[] = [
  [texts.aerial, ({ aerial }) => inWords(aerialLabel(aerial))],
  [texts.earth, ({ earth }) => inWords(earthLabel(earth))],
  [texts.coils, ({ coils }) => setsComparedText.coils(coils.map((coil) => inWords(coilLabel(coil))))],
  [texts.tuning, ({ tuning }) => tuningLabel(tuning).value],
  [texts.arrangement, ({ arrangement }) => kindName('arrangement', arrangement.kind)],
  [texts.detector, ({ detector }) => nameOfDetector(detector)],
  [texts.load, ({ load }) => loadText(load)],
];

/**
 * The path of the station, a row for each level, and what goes with it.
 * @param compared from `compareSets`
 * @returns rows with a cell for each set
 */
export function comparedPath({ sets }: ComparedSets): ComparedRow[] {
  const [first] = sets;
  const each = (name: string, of: (set: ComparedSet) => string): ComparedRow => ({ name, cells: sets.map(of) });
  return [
    ...first.station.path.map((stage, i) => ({
      ...each(stageTitle(stage), ({ station }) => {
        const own = station.path[i];
        return own.value === undefined ? '—' : stageLevel(own);
      }),
      ranges: sets.map(({ station }) => {
        const { value, range, kind, unit } = station.path[i];
        return value === undefined || !range ? '' : pathTableWords.range(range, kind, unit);
      }),
    })),
    each(texts.heard, ({ station }) => verdictWords[station.verdict]),
    each(texts.scale, ({ station }) => (station.dial ? `${Math.round(station.dial.scale)}°` : '—')),
    each(texts.loadedQ, ({ station }) => formatNumber(station.loadedQ, 2)),
    each(texts.bandwidth, ({ station }) => formatQuantity(station.bandwidth, 'frequency', 3)),
    each(texts.range, ({ dial }) => setsComparedText.tuningRange(dial.lowest, dial.highest)),
  ];
}

/** Every station of the place: where it is on each scale, and how it is heard. */
export const comparedStations = ({ sets }: ComparedSets): ComparedRow[] =>
  sets[0].set.place.stations.map((station, i) => ({
    name: setsComparedText.station(station),
    cells: sets.map(({ dial }) => {
      const { place, verdict } = dial.stations[i];
      return place ? setsComparedText.onScale(place.scale, verdictWords[verdict]) : verdictWords[verdict];
    }),
  }));

/** What each set is made of. */
export const comparedParts = ({ sets }: ComparedSets): ComparedRow[] =>
  PARTS.map(([name, of]) => ({ name, cells: sets.map(({ set }) => of(set)) }));

/** The parts of one set: what each is called, and what it is. */
export const partsInWords = (set: SetDescription): (readonly [string, string])[] =>
  PARTS.map(([name, of]) => [name, of(set)]);

/**
 * Rows with a column for each set.
 * @param title of the first column
 * @param width characters in a line; default as many as it takes
 */
export const comparedTable = (title: string, rows: readonly ComparedRow[], width?: number): string =>
  table(
    [
      { title, text: ({ name }: ComparedRow) => name },
      ...(rows[0]?.cells ?? []).map((_, i) => ({
        title: setsComparedText.letter(i),
        text: ({ cells }: ComparedRow) => cells[i],
      })),
    ],
    rows,
    width,
  );
