import { useState } from 'preact/hooks';
import { wavesPanelWords as texts } from '../../../../outputs/words/index.ts';
import { Later } from '../../../widgets/Later.tsx';
import type { WavesPanelProps } from './WavesPanel.tsx';

const load = () => import('./WavesPanel.tsx').then((m) => m.WavesPanel);

/** What stands at any point of the set, cycle by cycle; nothing of it is fetched before it is opened. */
export function NodeWaves(props: WavesPanelProps) {
  const [open, setOpen] = useState(false);
  return (
    <details class="card" onToggle={(event) => setOpen((event.currentTarget as HTMLDetailsElement).open)}>
      <summary>{texts.title(props.station.name)}</summary>
      {open && <Later load={load} name={texts.name} props={props} />}
    </details>
  );
}
