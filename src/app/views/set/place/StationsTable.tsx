import { useMemo, useState } from 'preact/hooks';
import { formatQuantity, isRecord } from '../../../../engine/index.ts';
import type { StationRow } from '../../../../outputs/tables/index.ts';
import {
  bearingText,
  estimateText,
  neighbourText,
  propagationText,
  stationFrequency,
  stationTableWords as texts,
  verdictWords,
} from '../../../../outputs/words/index.ts';
import { TableScroll } from '../../../widgets/TableScroll.tsx';
import { barsOf, HeardBars } from '../Heard.tsx';

interface Props {
  /** As written, some perhaps not right yet. */
  readonly stations: readonly unknown[];
  /** Which of them read well. */
  readonly isRight: (index: number) => boolean;
  /** Which of them the figures leave out. */
  readonly isLeftOut: (index: number) => boolean;
  /** Best first. */
  readonly rows: readonly StationRow[];
  readonly chosen?: number;
  readonly onChoose: (index: number) => void;
}

type SortKey = 'best' | 'name' | 'frequency' | 'distance' | 'bearing' | 'day' | 'night';

/** More rows than these are shown when asked for. */
const FIRST_ROWS = 40;

export const writtenStationName = (station: unknown): string =>
  String((isRecord(station) && typeof station.name === 'string' && station.name) || texts.noName);

/** What can be received here; every heading sorts. */
export function StationsTable({ stations, isRight, isLeftOut, rows, chosen, onChoose }: Props) {
  const [sort, setSort] = useState<{ key: SortKey; down: boolean }>({ key: 'best', down: false });
  const [all, setAll] = useState(false);
  const [isWide, setWide] = useState(false);
  const order = useMemo(() => {
    const best = rows.filter((row) => row.index < stations.length);
    const known = new Map(best.map((row) => [row.index, row]));
    const sorted = sort.key === 'best' ? best : best.toSorted((a, b) => compare(a, b, sort.key));
    const indices = (sort.down ? sorted.toReversed() : sorted).map((row) => row.index);
    const unknown = stations.map((_, i) => i).filter((i) => !known.has(i));
    return { indices: [...indices, ...unknown], known };
  }, [rows, stations, sort]);
  const shown = all ? order.indices : order.indices.slice(0, FIRST_ROWS);
  const by = (key: SortKey) => setSort((now) => ({ key, down: now.key === key && !now.down }));
  const heading = (key: SortKey, number = true) => (
    <th
      scope="col"
      class={number ? 'number' : undefined}
      aria-sort={sort.key === key ? (sort.down ? 'descending' : 'ascending') : undefined}
    >
      <button type="button" class="sort" onClick={() => by(key)}>
        {texts.columns[key]}
        <span aria-hidden="true">{sort.key === key ? (sort.down ? ' ▾' : ' ▴') : ''}</span>
      </button>
    </th>
  );
  return (
    <>
      <TableScroll label={texts.label}>
        <table class="stations-table place-table">
          <thead>
            <tr>
              {heading('name', false)}
              {heading('frequency')}
              {heading('best', false)}
              {heading('distance')}
              {heading('bearing', false)}
              {heading('day')}
              {heading('night')}
              {isWide && (
                <>
                  <th scope="col">{texts.columns.arrival}</th>
                  <th scope="col">{texts.columns.interference}</th>
                  <th scope="col">{texts.columns.neighbours}</th>
                </>
              )}
            </tr>
          </thead>
          <tbody>
            {shown.map((i) => (
              <Row
                key={i}
                name={writtenStationName(stations[i])}
                isRight={isRight(i)}
                row={isLeftOut(i) ? undefined : order.known.get(i)}
                isChosen={i === chosen}
                isWide={isWide}
                onChoose={() => onChoose(i)}
              />
            ))}
          </tbody>
        </table>
      </TableScroll>
      <button type="button" class="chip" aria-pressed={isWide} onClick={() => setWide(!isWide)}>
        {texts.moreColumns}
      </button>{' '}
      {shown.length < order.indices.length && (
        <button type="button" class="chip" onClick={() => setAll(true)}>
          {texts.showAll(order.indices.length)}
        </button>
      )}
    </>
  );
}

function Row({
  name,
  isRight,
  row,
  isChosen,
  isWide,
  onChoose,
}: {
  name: string;
  isRight: boolean;
  row?: StationRow;
  isChosen: boolean;
  isWide: boolean;
  onChoose: () => void;
}) {
  return (
    <tr class={isChosen ? 'is-chosen' : undefined}>
      <th scope="row">
        <button type="button" class="link" aria-current={isChosen ? 'true' : undefined} onClick={onChoose}>
          {name}
        </button>
        {row?.first && <span class="first-choice">{texts.firstChoice}</span>}
        {!isRight && <span class="problem">{texts.notValid}</span>}
      </th>
      {row ? (
        <>
          <td class="number">{stationFrequency(row.frequency)}</td>
          <td class="heard">
            <HeardBars verdict={row.heard} /> {verdictWords[row.heard]}
          </td>
          <td class="number">{row.distance === undefined ? '' : formatQuantity(row.distance, 'length', 3)}</td>
          <td>{bearingText(row.bearing)}</td>
          <td class="number">{estimateText(row.day)}</td>
          <td class="number">{estimateText(row.night)}</td>
          {isWide && (
            <>
              <td>{propagationText(row)}</td>
              <td>{row.disturbedBy ?? ''}</td>
              <td>{row.neighbours.slice(0, 2).map(neighbourText).join('; ')}</td>
            </>
          )}
        </>
      ) : (
        <td colSpan={isWide ? 9 : 6} />
      )}
    </tr>
  );
}

function compare(a: StationRow, b: StationRow, key: SortKey): number {
  switch (key) {
    case 'name':
      return a.name.localeCompare(b.name);
    case 'frequency':
      return a.frequency - b.frequency;
    case 'distance':
      return (a.distance ?? Number.POSITIVE_INFINITY) - (b.distance ?? Number.POSITIVE_INFINITY) || 0;
    case 'bearing':
      return (a.bearing ?? 400) - (b.bearing ?? 400);
    // The strongest first.
    case 'day':
      return b.day.fieldStrength - a.day.fieldStrength;
    case 'night':
      return b.night.fieldStrength - a.night.fieldStrength;
    case 'best':
      return barsOf(b.heard) - barsOf(a.heard);
  }
}
