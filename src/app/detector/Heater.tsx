import { useEffect, useRef, useState } from 'preact/hooks';
import type { SetDescription } from '../../engine/set/description.ts';
import { type HeaterCurves, heaterCurve } from '../../outputs/plots/index.ts';
import { Plot } from '../components/Plot.tsx';
import type { When } from '../place/when.ts';
import { type Latest, latestWins } from '../workers/latest.ts';
import './detector.css';
import type { HeaterQuestion } from './heater.worker.ts';

interface Props {
  readonly set: SetDescription;
  readonly station: { readonly index: number; readonly name: string };
  readonly time: When;
}

/** A valve's heater: how the station comes up when it is switched on, and fades when it is switched off. */
export function Heater({ set, station, time }: Props) {
  const [open, setOpen] = useState(true);
  const [curves, setCurves] = useState<HeaterCurves | undefined>();
  const [failed, setFailed] = useState('');
  const worker = useRef<Worker | undefined>(undefined);
  const line = useRef<Latest<HeaterQuestion> | undefined>(undefined);

  useEffect(() => {
    if (!open) return;
    if (!line.current) {
      worker.current = new Worker(new URL('./heater.worker.ts', import.meta.url), { type: 'module', name: 'heater' });
      line.current = latestWins<HeaterQuestion, HeaterCurves | undefined>(worker.current, (_question, reply) => {
        if ('answer' in reply) setCurves(reply.answer);
        setFailed('error' in reply ? reply.error : '');
      });
    }
    line.current.ask({ set, station: station.index, time });
  }, [open, set, station.index, time]);
  useEffect(() => () => worker.current?.terminate(), []);

  return (
    <details class="card" open={open} onToggle={(event) => setOpen((event.currentTarget as HTMLDetailsElement).open)}>
      <summary>The heater, switched on and off, on {station.name}</summary>
      {failed !== '' && <p class="problem">This cannot be worked out: {failed}</p>}
      {open && !curves && failed === '' && <p class="quiet">Warming it up and letting it cool…</p>}
      {curves && (
        <>
          <Plot title="Loudness and the valve’s current" data={curves} draw={heaterCurve} />
          <div class="bench-words">
            {curves.words.map((words) => (
              <p key={words}>{words}</p>
            ))}
          </div>
        </>
      )}
    </details>
  );
}
