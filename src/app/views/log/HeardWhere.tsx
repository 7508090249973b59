import { useMemo, useState } from 'preact/hooks';
import { HEARD, type LogAgainstPrediction, type Position, type SetDescription } from '../../../engine/index.ts';
import { logWords as texts } from '../../../outputs/words/index.ts';
import { useOpenSet } from '../../state/set-context.ts';
import { LabelledSelect } from '../../widgets/LabelledSelect.tsx';
import { StationsMap } from '../set/place/StationsMap.tsx';
import { usePlaceFigures } from '../set/place/use-place-figures.ts';
import '../set/place/place.css';

type Lights = keyof typeof texts.light;
const LIGHTS_IN_WORDS = Object.entries(texts.light) as [Lights, string][];

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
    // How well each station was heard at best.
    const best = new Map<number, number>();
    for (const { station, light: at, entry } of beside.entries) {
      if (station === undefined || (light !== 'any' && at !== light)) continue;
      best.set(station, Math.min(best.get(station) ?? HEARD.length, HEARD.indexOf(entry.heard)));
    }
    // Of a station that nobody listened for nothing is known.
    return beside.stations.flatMap(({ index, name }) => {
      const rank = best.get(index);
      return rank === undefined ? [] : [{ index, name, heard: HEARD[rank] }];
    });
  }, [beside, light]);
  const hasAll = figures?.now.length === beside.stations.length;
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
