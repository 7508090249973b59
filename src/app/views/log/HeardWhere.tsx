import { useMemo, useState } from 'preact/hooks';
import { HEARD, type LogAgainstPrediction, type Position, type SetDescription } from '../../../engine/index.ts';
import { logWords as texts } from '../../../outputs/words/index.ts';
import { useOpenSet } from '../../state/set-context.ts';
import { StationsMap } from '../set/place/StationsMap.tsx';
import { usePlaceFigures } from '../set/place/use-place-figures.ts';
import '../set/place/place.css';

type Lights = keyof typeof texts.light;

interface Props {
  readonly set: SetDescription;
  readonly beside: LogAgainstPrediction;
  readonly position: Position;
}

/** The stations about the place, those heard marked: by day, by night, or at any time. */
export function HeardWhere({ set, beside, position }: Props) {
  const { chosen } = useOpenSet();
  const [light, setLight] = useState<Lights>('any');
  const figures = usePlaceFigures(set, light === 'night' ? 'night' : 'day', undefined);
  const rows = useMemo(() => {
    const entries = beside.entries.filter((one) => light === 'any' || one.light === light);
    return beside.stations.flatMap(({ index, name }) => {
      const all = entries.flatMap(({ station, entry }) => (station === index ? [entry.heard] : []));
      // Of a station that nobody listened for nothing is known.
      const heard = HEARD.find((heard) => all.includes(heard));
      return heard ? [{ index, name, heard }] : [];
    });
  }, [beside, light]);
  const hasAll = figures?.now.length === beside.stations.length;
  return (
    <section class="card" aria-labelledby="where-title">
      <h2 id="where-title">{texts.where}</h2>
      <label class="log-pick">
        {texts.lightLabel}{' '}
        <select value={light} onChange={({ currentTarget: { value } }) => setLight(value as Lights)}>
          {Object.entries(texts.light).map(([value, words]) => (
            <option key={value} value={value}>
              {words}
            </option>
          ))}
        </select>
      </label>
      {figures && hasAll && (
        <StationsMap
          centre={position}
          siteName={set.place.name}
          arrivals={figures.now}
          rows={rows}
          when={light === 'night' ? 'night' : 'day'}
          chosen={chosen.value?.index}
        />
      )}
    </section>
  );
}
