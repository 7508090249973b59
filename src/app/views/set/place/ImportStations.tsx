import { useEffect, useRef, useState } from 'preact/hooks';
import {
  assignColumn,
  type ColumnGuess,
  FIELD_UNITS,
  STATION_FIELDS,
  type StationField,
  type TableReading,
} from '../../../../engine/index.ts';
import { columnName, readingWords, rowProblem } from '../../../../outputs/words/index.ts';
import { LongText, type TextSource } from '../../../widgets/LongText.tsx';
import type { Joined, JoinQuestion, TableSourceQuestion } from '../../../workers/tables.ts';
import { usePlaceWorker } from './use-worker.ts';

interface Props {
  /** The list as written. */
  readonly list: unknown;
  readonly onClose: () => void;
  /** @param leftOut stations of the table that the list has no room for */
  readonly onTake: (stations: readonly unknown[], how: 'add' | 'replace', leftOut: number) => void;
}

const FIELD_NAMES: Readonly<Record<StationField, string>> = {
  name: 'Name',
  frequency: 'Frequency',
  power: 'Power',
  latitude: 'Latitude',
  longitude: 'Longitude',
  position: 'Latitude and longitude',
  distance: 'Distance',
  bearing: 'Bearing',
  mastHeight: 'Mast height',
  mastGain: 'Mast gain',
  fieldStrength: 'Field strength',
  modulation: 'Modulation',
  programme: 'Programme',
  hours: 'Hours',
};
const MOST_PROBLEMS = 50;
const LARGEST = 5_000_000;

/** Stations out of a table: paste or choose a file, say what each column is, look at what comes of it, take it. */
export function ImportStations({ list, onClose, onTake }: Props) {
  const dialog = useRef<HTMLDialogElement>(null);
  const [source, setSource] = useState<TextSource>('');
  const [reading, setReading] = useState<TableReading | undefined>();
  const [isReading, setIsReading] = useState(false);
  const [failed, setFailed] = useState('');
  useEffect(() => dialog.current?.showModal(), []);
  // What was cleared or replaced while it was read is not shown any more.
  const wanted = useRef<TextSource>('');
  const askTable = usePlaceWorker<TableSourceQuestion, TableReading>('table', (question, reply) => {
    if (question.source !== wanted.current) return;
    setIsReading(false);
    setReading('answer' in reply ? reply.answer : undefined);
    setFailed('error' in reply ? reply.error : '');
  });
  const take = (stations: readonly unknown[], how: 'add' | 'replace', leftOut: number) => {
    onTake(stations, how, leftOut);
    dialog.current?.close();
  };
  const askJoin = usePlaceWorker<JoinQuestion, Joined>('join', (_question, reply) => {
    setIsReading(false);
    if ('answer' in reply) take(reply.answer.stations, 'add', reply.answer.leftOut);
    else setFailed(reply.error);
  });
  const ask = (question: TableSourceQuestion) => {
    setIsReading(true);
    askTable(question);
  };
  const read = (next: TextSource) => {
    setSource(next);
    wanted.current = next;
    setFailed('');
    if (typeof next !== 'string' && next.size > LARGEST) {
      setFailed('The file is larger than 5 MB; no list of stations is.');
      setReading(undefined);
      setIsReading(false);
    } else if (typeof next === 'string' && next.trim() === '') {
      setReading(undefined);
      setIsReading(false);
    } else ask({ about: 'table', source: next });
  };
  const again = (columns: readonly ColumnGuess[], hasHeader: boolean) =>
    reading && ask({ about: 'table', source, delimiter: reading.delimiter, columns, hasHeader });
  const count = isReading ? 0 : (reading?.stations.length ?? 0);
  return (
    <dialog ref={dialog} class="dialog import-stations" aria-labelledby="import-title" onClose={onClose}>
      <h2 id="import-title">Stations from a table</h2>
      <p>
        Paste rows copied from a spreadsheet or a page, or choose a file of comma-, semicolon- or tab-separated text.
        Nothing is sent anywhere.
      </p>
      <LongText
        id="import-text"
        label="Table"
        rows={6}
        placeholder={'Station, kHz, kW, lat, long\nHeron Radio, 612, 10, 53.1 N, 2.2 W'}
        value={source}
        onChange={read}
      />
      <p>
        <label>
          Or a file{' '}
          <input
            type="file"
            accept=".csv,.tsv,.txt,text/csv,text/plain"
            onChange={(event) => {
              const file = (event.currentTarget as HTMLInputElement).files?.[0];
              // The same file may be chosen again after it was cleared.
              event.currentTarget.value = '';
              if (file) read(file);
            }}
          />
        </label>
      </p>
      {failed !== '' && <p class="problem">This cannot be read: {failed}</p>}
      {reading && (
        <>
          <ColumnMatching reading={reading} onChange={again} />
          {reading.problems.length > 0 && (
            <details open={reading.stations.length === 0}>
              <summary>
                {reading.problems.length === 1 ? 'One thing' : `${reading.problems.length} things`} to look at
              </summary>
              <ul class="sentences">
                {reading.problems
                  .slice(0, MOST_PROBLEMS)
                  .map(rowProblem)
                  .map((problem) => (
                    <li key={problem}>{problem}</li>
                  ))}
                {reading.problems.length > MOST_PROBLEMS && (
                  <li>and {reading.problems.length - MOST_PROBLEMS} more.</li>
                )}
              </ul>
            </details>
          )}
          {!isReading && <p role="status">{readingWords.stationsRead(count, reading.leftOut)}</p>}
        </>
      )}
      {isReading && (
        <p role="status">
          {readingWords.readingTable} <progress aria-label={readingWords.readingTable} />
        </p>
      )}
      <div class="buttons">
        <button
          type="button"
          class="primary"
          disabled={count === 0}
          onClick={() => {
            if (!reading) return;
            setIsReading(true);
            askJoin({ about: 'join', list, added: reading.stations });
          }}
        >
          Add to the list
        </button>
        <button type="button" disabled={count === 0} onClick={() => reading && take(reading.stations, 'replace', 0)}>
          Put in place of the list
        </button>
        <button type="button" onClick={() => dialog.current?.close()}>
          Cancel
        </button>
      </div>
    </dialog>
  );
}

function ColumnMatching({
  reading,
  onChange,
}: {
  reading: TableReading;
  onChange: (columns: readonly ColumnGuess[], hasHeader: boolean) => void;
}) {
  const { columns, hasHeader, preview } = reading;
  const body = hasHeader ? preview.slice(1) : preview;
  return (
    <>
      <label class="check">
        <input
          type="checkbox"
          checked={hasHeader}
          onChange={(event) => onChange(columns, (event.currentTarget as HTMLInputElement).checked)}
        />{' '}
        The first row is a heading
      </label>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a wide table must scroll from the keyboard */}
      <section class="table-scroll" tabIndex={0} aria-label="Columns">
        <table>
          <thead>
            <tr>
              {columns.map((column) => (
                <th key={column.index} scope="col">
                  {columnName(column)}
                </th>
              ))}
            </tr>
            <tr>
              {columns.map((column) => (
                <td key={column.index}>
                  <ColumnChoice column={column} onChange={(next) => onChange(next(columns), hasHeader)} />
                </td>
              ))}
            </tr>
          </thead>
          <tbody>
            {body.map((row, n) => (
              <tr key={n}>
                {columns.map((column) => (
                  <td key={column.index} class={column.field ? undefined : 'quiet'}>
                    {(row[column.index] ?? '').slice(0, 60)}
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </section>
    </>
  );
}

function ColumnChoice({
  column,
  onChange,
}: {
  column: ColumnGuess;
  onChange: (next: (columns: readonly ColumnGuess[]) => ColumnGuess[]) => void;
}) {
  const { index, header, field, unit } = column;
  const units = field ? FIELD_UNITS[field]?.units : undefined;
  const label = header || `column ${index + 1}`;
  return (
    <>
      <select
        aria-label={`What ${label} holds`}
        value={field ?? ''}
        onChange={(event) => {
          const value = (event.currentTarget as HTMLSelectElement).value;
          const next = STATION_FIELDS.find((one) => one === value);
          onChange((columns) => assignColumn(columns, index, next));
        }}
      >
        <option value="">not used</option>
        {STATION_FIELDS.map((one) => (
          <option key={one} value={one}>
            {FIELD_NAMES[one]}
          </option>
        ))}
      </select>
      {units && (
        <select
          aria-label={`Unit of ${label}`}
          value={unit ?? ''}
          onChange={(event) => {
            const value = (event.currentTarget as HTMLSelectElement).value;
            onChange((columns) => assignColumn(columns, index, field, value));
          }}
        >
          {!units.includes(unit ?? '') && <option value={unit ?? ''}>{unit || 'plain number'}</option>}
          {units.map((one) => (
            <option key={one} value={one}>
              {one}
            </option>
          ))}
        </select>
      )}
    </>
  );
}
