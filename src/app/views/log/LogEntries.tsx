import type { LogCells, LogEntry } from '../../../engine/index.ts';
import { logWords as texts, verdictWords } from '../../../outputs/words/index.ts';

interface Props {
  readonly latest: readonly LogEntry[];
  /** How many entries there are. */
  readonly count: number;
  /** So many more shall be shown. */
  readonly onMore: (more: number) => void;
  readonly onErase: (cells: LogCells) => void;
}

/** Entries that are shown together when more are asked for. */
const MORE = 500;

/** The entries, latest first. */
export function LogEntries({ latest, count, onMore, onErase }: Props) {
  if (count === 0) return <p class="quiet">{texts.none}</p>;
  const left = count - latest.length;
  return (
    <section aria-labelledby="entries-title">
      <h2 id="entries-title">{texts.entries}</h2>
      <ul class="log-entries">
        {latest.map(({ cells, heard, row }) => {
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
      {left > 0 && (
        <button type="button" onClick={() => onMore(MORE)}>
          {texts.showMore(Math.min(MORE, left))}
        </button>
      )}
    </section>
  );
}
