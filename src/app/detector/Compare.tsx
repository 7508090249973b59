import { useEffect, useRef, useState } from 'preact/hooks';
import type { DetectorOnStation } from '../../engine/reception/compare.ts';
import type { SetDescription } from '../../engine/set/description.ts';
import { formatNumber, formatQuantity } from '../../engine/units/format.ts';
import { HeardBars } from '../components/Heard.tsx';
import type { When } from '../place/when.ts';
import { type Latest, latestWins } from '../workers/latest.ts';
import type { CompareQuestion } from './compare.worker.ts';

interface Props {
  readonly set: SetDescription;
  readonly station: { readonly index: number; readonly name: string };
  /** Default day. */
  readonly time?: When;
  /** Put one of them in the set. */
  readonly onChoose: (detector: DetectorOnStation['description'], label: string) => void;
}

/** The same station through every usual detector, all else as it is. */
export function Compare({ set, station, time, onChoose }: Props) {
  const [open, setOpen] = useState(false);
  const [rows, setRows] = useState<readonly DetectorOnStation[] | undefined>();
  const [failed, setFailed] = useState('');
  const line = useRef<Latest<CompareQuestion> | undefined>(undefined);

  useEffect(() => {
    if (!open) return;
    if (!line.current) {
      const worker = new Worker(new URL('./compare.worker.ts', import.meta.url), { type: 'module', name: 'compare' });
      line.current = latestWins<CompareQuestion, DetectorOnStation[]>(worker, (_question, reply) => {
        if ('answer' in reply) setRows(reply.answer);
        setFailed('error' in reply ? reply.error : '');
      });
    }
    line.current.ask({ set, station: station.index, time });
  }, [open, set, station.index, time]);

  return (
    <details class="card" onToggle={(event) => setOpen((event.currentTarget as HTMLDetailsElement).open)}>
      <summary>Compare detectors on {station.name}</summary>
      {failed !== '' && <p class="problem">They cannot be compared: {failed}</p>}
      {open && !rows && failed === '' && <p class="quiet">Trying each of them…</p>}
      {rows && (
        <>
          <p>{verdict(rows)}</p>
          {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a wide table must scroll from the keyboard */}
          <section class="table-scroll" tabIndex={0} aria-label="Detectors compared">
            <table>
              <thead>
                <tr>
                  <th scope="col">Detector</th>
                  <th scope="col" class="number">
                    Sound
                  </th>
                  <th scope="col">Heard</th>
                  <th scope="col" class="number">
                    Direct voltage
                  </th>
                  <th scope="col" class="number">
                    Loads like
                  </th>
                  <th scope="col" class="number">
                    Loaded Q
                  </th>
                  <th scope="col" class="number">
                    Distortion
                  </th>
                  <th scope="col">Best tap</th>
                  <th scope="col">
                    <span class="visually-hidden">Use it</span>
                  </th>
                </tr>
              </thead>
              <tbody>
                {rows.map((row) => (
                  <tr key={row.label} aria-current={Math.abs(row.difference) < 0.01 ? 'true' : undefined}>
                    <th scope="row" title={row.merit}>
                      {row.label}
                    </th>
                    <td class="number">
                      {Math.round(row.soundPressureLevel)} dB SPL ({formatQuantity(row.difference, 'level')})
                    </td>
                    <td>
                      <HeardBars verdict={row.heard} /> {row.heard}
                    </td>
                    <td class="number">{formatQuantity(row.directVoltage, 'voltage', 2)}</td>
                    <td class="number">{formatQuantity(row.inputResistance, 'resistance', 2)}</td>
                    <td class="number">{formatNumber(row.loadedQ, 2)}</td>
                    <td class="number">{formatQuantity(row.distortion, 'ratio', 2)}</td>
                    <td>
                      {row.bestTap
                        ? `${row.bestTap.turns} turns${row.bestTap.gain >= 0.5 ? `, ${formatQuantity(row.bestTap.gain, 'level')}` : ''}`
                        : ''}
                    </td>
                    <td>
                      <button type="button" onClick={() => onChoose(row.description, row.label)}>
                        Use
                      </button>
                    </td>
                  </tr>
                ))}
              </tbody>
            </table>
          </section>
          <p class="quiet">
            A faint carrier is detected by square law: half the carrier gives a quarter of the sound. Above some{' '}
            {formatQuantity(rows[0].squareLawEnds, 'voltage', 2)} across it the{' '}
            {rows[0].label.toLowerCase().includes('diode')
              ? 'best of these'
              : rows[0].label.split(',')[0].toLowerCase()}{' '}
            follows the envelope straight.
          </p>
        </>
      )}
    </details>
  );
}

function verdict(rows: readonly DetectorOnStation[]): string {
  const [best] = rows;
  const worst = rows[rows.length - 1];
  const gap = Math.round(best.soundPressureLevel - worst.soundPressureLevel);
  const own = rows.find((r) => Math.abs(r.difference) < 0.01);
  const gain =
    best.difference >= 0.5
      ? `, ${formatQuantity(best.difference, 'level')} over the one in the set`
      : ', as is the one in the set';
  return `Loudest here: ${best.label}${own === best ? ', which the set has' : gain}. Between it and ${worst.label} lie ${gap} dB.`;
}
