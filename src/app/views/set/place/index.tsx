import type { ComponentChildren } from 'preact';
import { useEffect, useMemo, useRef, useState } from 'preact/hooks';
import {
  isRecord,
  MOST_STATIONS,
  type Path,
  type Reception,
  readStations,
  type SetDescription,
  stationsToTable,
  valueAtPath,
  withValueAt,
  writeStation,
} from '../../../../engine/index.ts';
import { stationRows } from '../../../../outputs/tables/index.ts';
import { readingWords, stationDoubt, fieldBenchWords as texts } from '../../../../outputs/words/index.ts';
import { addItem, removeItem } from '../../../description/lists.ts';
import type { When } from '../../../description/when.ts';
import { tell } from '../../../state/notices.ts';
import type { PlaceFigures } from '../../../workers/figures.ts';
import { ImportStations } from './ImportStations.tsx';
import { PathProfile } from './PathProfile.tsx';
import { StationsMap } from './StationsMap.tsx';
import { StationsTable, writtenStationName } from './StationsTable.tsx';
import { TimeOfDay } from './TimeOfDay.tsx';
import { TODAY, usePlaceFigures } from './use-place-figures.ts';
import './place.css';

export type { When } from '../../../description/when.ts';

interface Props {
  /** The description as it stands, problems and all. */
  readonly written: unknown;
  /** The last valid set, and what it receives. */
  readonly set: SetDescription;
  readonly reception: Reception;
  /** Places in the list that the figures leave out. */
  readonly leftOut: ReadonlySet<number>;
  /** The chosen station's place in the list. */
  readonly chosen?: number;
  readonly onChoose: (index: number | undefined) => void;
  /** The whole description changed. @param label what was done, for undo. */
  readonly onChange: (written: unknown, label: string) => void;
  /** Day or night or a moment; left out, the table keeps its own. */
  readonly time?: When;
  readonly onTime?: (time: When) => void;
  /** Offers a text as a file. */
  readonly onSave: (text: string, name: string, type: string) => void;
  /** Editor of the chosen station. */
  readonly editor?: ComponentChildren;
}

const STATIONS: Path = ['place', 'stations'];

/** What can be received here, by day and by night: map, table, time, the path of one station, lists in and out. */
export function FieldPlace(props: Props) {
  const { written, set, reception, chosen, onChoose, onChange, onSave, editor } = props;
  const [ownTime, setOwnTime] = useState<When>('day');
  const when = props.time ?? ownTime;
  const setWhen = props.onTime ?? setOwnTime;
  const [importing, setImporting] = useState(false);
  const list = valueAtPath(written, STATIONS);
  const stations: readonly unknown[] = Array.isArray(list) ? list : [];
  const read = useMemo(() => readStations(list), [list]);
  const { leftOut } = props;
  const figures = usePlaceFigures(set, when, chosen);
  // Figures and reception come from two workers: rows are made only while both are of the same list.
  const rows = useCalm(
    useMemo(
      () => (figures && figures.now.length === reception.stations.length ? stationRows(reception, figures) : []),
      [figures, reception],
    ),
  );
  const table = useMemo(
    () => (
      <StationsTable
        stations={stations}
        isRight={(i) => read[i] !== undefined}
        isLeftOut={(i) => leftOut.has(i)}
        rows={rows}
        chosen={chosen}
        onChoose={onChoose}
      />
    ),
    [list, read, leftOut, rows, chosen, onChoose],
  );
  const { position, name } = set.place;
  const arrival = chosen === undefined ? undefined : figures?.now[chosen];
  const add = () => {
    onChange(addItem(written, STATIONS), texts.addStationLabel);
    onChoose(stations.length);
    requestAnimationFrame(() => {
      const name = document.getElementById(`f-place.stations[${stations.length}].name`) as HTMLInputElement | null;
      name?.focus();
      // What it begins with is there to be typed over.
      name?.select();
    });
  };
  const remove = (index: number) => {
    onChange(removeItem(written, STATIONS, index), texts.removeStationLabel);
    onChoose(undefined);
  };
  const ownSections = (own: boolean) => {
    if (chosen === undefined || !arrival) return;
    const made = writeStation({ name: '', frequency: 1e6, sections: arrival.sections }).written;
    onChange(
      withValueAt(written, [...STATIONS, chosen, 'sections'], own ? made.sections : undefined),
      own ? texts.ownSectionsLabel : texts.mapSectionsLabel,
    );
  };
  const save = () => {
    const known = read.flatMap((s) => (s ? [{ ...s, mastGain: s.mastGain || undefined }] : []));
    onSave(stationsToTable(known), 'stations.csv', 'text/csv');
  };
  return (
    <>
      <section class="card" aria-labelledby="map-title">
        <h3 id="map-title">{texts.map}</h3>
        <TimeOfDay
          when={when}
          date={TODAY}
          sunHere={figures?.sunHere}
          sunBetween={figures?.sunBetween}
          stationName={arrival?.station.name}
          onWhen={setWhen}
        />
        {position && figures ? (
          <StationsMap
            centre={position}
            siteName={name}
            arrivals={figures.now}
            rows={rows}
            when={when}
            chosen={chosen}
            onChoose={onChoose}
          />
        ) : (
          !position && <p class="quiet">{texts.noMap}</p>
        )}
      </section>
      <section class="card" aria-labelledby="stations-table-title">
        <h3 id="stations-table-title">{texts.stations}</h3>
        {stations.length === 0 && <p class="quiet">{texts.noStations}</p>}
        {stations.length > 0 && table}
        <div class="buttons place-buttons">
          <button type="button" class="chip" onClick={add}>
            {texts.addStation}
          </button>
          <button type="button" class="chip" onClick={() => setImporting(true)}>
            {texts.importTable}
          </button>
          <button type="button" class="chip" disabled={!read.some(Boolean)} onClick={save}>
            {texts.saveTable}
          </button>
        </div>
        {figures && <StationDoubts doubts={figures.doubts} onChoose={onChoose} />}
        {chosen !== undefined && chosen < stations.length && editor && (
          <fieldset class="nested">
            <legend>
              {writtenStationName(stations[chosen])}
              <button type="button" class="chip" onClick={() => remove(chosen)}>
                {texts.remove}
              </button>
            </legend>
            {editor}
          </fieldset>
        )}
      </section>
      {arrival && (
        <PathProfile
          arrival={arrival}
          profile={figures?.profile}
          hasOwnSections={isRecord(stations[arrival.index]) && 'sections' in (stations[arrival.index] as object)}
          onOwnSections={ownSections}
        />
      )}
      {importing && (
        <ImportStations
          list={list}
          onClose={() => setImporting(false)}
          onTake={(taken, how, leftOut) => {
            onChange(
              withValueAt(written, STATIONS, taken),
              how === 'add' ? texts.addStationsLabel : texts.replaceStationsLabel,
            );
            if (leftOut > 0)
              tell(readingWords.listIsFull(MOST_STATIONS, leftOut), { key: 'list-is-full', stays: true });
            if (how === 'replace') onChoose(undefined);
          }}
        />
      )}
    </>
  );
}

/** What does not agree in the list; each leads to its station. */
function StationDoubts({
  doubts,
  onChoose,
}: {
  readonly doubts: PlaceFigures['doubts'];
  readonly onChoose: (index: number) => void;
}) {
  if (doubts.length === 0) return null;
  return (
    <details class="doubts" open={doubts.length < 4}>
      <summary>{texts.checks(doubts.length)}</summary>
      <ul class="sentences">
        {doubts.slice(0, 100).map((doubt) => (
          <li key={`${doubt.index} ${doubt.kind}`}>
            <button type="button" class="link" onClick={() => onChoose(doubt.index)}>
              {stationDoubt(doubt)}
            </button>
          </li>
        ))}
      </ul>
    </details>
  );
}

/** Milliseconds between two states of the table while a slider moves: more would only flicker. */
const CALM_MS = 120;

/** A value that changes no oftener than the eye follows; an empty list is filled at once. */
function useCalm<T extends readonly unknown[]>(value: T): T {
  const [shown, setShown] = useState(value);
  const latest = useRef(value);
  latest.current = value;
  const timer = useRef<ReturnType<typeof setTimeout> | undefined>(undefined);
  useEffect(() => {
    timer.current ??= setTimeout(
      () => {
        timer.current = undefined;
        setShown(latest.current);
      },
      shown.length === 0 ? 0 : CALM_MS,
    );
  }, [value]);
  useEffect(() => () => clearTimeout(timer.current), []);
  return shown;
}
