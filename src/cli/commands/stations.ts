import {
  arrivalMemory,
  arrivalOptions,
  arrivals,
  checkStations,
  joinStations,
  type Path,
  rangedArrivals,
  readStationTable,
  receiveOnBestBands,
  receiveRanged,
  type SetDescription,
  type StationDoubt,
  stationsToTable,
  sunState,
  type TableReading,
  TableTooLargeError,
  valueAtPath,
  withValueAt,
  writeText,
} from '../../engine/index.ts';
import { clean, placeTable, type StationRow, stationRows, warningsTogether } from '../../outputs/tables/index.ts';
import {
  type CommandOptions,
  columnName,
  jsonText,
  outOfRangeWords,
  rowProblem,
  stationDoubt,
  stationsAnswer,
  tableTooLarge,
  verdictWords,
} from '../../outputs/words/index.ts';
import { fileAndOptions } from '../arguments.ts';
import { packagedCoastFor } from '../coast.ts';
import { type Command, InputError, type Io } from '../command.ts';
import { dataOut } from '../data-out.ts';
import { readSet } from '../read-set.ts';
import { timeOfDay } from '../time-of-day.ts';
import { wrongOption } from '../wrong-option.ts';

const OPTIONS = {
  day: { type: 'boolean' },
  night: { type: 'boolean' },
  time: { type: 'string' },
  json: { type: 'boolean' },
  csv: { type: 'boolean' },
  import: { type: 'string' },
  out: { type: 'string' },
  switch: { type: 'string' },
} as const satisfies CommandOptions<'stations'>;

export const stations: Command = {
  name: 'stations',
  options: OPTIONS,
  examples: [
    'faintwave stations examples/coast-by-night.json --day',
    'faintwave stations examples/coast-by-night.json --csv > list.csv',
    'faintwave stations --import list.csv',
  ],
  async run(args, io) {
    const { values, file } = fileAndOptions(args, OPTIONS);
    if (values.import !== undefined) return importTable(values.import, file, values.out, io);
    const set = await readSet(file, io, values.switch, { isOnAnyBand: true });
    if (values.csv) {
      // A gain of 0 dB is the default, not something anybody wrote.
      const list = set.place.stations.map((s) => ({ ...s, mastGain: s.mastGain || undefined }));
      await dataOut(io, values.out, stationsToTable(list));
      return 0;
    }
    const time = values.time === undefined ? timeOfDay(values, set.place) : momentOf(values.time);
    const rows = rowsAt(set, time, values.switch === undefined);
    const doubts = checkStations(set.place.stations, { site: set.place.position });
    if (values.json || values.out !== undefined) {
      // JSON has no −∞: a level of nothing becomes null.
      await dataOut(
        io,
        values.out,
        `${jsonText({ place: set.place.name, time, stations: rows.map(writtenRow), doubts: doubts.map(writtenDoubt) })}\n`,
      );
      return 0;
    }
    io.out(`${stationsAnswer.title(clean(set.place.name), clean(set.name), timeWords(set, time))}\n\n`);
    if (rows.length === 0) {
      io.out(`${stationsAnswer.none}\n`);
      return 0;
    }
    io.out(`${placeTable(rows, io.width)}\n\n${firstWords(rows)}\n`);
    for (const warning of warningsTogether(rows)) io.out(`⚠ ${clean(warning)}\n`);
    for (const doubt of doubts) io.out(`? ${clean(stationDoubt(doubt))}\n`);
    return 0;
  },
};

/** @param isOnAnyBand every station on the band that it is received best on, not all on the one that the switch is on */
function rowsAt(set: SetDescription, time: 'day' | 'night' | Date, isOnAnyBand: boolean): StationRow[] {
  const { place } = set;
  const options = { coast: packagedCoastFor(place), memory: arrivalMemory() };
  const at = (when: 'day' | 'night' | Date) =>
    arrivals(place, place.stations, arrivalOptions({ ...options, time: when }, place.sunspots));
  const day = at('day');
  const night = at('night');
  const now = time === 'day' ? day : time === 'night' ? night : at(time);
  const ranged = (of: typeof now, when: 'day' | 'night') => rangedArrivals(place, of, { ...options, time: when });
  const came = { day: ranged(day, 'day'), night: ranged(night, 'night'), now };
  const receiveAt = isOnAnyBand ? receiveOnBestBands : receiveRanged;
  return stationRows(receiveAt(set, { ...options, time }), came);
}

/** What is probably a slip, as data with its sentence. */
const writtenDoubt = (doubt: StationDoubt) => ({
  index: doubt.index,
  kind: doubt.kind,
  ...doubt.fact,
  message: stationDoubt(doubt),
});

/** A row as data, with the sentence for a station that the dial does not reach. */
const writtenRow = (row: StationRow) => ({
  ...row,
  outOfReach: row.outOfRange && outOfRangeWords(row.outOfRange),
});

function firstWords(rows: readonly StationRow[]): string {
  const first = rows.find((row) => row.first);
  return first
    ? clean(stationsAnswer.first(first.name, verdictWords[first.heard], first.disturbedBy))
    : stationsAnswer.noneHeard;
}

function momentOf(text: string): Date {
  // Without a zone it would be the clock of whoever runs it.
  const time = new Date(/T[^Z+-]*$/.test(text) ? `${text}Z` : text);
  if (!/^\d{4}-\d\d-\d\d/.test(text) || Number.isNaN(time.getTime()))
    throw wrongOption('--time', { code: 'moment' }, text);
  return time;
}

function timeWords({ place }: SetDescription, time: 'day' | 'night' | Date): string {
  if (!(time instanceof Date)) return stationsAnswer.time[time];
  const written = time.toISOString().slice(0, 16).replace('T', ' ');
  return stationsAnswer.moment(written, place.position && sunState(time, place.position).state);
}

async function importTable(
  file: string,
  setFile: string | undefined,
  out: string | undefined,
  io: Io,
): Promise<number> {
  const { columns, stations: written, problems } = readTable(await io.read(file));
  const guesses = columns.map(
    ({ index, header, field, unit }) => `  ${stationsAnswer.column(clean(columnName({ index, header })), field, unit)}`,
  );
  io.err(`${stationsAnswer.columns}\n${guesses.join('\n')}\n`);
  for (const problem of problems) io.err(`${clean(rowProblem(problem))}\n`);
  io.err(`${stationsAnswer.read(written.length)}\n`);
  if (written.length === 0) return 1;
  if (setFile === undefined) {
    await dataOut(io, out, `${JSON.stringify(written, null, 2)}\n`);
    return 0;
  }
  const list: Path = ['place', 'stations'];
  const base: unknown = JSON.parse(await readChecked(setFile, io));
  await dataOut(io, out, writeText(withValueAt(base, list, joinStations(valueAtPath(base, list), written))));
  return 0;
}

function readTable(text: string): TableReading {
  try {
    return readStationTable({ about: 'table', text });
  } catch (error) {
    if (error instanceof TableTooLargeError) throw new InputError(tableTooLarge(error.fact));
    throw error;
  }
}

/** The text of a set that reads without a problem. */
async function readChecked(file: string, io: Io): Promise<string> {
  const text = await io.read(file);
  await readSet(file, { ...io, read: async () => text });
  return text.replace(/^\uFEFF/, '');
}
