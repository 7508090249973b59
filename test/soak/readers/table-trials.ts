import fc from 'fast-check';
import { builtSet } from '../../../src/engine/built/built-set.ts';
import { readObserved } from '../../../src/engine/faults/observed.ts';
import { HEARD, LOG_COLUMNS } from '../../../src/engine/log/entry.ts';
import { readLog } from '../../../src/engine/log/read-log.ts';
import { writeLog } from '../../../src/engine/log/write-log.ts';
import { MEASUREMENTS, type MeasurementKind } from '../../../src/engine/measure/measurements.ts';
import { readReadings } from '../../../src/engine/measure/readings.ts';
import { resultsOf } from '../../../src/engine/measure/taken-results.ts';
import { readNetwork, readTouchstone } from '../../../src/engine/parts/aerial/touchstone.ts';
import { readStationTable } from '../../../src/engine/set/station-table.ts';
import { parseQuantity, QUANTITY_KINDS, type QuantityKind } from '../../../src/engine/units/parse.ts';
import { problemSentence, rowProblem, touchstoneProblem, unfitText } from '../../../src/outputs/words/index.ts';
import { exampleSet } from '../../support/example-set.ts';
import { exampleTexts } from '../base-files.ts';
import { changedJson } from '../changed-json.ts';
import { changedText } from '../changed-text.ts';
import { NASTY_TEXTS, nastyQuantity } from '../nasty.ts';
import { mustBeSound, mustSay } from '../sound-values.ts';
import { trial } from '../trial.ts';

const GALENA = exampleSet('medium-wave-galena');
const BUILT = builtSet(GALENA);
const KINDS = Object.keys(MEASUREMENTS) as MeasurementKind[];

const cell = fc.oneof(
  { weight: 3, arbitrary: nastyQuantity },
  {
    weight: 2,
    arbitrary: fc.constantFrom('2026-10-03T20:05+01:00', '2026-10-03 20:05', '909', '909 kHz', '5 mV/m', '12°'),
  },
  { weight: 1, arbitrary: fc.constantFrom(...HEARD, ...NASTY_TEXTS) },
);
/** A table with columns of that sort, its cells as they come. */
const tableOf = (columns: readonly string[]) =>
  fc
    .record({
      heading: fc.array(fc.constantFrom(...columns), { minLength: 1, maxLength: 9 }),
      rows: fc.array(fc.array(cell, { maxLength: 10 }), { maxLength: 6 }),
      separator: fc.constantFrom(',', ';', '\t'),
      end: fc.constantFrom('\n', '\r\n', '\r'),
    })
    .map(({ heading, rows, separator, end }) => [heading, ...rows].map((row) => row.join(separator)).join(end));

const touchstoneLine = fc.oneof(
  {
    weight: 6,
    arbitrary: fc
      .array(
        fc.oneof(
          { weight: 5, arbitrary: fc.double({ min: -9, max: 9, noNaN: true }).map(String) },
          { weight: 1, arbitrary: nastyQuantity },
        ),
        { minLength: 2, maxLength: 9 },
      )
      .map((cells) => cells.join(' ')),
  },
  {
    weight: 1,
    arbitrary: fc.constantFrom(
      '[Version] 2.0',
      '[Number of Ports] 1',
      '[Number of Ports] 2',
      '[Number of Frequencies] 2',
      '[Reference] 50',
      '[Network Data]',
      '[Two-Port Data Order] 12_21',
      '[Matrix Format] Full',
      '[End]',
      '! a remark',
    ),
  },
);
/** Files that begin as files of instruments do. */
const touchstone = fc
  .tuple(
    fc.constantFrom('Hz', 'kHz', 'MHz', 'GHz', ''),
    fc.constantFrom('S', 'Z', 'Y', 'H', ''),
    fc.constantFrom('RI', 'MA', 'DB', ''),
    fc.constantFrom('R 50', 'R 0', 'R 1e308', 'R', ''),
    fc.array(touchstoneLine, { maxLength: 12 }),
    fc.boolean(),
  )
  .map(([unit, parameter, form, reference, lines, isRising]) => {
    const rows = isRising
      ? lines.map((line, k) => (/^-?[\d.]/.test(line) ? `${k + 1} ${line.split(' ').slice(1).join(' ')}` : line))
      : lines;
    return [`# ${unit} ${parameter} ${form} ${reference}`, ...rows].join('\n');
  });

const READINGS = exampleTexts('readings', '.csv');
const READING_FILES = exampleTexts('readings', '.json').map((text) => JSON.parse(text) as unknown);
const OBSERVED = exampleTexts('observed', '.json').map((text) => JSON.parse(text) as unknown);
const LOGS = exampleTexts('logs', '.csv');
const STATION_COLUMNS = [
  'name',
  'frequency',
  'kHz',
  'power',
  'kW',
  'distance',
  'latitude',
  'longitude',
  'field',
  'mV/m',
  'dBµV/m',
  '',
];

export const TABLE_TRIALS = [
  trial({
    name: 'quantities',
    group: 'readers',
    says: 'a figure with a unit reads as a finite number, or is refused',
    cases: fc.tuple(
      fc.oneof(
        nastyQuantity,
        fc.tuple(nastyQuantity, nastyQuantity).map((two) => two.join('')),
        fc.string({ maxLength: 8 }),
      ),
      fc.constantFrom(...(Object.keys(QUANTITY_KINDS) as QuantityKind[])),
    ),
    check: ([text, kind]) => mustBeSound(parseQuantity(text, kind), 'the quantity'),
    batch: 5000,
    share: 1,
    longest: 20,
  }),
  trial({
    name: 'logs',
    group: 'readers',
    says: 'what of a log is read is written and read as the same, the rest is named',
    cases: fc.oneof(changedText(fc.constantFrom(...LOGS), [...LOG_COLUMNS, ...HEARD]), tableOf(LOG_COLUMNS)),
    check: (text) => {
      const { entries, problems } = readLog(text);
      mustBeSound({ entries, problems }, 'the log');
      for (const { time } of entries) if (Number.isNaN(time.getTime())) throw new Error('a time is none');
      const again = readLog(writeLog(entries));
      const plain = (all: typeof entries) => JSON.stringify(all.map(({ row: _row, cells: _cells, ...rest }) => rest));
      if (plain(again.entries) !== plain(entries)) throw new Error('what was written reads as another log');
    },
    batch: 500,
    share: 1,
    longest: 20,
  }),
  trial({
    name: 'station tables',
    group: 'readers',
    says: 'a table of stations gives stations that a description can hold, and names the other rows',
    cases: fc.oneof(tableOf(STATION_COLUMNS), changedText(tableOf(STATION_COLUMNS), [',', ';', '\t'])),
    check: (text) => {
      const reading = readStationTable({ about: 'table', text });
      mustBeSound(reading, 'the table');
      mustSay(['read', ...reading.problems.map(rowProblem)], text);
    },
    batch: 500,
    share: 1,
    longest: 20,
  }),
  trial({
    name: 'Touchstone files',
    group: 'readers',
    says: 'a file of an analyser gives finite impedances, or the line that is wrong',
    cases: fc.oneof(touchstone, changedText(touchstone, ['#', '!', '[', ']', 'S', 'RI', 'GHz', '1e308'])),
    check: (text) => {
      for (const read of [readTouchstone(text), readNetwork(text)])
        if (read.ok) mustBeSound(read, 'the file');
        else mustSay(read.problems.map(touchstoneProblem), text);
    },
    batch: 1000,
    share: 1,
    longest: 20,
  }),
  trial({
    name: 'tables of readings',
    group: 'readers',
    says: 'readings give figures with errors, or what is wrong with them',
    cases: fc.tuple(
      fc.oneof(
        changedText(fc.constantFrom(...READINGS), ['# kind: dial', '# kind: resonance', 'frequency', 'kHz']),
        changedJson(fc.constantFrom(...READING_FILES)).map((value) => JSON.stringify(value) ?? ''),
      ),
      fc.constantFrom<MeasurementKind | 'value' | null>(...KINDS, 'value', null),
    ),
    check: ([text, kind]) => {
      const read = readReadings(text, kind ?? undefined, GALENA);
      if (!read.ok) {
        mustSay(
          read.problems.map((one) => ('unfit' in one ? unfitText(one.unfit) : problemSentence(one))),
          text,
        );
        return;
      }
      const { results } = resultsOf(GALENA, read.measurements);
      mustBeSound(
        results.map(({ figures }) => figures.map(({ measured }) => measured.value)),
        'a figure',
      );
    },
    batch: 100,
    share: 2,
    longest: 20,
  }),
  trial({
    name: 'observations',
    group: 'readers',
    says: 'what was observed of a set that fails reads, or every problem is said with its place',
    cases: changedJson(fc.constantFrom(...OBSERVED)).map((value) => JSON.stringify(value) ?? ''),
    check: (text) => {
      const read = readObserved(text, BUILT);
      if (read.ok) mustBeSound(read.observations, 'an observation');
      else mustSay(read.problems.map(problemSentence), text);
    },
    batch: 500,
    share: 1,
    longest: 20,
  }),
];
