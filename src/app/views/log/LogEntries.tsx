import { useMemo, useState } from 'preact/hooks';
import type { LogCells, PlacedEntry } from '../../../engine/index.ts';
import { logWords as texts, verdictWords } from '../../../outputs/words/index.ts';

interface Props {
  readonly entries: readonly PlacedEntry[];
  readonly onErase: (cells: LogCells) => void;
}

/** More are shown when asked for. */
const AT_ONCE = 50;

/** The entries, latest first. */
export function LogEntries({ entries, onErase }: Props) {
  const [most, setMost] = useState(AT_ONCE);
  const latest = useMemo(() => [...entries].sort((a, b) => b.entry.time.getTime() - a.entry.time.getTime()), [entries]);
  if (entries.length === 0) return <p class="quiet">{texts.none}</p>;
  return (
    <section aria-labelledby="entries-title">
      <h2 id="entries-title">{texts.entries}</h2>
      <ul class="log-entries">
        {latest.slice(0, most).map(({ entry }) => {
          const { cells, heard, row } = entry;
          const what = cells.station ?? cells.frequency ?? texts.atPointer(cells.pointer ?? '');
          const rest = [cells.conditions, cells.spot, cells.remark].filter(Boolean).join('; ');
          return (
            <li key={`${row} ${cells.time}`}>
              <span class="log-time">{cells.time?.replace('T', ' ')}</span> <strong>{what}</strong>{' '}
              {verdictWords[heard]}
              {rest && <span class="quiet"> {rest}</span>}
              <button
                type="button"
                class="leave-out"
                aria-label={texts.erase(what, cells.time ?? '')}
                onClick={() => onErase(cells)}
              >
                ×
              </button>
            </li>
          );
        })}
      </ul>
      {latest.length > most && (
        <button type="button" onClick={() => setMost(most + 500)}>
          {texts.showMore(Math.min(500, latest.length - most))}
        </button>
      )}
    </section>
  );
}
