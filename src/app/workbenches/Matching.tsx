import { useEffect, useRef, useState } from 'preact/hooks';
import type { Match } from '../../engine/find/matching.ts';
import { edit, undo } from '../state/document.ts';
import { tell } from '../state/notices.ts';
import { chosen, receptionSet } from '../state/reception.ts';
import { type Latest, latestWins } from '../workers/latest.ts';
import type { MatchQuestion } from './match.worker.ts';

/** Make one of them the set's; the notice takes it back. */
function take({ what, sentence, write }: Match): void {
  if (!write) return;
  edit(write.path, write.to, { label: `best ${what}` });
  tell(sentence, { key: 'tried', action: { label: 'Undo', run: undo } });
}

/** The best taps, distance and transformer for the chosen station, worked out when it is opened. */
export function Matching({ of }: { of: readonly Match['what'][] }) {
  const [open, setOpen] = useState(false);
  const [found, setFound] = useState<readonly Match[] | undefined>();
  const [failed, setFailed] = useState('');
  const line = useRef<Latest<MatchQuestion> | undefined>(undefined);
  const station = chosen.value;
  const set = receptionSet.value;
  const index = station?.index;
  useEffect(() => {
    if (!open || !set || index === undefined) return;
    if (!line.current) {
      const worker = new Worker(new URL('./match.worker.ts', import.meta.url), { type: 'module', name: 'matching' });
      line.current = latestWins<MatchQuestion, Match[]>(worker, (_question, reply) => {
        if ('answer' in reply) setFound(reply.answer);
        setFailed('error' in reply ? reply.error : '');
      });
    }
    line.current.ask({ set, station: index });
  }, [open, set, index]);
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
              <strong>{match.what[0].toUpperCase() + match.what.slice(1)}.</strong> {match.sentence}
            </span>
            {match.write && (
              <button type="button" class="try" aria-label={`Take the best ${match.what}`} onClick={() => take(match)}>
                Take it
              </button>
            )}
          </li>
        ))}
      </ul>
      {shown && shown.length > 0 && (
        <p class="about">Each by itself, all else as it is. The best is the loudest: lower and looser is sharper.</p>
      )}
    </details>
  );
}
