import { useMemo, useState } from 'preact/hooks';
import type { Match } from '../../../../engine/index.ts';
import { coverageWords, MATCHED_NAMES, matchWords } from '../../../../outputs/words/index.ts';
import { chosen, receptionSet } from '../../../state/reception.ts';
import { tryOut } from '../../../state/try-out.ts';
import { time } from '../../../state/view.ts';
import { useAnswer } from '../../../workers/use-worker.ts';
import type { MatchQuestion } from './match.worker.ts';

/** The best taps, distance and transformer for the chosen station, worked out when it is opened. */
export function Matching({ of }: { of: readonly Match['what'][] }) {
  const [open, setOpen] = useState(false);
  const station = chosen.value;
  const set = receptionSet.value;
  const index = station?.index;
  const when = time.value;
  const question = useMemo(
    (): MatchQuestion | undefined =>
      open && set && index !== undefined ? { set, station: index, time: when } : undefined,
    [open, set, index, when],
  );
  const { answer: found, error: failed } = useAnswer<MatchQuestion, readonly Match[]>(
    () => new Worker(new URL('./match.worker.ts', import.meta.url), { type: 'module', name: 'matching' }),
    question,
  );
  if (!station) return null;
  const shown = found?.filter(({ what }) => of.includes(what));
  return (
    <details class="card" onToggle={(event) => setOpen((event.currentTarget as HTMLDetailsElement).open)}>
      <summary>{`Find the best ${of.length > 1 ? 'taps' : of[0]} for ${station.name}`}</summary>
      {failed !== '' && <p class="problem">It cannot be found: {failed}</p>}
      {open && !found && failed === '' && <p class="quiet">Trying one after another…</p>}
      {shown && shown.length === 0 && <p class="quiet">This arrangement has nothing of the kind to set.</p>}
      <ul class="matches">
        {shown?.map((match) => (
          <li key={match.what}>
            <span>
              <strong>{MATCHED_NAMES[match.what]}.</strong> {matchWords(match)} {coverageWords(match)}
            </span>
            {match.changes.length > 0 && (
              <button
                type="button"
                class="try"
                aria-label={`Take the best ${match.what}`}
                onClick={() =>
                  tryOut(
                    match.changes,
                    `best ${match.what}`,
                    [matchWords(match), coverageWords(match)].filter(Boolean).join(' '),
                  )
                }
              >
                Take it
              </button>
            )}
          </li>
        ))}
      </ul>
      {shown && shown.length > 0 && (
        <p class="about">
          Optimised separately, retuned each time. Best is the loudest at which the station stays clear of others; for a
          station that others disturb it is the clearest.
        </p>
      )}
    </details>
  );
}
