import {
  arrivalMemory,
  arrivalOptions,
  arrivals,
  checkStations,
  joinStations,
  type Path,
  readStationTable,
  receive,
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
  columnName,
  jsonText,
  outOfRangeWords,
  rowProblem,
  stationDoubt,
  tableTooLarge,
  verdictWords,
} from '../../outputs/words/index.ts';
import { fileAndOptions } from '../arguments.ts';
import { coastFor } from '../coast.ts';
import { type Command, InputError, type Io } from '../command.ts';
import { dataOut, OUT_OPTION } from '../data-out.ts';
import { readSet } from '../read-set.ts';
import { timeHelp, timeOfDay } from '../time-of-day.ts';
import { wrongOption } from '../wrong-option.ts';

export const stations: Command = {
  name: 'stations',
  about: 'What can be had at the place of a set, by day and by night, best for this set first.',
  usage:
    'stations SET [--day | --night | --time WHEN] [--json | --csv] [--out FILE]\n       faintwave stations [SET] --import TABLE [--out FILE]',
  options: [
    ...timeHelp('what the set makes of them after dark'),
    ['--time WHEN', 'at a moment, such as 2026-01-15T21:00Z: sun at the middle of each path, hours on the air'],
    ['--json', 'as data'],
    OUT_OPTION,
    ['--csv', 'the list of stations as a comma-separated table'],
    ['--import TABLE', 'read stations from a table of text; with a SET, print it with them joined to its own'],
  ],
  examples: [
    'faintwave stations examples/coast-by-night.json --day',
    'faintwave stations examples/coast-by-night.json --csv > list.csv',
    'faintwave stations --import list.csv',
  ],
  async run(args, io) {
    const { values, file } = fileAndOptions(args, {
      day: { type: 'boolean' },
      night: { type: 'boolean' },
      time: { type: 'string' },
      json: { type: 'boolean' },
      csv: { type: 'boolean' },
      import: { type: 'string' },
      out: { type: 'string' },
    });
    if (values.import !== undefined) return importTable(values.import, file, values.out, io);
    const set = await readSet(file, io);
    if (values.csv) {
      // A gain of 0 dB is the default, not something anybody wrote.
      const list = set.place.stations.map((s) => ({ ...s, mastGain: s.mastGain || undefined }));
      await dataOut(io, values.out, stationsToTable(list));
      return 0;
    }
    const time = values.time === undefined ? timeOfDay(values, set.place) : momentOf(values.time);
    const rows = rowsAt(set, time);
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
    io.out(`What can be had at ${clean(set.place.name)} with ${clean(set.name)}, ${timeWords(set, time)}\n\n`);
    if (rows.length === 0) {
      io.out('No stations are listed yet.\n');
      return 0;
    }
    io.out(`${placeTable(rows, io.width)}\n\n${firstWords(rows)}\n`);
    for (const warning of warningsTogether(rows)) io.out(`⚠ ${clean(warning)}\n`);
    for (const doubt of doubts) io.out(`? ${clean(stationDoubt(doubt))}\n`);
    return 0;
  },
};

function rowsAt(set: SetDescription, time: 'day' | 'night' | Date): StationRow[] {
  const { place } = set;
  const options = { coast: coastFor(place), memory: arrivalMemory() };
  const at = (when: 'day' | 'night' | Date) =>
    arrivals(place, place.stations, arrivalOptions({ ...options, time: when }, place.sunspots));
  const day = at('day');
  const night = at('night');
  const now = time === 'day' ? day : time === 'night' ? night : at(time);
  return stationRows(receive(set, { ...options, time }), { day, night, now });
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
    ? `► Try ${clean(first.name)} first: ${verdictWords[first.heard]}${first.disturbedBy ? `, with ${clean(first.disturbedBy)}` : ' and by itself'}.`
    : 'This set hears none of them.';
}

function momentOf(text: string): Date {
  // Without a zone it would be the clock of whoever runs it.
  const time = new Date(/T[^Z+-]*$/.test(text) ? `${text}Z` : text);
  if (!/^\d{4}-\d\d-\d\d/.test(text) || Number.isNaN(time.getTime()))
    throw wrongOption('--time', 'a time such as 2026-01-15T21:00Z', text);
  return time;
}

function timeWords({ place }: SetDescription, time: 'day' | 'night' | Date): string {
  if (!(time instanceof Date)) return `by ${time}`;
  const written = `${time.toISOString().slice(0, 16).replace('T', ' ')} UTC`;
  return place.position ? `${written} (${sunState(time, place.position).state})` : written;
}

async function importTable(
  file: string,
  setFile: string | undefined,
  out: string | undefined,
  io: Io,
): Promise<number> {
  const { columns, stations: written, problems } = readTable(await io.read(file));
  const taken = columns.map(
    ({ index, header, field, unit }) =>
      `  ${clean(columnName({ index, header }))}: ${field ? `${field}${unit ? `, ${unit}` : ''}` : 'not used'}`,
  );
  io.err(`columns taken as\n${taken.join('\n')}\n`);
  for (const problem of problems) io.err(`${clean(rowProblem(problem))}\n`);
  io.err(`${written.length} ${written.length === 1 ? 'station' : 'stations'} read\n`);
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
