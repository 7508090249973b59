import { useMemo, useState } from 'preact/hooks';
import type { SetDescription } from '../../../../engine/index.ts';
import { type HeaterCurves, heaterCurve } from '../../../../outputs/plots/index.ts';
import { heaterPanelWords as texts } from '../../../../outputs/words/index.ts';
import type { When } from '../../../description/when.ts';
import { Plot } from '../../../widgets/Plot.tsx';
import { useAnswer } from '../../../workers/use-worker.ts';
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
  const question = useMemo(
    (): HeaterQuestion | undefined => (open ? { set, station: station.index, time } : undefined),
    [open, set, station.index, time],
  );
  const { answer: curves, error: failed } = useAnswer<HeaterQuestion, HeaterCurves | undefined>(
    () => new Worker(new URL('./heater.worker.ts', import.meta.url), { type: 'module', name: 'heater' }),
    question,
  );

  return (
    <details class="card" open={open} onToggle={(event) => setOpen((event.currentTarget as HTMLDetailsElement).open)}>
      <summary>{texts.title(station.name)}</summary>
      {failed !== '' && <p class="problem">{texts.failed(failed)}</p>}
      {open && !curves && failed === '' && <p class="quiet">{texts.calculating}</p>}
      {curves && (
        <>
          <Plot title={texts.plot} data={curves} draw={heaterCurve} />
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
