import { useMemo, useState } from 'preact/hooks';
import type { ListeningCalendar, LoggedStation } from '../../../engine/index.ts';
import { heardWhen } from '../../../outputs/plots/index.ts';
import { heardWhenWords, logWords as texts } from '../../../outputs/words/index.ts';
import { LabelledSelect } from '../../widgets/LabelledSelect.tsx';
import { Plot } from '../../widgets/Plot.tsx';
import { calendarEntries, type LogColumns } from './log-columns.ts';

interface Props {
  readonly stations: readonly LoggedStation[];
  readonly columns: LogColumns;
  readonly nights: ListeningCalendar['nights'];
}

/** Season and hour of what was heard, of all stations or of one. */
export function HeardWhen({ stations, columns, nights }: Props) {
  const [picked, setPicked] = useState<number | undefined>();
  const logged = useMemo(() => {
    const heard = new Set(columns.station);
    return stations.filter(({ index }) => heard.has(index));
  }, [stations, columns]);
  const station = logged.some(({ index }) => index === picked) ? picked : undefined;
  const calendar = useMemo(() => ({ entries: calendarEntries(columns, station), nights }), [columns, nights, station]);
  return (
    <section class="card" aria-label={heardWhenWords.title}>
      <LabelledSelect
        name="log-station"
        label={texts.station}
        value={station === undefined ? '' : String(station)}
        options={[['', texts.everyStation], ...logged.map(({ index, name }) => [String(index), name] as const)]}
        onChoose={(value) => setPicked(value === '' ? undefined : Number(value))}
      />
      <Plot title={heardWhenWords.title} data={calendar} draw={heardWhen} />
    </section>
  );
}
