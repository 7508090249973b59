import { useEffect, useRef, useState } from 'preact/hooks';
import {
  assignColumn,
  type ColumnGuess,
  FIELD_UNITS,
  STATION_FIELDS,
  type TableReading,
} from '../../../../engine/index.ts';
import { columnName, readingWords, rowProblem, importWords as texts } from '../../../../outputs/words/index.ts';
import { LongText, type TextSource } from '../../../widgets/LongText.tsx';
import { TableScroll } from '../../../widgets/TableScroll.tsx';
import type { Joined, JoinQuestion, TableSourceQuestion } from '../../../workers/tables.ts';
import { usePlaceWorker } from './use-place-worker.ts';

interface Props {
  /** The list as written. */
  readonly list: unknown;
  readonly onClose: () => void;
  /** @param leftOut stations of the table that the list has no room for */
  readonly onTake: (stations: readonly unknown[], how: 'add' | 'replace', leftOut: number) => void;
}

const MOST_PROBLEMS = 50;
const LARGEST_MB = 5;

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
    if (typeof next !== 'string' && next.size > LARGEST_MB * 1e6) {
      setFailed(texts.tooLarge(LARGEST_MB));
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
      <h2 id="import-title">{texts.title}</h2>
      <p>{texts.about}</p>
      <LongText
        id="import-text"
        label={texts.table}
        rows={6}
        placeholder={texts.example}
        value={source}
        onChange={read}
      />
      <p>
        <label>
          {texts.file}{' '}
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
      {failed !== '' && <p class="problem">{texts.failed(failed)}</p>}
      {reading && (
        <>
          <ColumnMatching reading={reading} onChange={again} />
          {reading.problems.length > 0 && (
            <details open={reading.stations.length === 0}>
              <summary>{texts.problems(reading.problems.length)}</summary>
              <ul class="sentences">
                {reading.problems
                  .slice(0, MOST_PROBLEMS)
                  .map(rowProblem)
                  .map((problem) => (
                    <li key={problem}>{problem}</li>
                  ))}
                {reading.problems.length > MOST_PROBLEMS && (
                  <li>{texts.more(reading.problems.length - MOST_PROBLEMS)}</li>
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
          {texts.add}
        </button>
        <button type="button" disabled={count === 0} onClick={() => reading && take(reading.stations, 'replace', 0)}>
          {texts.replace}
        </button>
        <button type="button" onClick={() => dialog.current?.close()}>
          {texts.cancel}
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
        {texts.hasHeader}
      </label>
      <TableScroll label={texts.columns}>
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
      </TableScroll>
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
  const { index, field, unit } = column;
  const units = field ? FIELD_UNITS[field]?.units : undefined;
  const label = columnName(column);
  return (
    <>
      <select
        aria-label={texts.meaning(label)}
        value={field ?? ''}
        onChange={(event) => {
          const value = (event.currentTarget as HTMLSelectElement).value;
          const next = STATION_FIELDS.find((one) => one === value);
          onChange((columns) => assignColumn(columns, index, next));
        }}
      >
        <option value="">{texts.notUsed}</option>
        {STATION_FIELDS.map((one) => (
          <option key={one} value={one}>
            {texts.fields[one]}
          </option>
        ))}
      </select>
      {units && (
        <select
          aria-label={texts.unit(label)}
          value={unit ?? ''}
          onChange={(event) => {
            const value = (event.currentTarget as HTMLSelectElement).value;
            onChange((columns) => assignColumn(columns, index, field, value));
          }}
        >
          {!units.includes(unit ?? '') && <option value={unit ?? ''}>{unit || texts.plainNumber}</option>}
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
