import { shelfWords as texts } from '../../../outputs/words/index.ts';
import { view } from '../../state/page-view.ts';
import { useShelf } from '../../state/set-context.ts';
import type { ShelfEntry } from '../../state/shelf/shelf-entry.ts';
import { CompareChoice } from './CompareSets.tsx';
import { NamedCard } from './NamedCard.tsx';
import { Thumbnail } from './Thumbnail.tsx';

interface Props {
  readonly entry: ShelfEntry;
  readonly isOpen: boolean;
  /** It is no longer on the shelf. */
  readonly onGone: () => void;
}

/** A set of the shelf, with its circuit. */
export function ShelfCard({ entry, isOpen, onGone }: Props) {
  const shelf = useShelf();
  const { id } = entry;
  const name = entry.name || texts.unnamed;
  return (
    <NamedCard
      name={name}
      ownName={entry.name}
      isOpen={isOpen}
      drawing={<Thumbnail entry={entry} />}
      when={`${isOpen ? `${texts.current}. ` : ''}${texts.changed(texts.when(entry.changed))}`}
      notes={entry.notes}
      onOpen={() =>
        void shelf.open(id).then((isThere) => {
          if (isThere) view.value = 'set';
        })
      }
      onCopy={() => void shelf.copy(id)}
      onRename={(text) => void shelf.rename(id, text)}
      onRemove={() => shelf.remove(id)}
      onGone={onGone}
    >
      {!isOpen && <CompareChoice id={id} name={name} />}
    </NamedCard>
  );
}
