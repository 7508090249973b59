import { useMemo, useState } from 'preact/hooks';
import { type LogAgainstPrediction, listeningCalendar, type Position } from '../../../engine/index.ts';
import { heardWhen } from '../../../outputs/plots/index.ts';
import { heardWhenWords, logWords as texts } from '../../../outputs/words/index.ts';
import { Plot } from '../../widgets/Plot.tsx';

interface Props {
  readonly beside: LogAgainstPrediction;
  readonly position: Position | undefined;
}

/** Season and hour of what was heard, of all stations or of one. */
export function HeardWhen({ beside, position }: Props) {
  const [picked, setPicked] = useState<number | undefined>();
  const logged = beside.stations.filter(({ index }) => beside.entries.some(({ station }) => station === index));
  const station = logged.some(({ index }) => index === picked) ? picked : undefined;
  const calendar = useMemo(
    () =>
      listeningCalendar(
        station === undefined ? beside.entries : beside.entries.filter((one) => one.station === station),
        position,
      ),
    [beside, position, station],
  );
  return (
    <section class="card" aria-label={heardWhenWords.title}>
      <label class="log-pick">
        {texts.station}{' '}
        <select
          value={station ?? ''}
          onChange={({ currentTarget: { value } }) => setPicked(value === '' ? undefined : Number(value))}
        >
          <option value="">{texts.everyStation}</option>
          {logged.map(({ index, name }) => (
            <option key={index} value={index}>
              {name}
            </option>
          ))}
        </select>
      </label>
      <Plot title={heardWhenWords.title} data={calendar} draw={heardWhen} />
    </section>
  );
}
