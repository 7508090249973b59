import { useMemo, useState } from 'preact/hooks';
import type { Match } from '../../../../engine/index.ts';
import { coverageWords, MATCHED_NAMES, matchWords, matchingWords as texts } from '../../../../outputs/words/index.ts';
import { useChosenStation } from '../../../state/chosen-station.ts';
import { useOpenSet } from '../../../state/set-context.ts';
import { tryOut } from '../../../state/try-out.ts';
import { useAnswer } from '../../../workers/use-worker.ts';
import type { MatchQuestion } from './match.worker.ts';

/** The best taps, distance and transformer for the chosen station, worked out when it is opened. */
export function Matching({ of }: { of: readonly Match['what'][] }) {
  const { receptionSet, time, change, tellOfChange } = useOpenSet();
  const [open, setOpen] = useState(false);
  const station = useChosenStation();
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
      <summary>{of.length > 1 ? texts.findTaps(station.name) : texts.find[of[0]](station.name)}</summary>
      {failed !== '' && <p class="problem">{texts.notFound(failed)}</p>}
      {open && !found && failed === '' && <p class="quiet">{texts.trying}</p>}
      {shown && shown.length === 0 && <p class="quiet">{texts.nothingToSet}</p>}
      <ul class="matches">
        {shown?.map((match) => (
          <li key={match.what}>
            <span>
              <strong>{texts.heading(MATCHED_NAMES[match.what])}</strong> {matchWords(match)} {coverageWords(match)}
            </span>
            {match.changes.length > 0 && (
              <button
                type="button"
                class="try"
                aria-label={texts.takeLabel(MATCHED_NAMES[match.what])}
                onClick={() =>
                  tryOut(
                    { change, tellOfChange },
                    match.changes,
                    texts.undoLabel(MATCHED_NAMES[match.what]),
                    [matchWords(match), coverageWords(match)].filter(Boolean).join(' '),
                  )
                }
              >
                {texts.take}
              </button>
            )}
          </li>
        ))}
      </ul>
      {shown && shown.length > 0 && <p class="about">{texts.about}</p>}
    </details>
  );
}
