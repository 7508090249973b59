import { useMemo, useState } from 'preact/hooks';
import { type LogAgainstPrediction, listeningCalendar, type Position } from '../../../engine/index.ts';
import { heardWhen } from '../../../outputs/plots/index.ts';
import { heardWhenWords, logWords as texts } from '../../../outputs/words/index.ts';
import { LabelledSelect } from '../../widgets/LabelledSelect.tsx';
import { Plot } from '../../widgets/Plot.tsx';

interface Props {
  readonly beside: LogAgainstPrediction;
  readonly position: Position | undefined;
}

/** Season and hour of what was heard, of all stations or of one. */
export function HeardWhen({ beside, position }: Props) {
  const [picked, setPicked] = useState<number | undefined>();
  const logged = useMemo(() => {
    const heard = new Set(beside.entries.map(({ station }) => station));
    return beside.stations.filter(({ index }) => heard.has(index));
  }, [beside]);
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
