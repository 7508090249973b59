import { useMemo, useState } from 'preact/hooks';
import { type DetectorOnStation, formatNumber, formatQuantity, type SetDescription } from '../../../../engine/index.ts';
import { type ComparedCurve, detectorsCompared, isNearZero, MOST_COMPARED } from '../../../../outputs/plots/index.ts';
import {
  detectionLawWords,
  detectorShortNames,
  verdictWords,
  warningSentences,
} from '../../../../outputs/words/index.ts';
import type { When } from '../../../description/when.ts';
import { Plot } from '../../../widgets/Plot.tsx';
import { useAnswer } from '../../../workers/use-worker.ts';
import { HeardBars } from '../Heard.tsx';
import './detector.css';
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
  const [picked, setPicked] = useState<readonly string[] | undefined>();
  const question = useMemo(
    (): CompareQuestion | undefined => (open ? { set, station: station.index, time } : undefined),
    [open, set, station.index, time],
  );
  const { answer: rows, error: failed } = useAnswer<CompareQuestion, readonly DetectorOnStation[]>(
    () => new Worker(new URL('./compare.worker.ts', import.meta.url), { type: 'module', name: 'compare' }),
    question,
  );
  const drawn = useMemo(() => drawnOf(rows ?? [], picked), [rows, picked]);
  const curves = useMemo(
    () =>
      drawn.map(
        (row): ComparedCurve => ({
          name: row.label,
          shorter: detectorShortNames(row.description),
          points: row.curve,
          operating: row.operating,
        }),
      ),
    [drawn],
  );

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
            <table class="compare-table">
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
                  <th scope="col" class="number">
                    Straight from
                  </th>
                  <th scope="col">Best tap</th>
                  <th scope="col">Best load</th>
                </tr>
              </thead>
              <tbody>
                {rows.map((row) => (
                  <tr key={row.label} aria-current={Math.abs(row.difference) < 0.01 ? 'true' : undefined}>
                    <th scope="row">
                      <div class="compare-name">
                        <label>
                          <input
                            type="checkbox"
                            checked={drawn.includes(row)}
                            disabled={!drawn.includes(row) && drawn.length >= MOST_COMPARED}
                            onChange={() =>
                              setPicked(
                                (drawn.includes(row) ? drawn.filter((r) => r !== row) : [...drawn, row]).map(
                                  (r) => r.label,
                                ),
                              )
                            }
                          />{' '}
                          {row.label}
                        </label>
                        <button type="button" onClick={() => onChoose(row.description, row.label)}>
                          Use
                        </button>
                      </div>
                    </th>
                    <td class="number">
                      {Math.round(row.soundPressureLevel)} dB SPL ({formatQuantity(row.difference, 'level')})
                    </td>
                    <td>
                      <HeardBars verdict={row.heard} /> {verdictWords[row.heard]}
                    </td>
                    <td class="number">{formatQuantity(row.directVoltage, 'voltage', 2)}</td>
                    <td class="number">
                      {formatQuantity(row.inputResistance, 'resistance', 2)} ({formatQuantity(-row.loading, 'level', 2)}
                      )
                    </td>
                    <td class="number">{formatNumber(row.loadedQ, 2)}</td>
                    <td class="number">{formatQuantity(row.distortion, 'ratio', 2)}</td>
                    <td class="number">{formatQuantity(row.squareLawEnds, 'voltage', 2)}</td>
                    <td>
                      {row.bestTap
                        ? `${row.bestTap.turns} turns${row.bestTap.gain >= 0.5 ? `, ${formatQuantity(row.bestTap.gain, 'level')}${row.bestTap.of === 'clearance' ? ' of clearance' : ''}` : ''}`
                        : ''}
                    </td>
                    <td>
                      {formatQuantity(row.bestLoad.resistance, 'resistance', 2)}
                      {row.bestLoad.gain >= 0.5 ? `, ${formatQuantity(row.bestLoad.gain, 'level')}` : ''}
                    </td>
                  </tr>
                ))}
              </tbody>
            </table>
          </section>
          <p class="quiet">
            Ticked ones are drawn below. “Loads like” is what it puts across its tap, and what that takes off the
            voltage there. A faint carrier is detected by square law: half the carrier gives a quarter of the sound.
            “Straight from” is the carrier across it where that has half turned into following the envelope straight, in
            this set. Best load is a plain resistance in place of what is there, tap and all else left as they are.
          </p>
          {drawn.length > 0 && (
            <Plot
              title={`${isNearZero(curves) ? 'Near zero' : 'Their curves'}: thick where the carrier sweeps them, a dot where each works on average`}
              data={curves}
              draw={detectorsCompared}
            />
          )}
          <h4>What each is good for</h4>
          <ul class="bench-words">
            {drawn.map((row) => (
              <li key={row.label}>
                <strong>{row.label}:</strong> {row.merit} {detectionLawWords(row)}
                {row.warnings.length > 0 && ` ${warningSentences(row.warnings).join(' ')}`}
              </li>
            ))}
          </ul>
        </>
      )}
    </details>
  );
}

/** Those ticked; at first the set's own, the loudest and the least loud. */
function drawnOf(rows: readonly DetectorOnStation[], picked: readonly string[] | undefined): DetectorOnStation[] {
  if (picked) return rows.filter((row) => picked.includes(row.label));
  const own = rows.find((r) => Math.abs(r.difference) < 0.01);
  return [...new Set([own, rows[0], rows[rows.length - 1]])].filter((row) => row !== undefined);
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
