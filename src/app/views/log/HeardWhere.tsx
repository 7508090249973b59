import { useMemo, useState } from 'preact/hooks';
import type { LoggedStation, Position, SetDescription } from '../../../engine/index.ts';
import { logWords as texts } from '../../../outputs/words/index.ts';
import { useOpenSet } from '../../state/set-context.ts';
import { LabelledSelect } from '../../widgets/LabelledSelect.tsx';
import { StationsMap } from '../set/place/StationsMap.tsx';
import { usePlaceFigures } from '../set/place/use-place-figures.ts';
import { bestHeard, type LogColumns } from './log-columns.ts';
import '../set/place/place.css';

type Lights = keyof typeof texts.light;
const LIGHTS_IN_WORDS = Object.entries(texts.light) as [Lights, string][];

interface Props {
  readonly set: SetDescription;
  readonly stations: readonly LoggedStation[];
  readonly columns: LogColumns;
  readonly position: Position;
}

/** The stations about the place, those heard marked: by day, by night, or at any time. */
export function HeardWhere({ set, stations, columns, position }: Props) {
  const { chosen } = useOpenSet();
  const [light, setLight] = useState<Lights>('any');
  const figures = usePlaceFigures(set, light === 'night' ? 'night' : 'day', undefined);
  const rows = useMemo(() => {
    const best = bestHeard(columns, light);
    return stations.flatMap(({ index, name }) => {
      const heard = best.get(index);
      return heard ? [{ index, name, heard }] : [];
    });
  }, [stations, columns, light]);
  const hasAll = figures?.now.length === stations.length;
  return (
    <section class="card log-where" aria-labelledby="where-title">
      <h2 id="where-title">{texts.where}</h2>
      <LabelledSelect
        name="log-light"
        label={texts.lightLabel}
        value={light}
        options={LIGHTS_IN_WORDS}
        onChoose={setLight}
      />
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
