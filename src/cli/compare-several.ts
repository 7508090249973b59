import {
  type ComparedSets,
  comparedCurves,
  compareSets,
  type FieldOptions,
  receive,
  type SetDescription,
} from '../engine/index.ts';
import { MOST_SETS } from '../outputs/plots/index.ts';
import { comparisonSheet, pageSvg, sheetsPdf } from '../outputs/sheets/index.ts';
import { clean, comparedParts, comparedPath, comparedStations, comparedTable } from '../outputs/tables/index.ts';
import {
  callProblems,
  cliNotes,
  comparedOnBands,
  jsonText,
  setsComparedText as texts,
} from '../outputs/words/index.ts';
import { chooseStation } from './choose-station.ts';
import { InputError, type Io } from './command.ts';
import { dataOut } from './data-out.ts';
import { endingOf } from './ending.ts';
import { paperOption } from './paper-option.ts';
import { pdfFonts } from './pdf-fonts.ts';

interface Wanted {
  readonly station?: string;
  readonly when: FieldOptions;
  readonly json?: boolean;
  readonly out?: string;
  /** A file for the sheet: PDF or SVG. */
  readonly sheet?: string;
  readonly paper?: string;
}

/** Sets side by side, and what makes the difference. @throws InputError for too many sets, or a station that is not there. */
export async function compareWholeSets(
  sets: readonly SetDescription[],
  { station, when, json, out, sheet, paper }: Wanted,
  io: Io,
): Promise<number> {
  if (sets.length > MOST_SETS) throw new InputError(callProblems.mostSets(MOST_SETS, sets.length));
  const { stations, name } = sets[0].place;
  const index = chooseStation(stations, station, station === undefined ? receive(sets[0], when).best[0] : 0);
  const ending = sheet === undefined ? undefined : endingOf(sheet, ['pdf', 'svg'], '--sheet');
  const size = paperOption(paper);
  const compared = comparedOnBands(compareSets(sets, index, when));
  if (sheet !== undefined) {
    const comparison = comparisonSheet(compared, comparedCurves(compared, when), size);
    const data =
      ending === 'svg'
        ? pageSvg(comparison.pages[0])
        : await sheetsPdf([comparison], { title: clean(texts.title(stations[index], name)), fonts: pdfFonts() });
    await io.write(sheet, data);
    io.err(`${cliNotes.written(sheet)}\n`);
    if (!json && out === undefined) return 0;
  }
  if (json || out !== undefined) {
    await dataOut(io, out, `${jsonText(dataOf(compared))}\n`);
    return 0;
  }
  io.out(`${texts.title({ ...stations[index], name: clean(stations[index].name) }, clean(name))}\n\n`);
  for (const [i, { set }] of compared.sets.entries()) io.out(`${texts.name(i, clean(set.name))}\n`);
  printDifferences(compared, io);
  const { headings, rows } = texts;
  for (const [heading, title, lines] of [
    [headings.path, rows.stage, comparedPath(compared)],
    [headings.dials, rows.station, comparedStations(compared)],
    [headings.parts, rows.part, comparedParts(compared)],
  ] as const)
    io.out(`\n${heading}\n${comparedTable(title, lines, io.width)}\n`);
  if (compared.moved.length > 0) io.out(`\n${texts.moved(compared.moved)}\n`);
  return 0;
}

function printDifferences({ sets }: ComparedSets, io: Io): void {
  io.out('\n');
  for (const [i, { difference }] of sets.entries()) {
    if (!difference) continue;
    io.out(`${texts.difference(i, difference)}\n`);
    if (difference.exchanges.length === 0) continue;
    io.out(`  ${texts.exchanged(i)}\n`);
    for (const exchange of difference.exchanges) io.out(`    ${clean(texts.exchange(exchange))}\n`);
  }
}

const dataOf = ({ sets, moved }: ComparedSets) => ({
  sets: sets.map(({ set, station, dial, difference }, i) => ({
    name: set.name,
    station,
    lowest: dial.lowest,
    highest: dial.highest,
    stations: dial.stations,
    ...(difference && { difference: { ...difference, sentence: texts.difference(i, difference) } }),
  })),
  moved,
});
