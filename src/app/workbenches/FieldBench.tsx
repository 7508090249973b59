import { isRecord } from '../../engine/set/introspect.ts';
import { type Path, valueAtPath } from '../../engine/set/write.ts';
import { formatQuantity } from '../../engine/units/format.ts';
import { kilohertz } from '../components/figure.ts';
import { HeardBars } from '../components/Heard.tsx';
import { addItem, removeItem } from '../editing/lists.ts';
import { PartEditor } from '../editors/PartEditor.tsx';
import { change, written } from '../state/document.ts';
import { chosen, helpOf, reception } from '../state/reception.ts';
import { problems } from '../state/understanding.ts';
import { chooseStation, stationIndex } from '../state/view.ts';

const STATIONS: Path = ['place', 'stations'];

/** The station whose fields are open: the one chosen, even while the figures are behind. */
const openIndex = (count: number): number | undefined => {
  const index = stationIndex.value ?? chosen.value?.index;
  return index === undefined ? undefined : Math.min(index, count - 1);
};

export function FieldBench() {
  const list = valueAtPath(written.value, STATIONS);
  const stations = Array.isArray(list) ? list : [];
  const open = openIndex(stations.length);
  const add = () => {
    change((base) => addItem(base, STATIONS), { label: 'add a station' });
    chooseStation(stations.length);
    requestAnimationFrame(() => document.getElementById(`f-place.stations[${stations.length}].name`)?.focus());
  };
  const remove = (index: number) => {
    change((base) => removeItem(base, STATIONS, index), { label: 'remove a station' });
    chooseStation(undefined);
  };
  return (
    <>
      <section class="card" aria-labelledby="stations-table-title">
        <h3 id="stations-table-title">What is on the air</h3>
        <div class="table-scroll">
          <StationsTable stations={stations} open={open} />
        </div>
        <button type="button" class="chip" onClick={add}>
          Add a station
        </button>
        {open !== undefined && open >= 0 && (
          <fieldset class="nested">
            <legend>
              {nameOf(stations[open])}
              <button type="button" class="chip" onClick={() => remove(open)}>
                Remove
              </button>
            </legend>
            <PartEditor key={open} path={[...STATIONS, open]} />
          </fieldset>
        )}
      </section>
      <section class="card" aria-labelledby="place-title">
        <h3 id="place-title">Where you are</h3>
        <PartEditor path={['place']} except={['stations']} />
      </section>
    </>
  );
}

const nameOf = (station: unknown): string => String((isRecord(station) && station.name) || 'No name yet');

function StationsTable({ stations, open }: { stations: readonly unknown[]; open?: number }) {
  const now = reception.value;
  return (
    <table class="stations-table">
      <thead>
        <tr>
          <th scope="col">Station</th>
          <th scope="col" class="number">
            Frequency
          </th>
          <th scope="col" class="number">
            Field
          </th>
          <th scope="col">Heard</th>
          <th scope="col">Disturbed by</th>
          <th scope="col">Would help most</th>
        </tr>
      </thead>
      <tbody>
        {stations.map((station, i) => {
          const found = now?.stations[i];
          const hasProblem = problems.value.some((problem) => problem.path.startsWith(`place.stations[${i}]`));
          const disturbance = found?.disturbance?.word === 'clear' ? undefined : found?.disturbance;
          return (
            <tr key={`${nameOf(station)} ${i}`} class={i === open ? 'is-chosen' : undefined}>
              <th scope="row">
                <button
                  type="button"
                  class="link"
                  aria-current={i === open ? 'true' : undefined}
                  onClick={() => chooseStation(i)}
                >
                  {nameOf(station)}
                </button>
                {hasProblem && <span class="problem"> not right yet</span>}
              </th>
              <td class="number">{found ? kilohertz(found.frequency) : ''}</td>
              <td class="number">{found ? formatQuantity(found.fieldStrength, 'field strength') : ''}</td>
              <td class="heard">
                {found && (
                  <>
                    <HeardBars heard={found.heard} /> {found.outOfReach ? 'out of reach' : found.heard}
                  </>
                )}
              </td>
              <td>{disturbance ? `${disturbance.by} (${disturbance.word})` : ''}</td>
              <td>{found ? (helpOf(found)?.[0]?.sentence ?? '') : ''}</td>
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}
