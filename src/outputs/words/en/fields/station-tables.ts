import type { Refusal } from '../../../../engine/fields/refusal.ts';
import type { StationDoubt, StationDoubtFacts } from '../../../../engine/place/stations/check.ts';
import type { ColumnGuess } from '../../../../engine/place/stations/columns.ts';
import type {
  TableProblem,
  TableProblemFacts,
  TableTooLarge,
} from '../../../../engine/place/stations/table-problems.ts';
import type { RowProblem } from '../../../../engine/set/station-table.ts';
import type { WrittenProblem } from '../../../../engine/set/written-stations.ts';
import { formatQuantity } from '../../../../engine/units/format.ts';
import type { SentencesFor } from '../warnings/sentences-for.ts';
import { expectedText } from './expected.ts';
import { givenText } from './given.ts';
import { hintText } from './hints.ts';
import { aQuantity, exampleOf } from './quantities.ts';

const frequency = (hertz: number): string => formatQuantity(hertz, 'frequency', 4);
const power = (watts: number): string => formatQuantity(watts, 'power');
const length = (metres: number): string => formatQuantity(metres, 'length');

const CELLS: SentencesFor<TableProblemFacts> = {
  'no-frequency-column': () => 'Choose the column of the frequencies.',
  'no-frequency': () => 'It has no frequency.',
  'frequency-range': ({ min, max }) => `This frequency is not between ${frequency(min)} and ${frequency(max)}.`,
  'no-numbers': () => 'This column holds no numbers.',
  'thousand-or-fraction': ({ given }) =>
    `"${given}" could be a thousand or a fraction, as other numbers have decimal commas; write it without the point.`,
  'not-a-quantity': ({ given, kind, hint }) =>
    `"${given}" is not read as ${aQuantity(kind)} such as "${exampleOf({ kind })}": ${hintText(hint)}.`,
  'below-zero': ({ given }) => `"${given}" is below zero.`,
  'not-a-position': ({ given }) => `"${given}" is not read as a position such as "52.5 N, 1.2 W".`,
  'not-a-latitude': ({ given }) => `"${given}" is not read as a latitude such as "52.5 N".`,
  'not-a-longitude': ({ given }) => `"${given}" is not read as a longitude such as "1.2 W".`,
  'half-a-position': () => 'A position needs both its latitude and its longitude.',
};

type Doubts = { readonly [C in keyof StationDoubtFacts]: (figures: StationDoubtFacts[C], name: string) => string };

const DOUBTS: Doubts = {
  'outside-the-bands': ({ frequency: f }, name) =>
    `${name}: ${frequency(f)} is in neither the long-wave nor the medium-wave band.`,
  'off-the-raster': ({ frequency: f, raster, nearest }, name) =>
    `${name}: ${frequency(f)} is off the ${raster / 1000} kHz raster; the nearest channel is ${frequency(nearest)}.`,
  'listed-twice': ({ frequency: f, other }, name) =>
    `${name} at ${frequency(f)} seems to be in the list twice (row ${other} too).`,
  'no-power': ({ power: p }, name) => `${name}: a power of ${power(p)} gives no signal.`,
  'power-too-large': ({ power: p }, name) =>
    `${name}: ${power(p)} is more than any transmitter of these bands; was it meant in W?`,
  'power-too-small': ({ power: p }, name) =>
    `${name}: ${power(p)} is less than any broadcast transmitter; was it meant in kW?`,
  'impossible-depth': ({ modulation }, name) =>
    `${name}: a depth of ${formatQuantity(modulation, 'ratio')} is not possible; 30 to 100 % is usual.`,
  'impossible-mast': ({ height }, name) => `${name}: no mast is ${length(height)} high.`,
  'hours-not-understood': ({ hours }, name) =>
    `${name}: the hours "${hours}" cannot be read; write them as 06:00-22:00.`,
  'not-on-earth': (_, name) => `${name}: its position is not on the earth.`,
  'too-far': ({ farthest }, name) => `${name}: no place on earth is farther than ${Math.round(farthest / 1000)} km.`,
  nowhere: (_, name) => `${name}: it has neither a position, nor a distance, nor a measured field.`,
  'position-against-distance': ({ byPosition, given }, name) =>
    `${name}: its position is ${length(byPosition)} away, not ${length(given)}.`,
};

const doubt = (name: string, fact: StationDoubt['fact']): string =>
  (DOUBTS[fact.code] as (figures: StationDoubt['fact'], name: string) => string)(fact, name);

/** A sentence on what is probably a slip in a list of stations. */
export const stationDoubt = ({ name, fact }: StationDoubt): string => doubt(name, fact);

const cell = (fact: TableProblem['fact']): string =>
  (CELLS[fact.code] as (figures: TableProblem['fact']) => string)(fact);

const refusal = ({ expected, given, hint }: Refusal): string =>
  `expected ${expectedText(expected)}${given ? `, got ${givenText(given)}` : ''}${hint ? `: ${hintText(hint)}` : ''}`;

function written(name: string, fact: WrittenProblem['fact']): string {
  switch (fact.code) {
    case 'programme-not-known':
      return `${name}: the kind of programme "${fact.programme}" is not known here; speech is assumed.`;
    case 'field-left-out':
      return fact.refusal
        ? `${name}: its ${fact.field} is left out (${refusal(fact.refusal)}).`
        : `${name}: its ${fact.field} is left out.`;
    case 'refused':
      return fact.refusal ? `${name}: ${refusal(fact.refusal)}.` : `${name}: a description cannot hold this station.`;
  }
}

function aboutRow({ about }: RowProblem): string {
  switch (about.of) {
    case 'cell':
      return cell(about.fact);
    case 'written':
      return written(about.name, about.fact);
    case 'doubt':
      return doubt(about.name, about.fact);
    case 'too-many':
      return `A description holds at most ${about.most} stations.`;
  }
}

/** What a column is called: its heading, or its number. */
export const columnName = ({ header, index }: Pick<ColumnGuess, 'header' | 'index'>): string =>
  header || `column ${index + 1}`;

const leftOut = (row: number, column: string | undefined): string =>
  column === undefined ? `Row ${row} is left out` : `Row ${row}, ${column}, is left out`;
const here = (row: number, column: string | undefined): string =>
  column === undefined ? `Row ${row}` : `Row ${row}, ${column}`;

/** "Row 3 is left out: …". */
export function rowProblem(problem: RowProblem): string {
  const { row, column, isLeftOut, more } = problem;
  const where = (isLeftOut ? leftOut : here)(row, column && columnName(column));
  const sentence = `${where}: ${aboutRow(problem)}`;
  return more > 0 ? `${sentence} And ${more} more of the same kind.` : sentence;
}

/** Why a text is not read as a table at all. */
export const tableTooLarge = ({ code, most }: TableTooLarge): string =>
  code === 'too-many-rows'
    ? `expected at most ${most} rows, got more`
    : `expected at most ${most / 1e6} million characters, got more`;
