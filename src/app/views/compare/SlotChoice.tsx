import { compareView as texts } from '../../../outputs/words/index.ts';
import { comparedIds, MOST_BESIDE } from '../../state/compared-sets.ts';
import { useOpenSet, useShelf } from '../../state/set-context.ts';
import type { ShelfEntry } from '../../state/shelf/shelf-entry.ts';

interface Props {
  /** Of the set in focus, which is A. */
  readonly name: string;
  readonly beside: readonly string[];
  /** All others of the shelf. */
  readonly others: readonly ShelfEntry[];
}

const nameOf = ({ name, fileName }: ShelfEntry): string => name || fileName;

/** Which sets stand side by side: the one in focus, and up to three more. */
export function SlotChoice({ name, beside, others }: Props) {
  const shelf = useShelf();
  const { id } = useOpenSet();
  const choose = (slot: number, id: string) => {
    const next = [...beside];
    if (id === '') next.splice(slot, 1);
    else next[slot] = id;
    comparedIds.value = next;
  };
  /** That set becomes the one that is open, and the one that was takes its place beside it. */
  const swap = async (to: string) => {
    if (await shelf.open(to)) comparedIds.value = beside.map((one) => (one === to ? id : one));
  };
  const slots = Math.min(MOST_BESIDE, beside.length + 1, others.length);
  return (
    <ol class="compare-sets" aria-label={texts.sets}>
      <li class="compare-set">
        <span class="compare-letter">{texts.letter(0)}</span>
        <span class="compare-name">
          {name} <span class="quiet">{texts.openNow}</span>
        </span>
      </li>
      {Array.from({ length: slots }, (_, slot) => {
        const id = beside[slot];
        const entry = others.find((one) => one.id === id);
        return (
          <li key={slot} class="compare-set">
            <span class="compare-letter" aria-hidden="true">
              {texts.letter(slot + 1)}
            </span>
            <select
              aria-label={texts.choose(slot + 1)}
              value={id ?? ''}
              onChange={(event) => choose(slot, event.currentTarget.value)}
            >
              <option value="">{texts.none}</option>
              {others
                .filter((one) => one.id === id || !beside.includes(one.id))
                .map((one) => (
                  <option key={one.id} value={one.id}>
                    {nameOf(one)}
                  </option>
                ))}
            </select>
            {entry && (
              <>
                <button type="button" aria-label={texts.open(nameOf(entry))} onClick={() => void swap(entry.id)}>
                  {texts.openShort}
                </button>
                <button
                  type="button"
                  class="leave-out"
                  aria-label={texts.leaveOut(nameOf(entry))}
                  onClick={() => choose(slot, '')}
                >
                  ×
                </button>
              </>
            )}
          </li>
        );
      })}
    </ol>
  );
}
