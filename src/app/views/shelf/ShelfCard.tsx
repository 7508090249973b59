import { useRef, useState } from 'preact/hooks';
import { shelfWords as texts } from '../../../outputs/words/index.ts';
import { view } from '../../state/page-view.ts';
import { useShelf } from '../../state/set-context.ts';
import type { ShelfEntry } from '../../state/shelf/shelf-entry.ts';
import { focusIfLost } from '../../widgets/focus-if-lost.ts';
import { CompareChoice } from './CompareSets.tsx';
import { Thumbnail } from './Thumbnail.tsx';

interface Props {
  readonly entry: ShelfEntry;
  readonly isOpen: boolean;
  /** It is no longer on the shelf. */
  readonly onGone: () => void;
}

export function ShelfCard({ entry, isOpen, onGone }: Props) {
  const shelf = useShelf();
  const [newName, setNewName] = useState<string | undefined>();
  const card = useRef<HTMLLIElement>(null);
  const name = entry.name || texts.unnamed;
  const endRenaming = () => {
    setNewName(undefined);
    focusIfLost(() => card.current?.querySelector<HTMLElement>('.shelf-rename'));
  };
  return (
    <li ref={card} class={`shelf-card${isOpen ? ' is-open' : ''}`} aria-current={isOpen}>
      <Thumbnail entry={entry} />
      {newName === undefined ? (
        <button
          type="button"
          class="shelf-name"
          onClick={() =>
            void shelf.open(entry.id).then((isThere) => {
              if (isThere) view.value = 'set';
            })
          }
        >
          {name}
        </button>
      ) : (
        <form
          class="shelf-rename-form"
          onSubmit={(event) => {
            event.preventDefault();
            const text = newName.trim();
            if (text !== '') void shelf.rename(entry.id, text);
            endRenaming();
          }}
          onKeyDown={(event) => {
            if (event.key === 'Escape') endRenaming();
          }}
        >
          <input
            type="text"
            aria-label={texts.newName}
            maxLength={120}
            value={newName}
            ref={(field) => {
              if (field && document.activeElement !== field && !field.dataset.begun) {
                field.dataset.begun = 'true';
                field.select();
              }
            }}
            onInput={(event) => setNewName(event.currentTarget.value)}
          />
          <button type="submit" class="primary">
            {texts.saveName}
          </button>
          <button type="button" onClick={endRenaming}>
            {texts.cancel}
          </button>
        </form>
      )}
      <p class="quiet shelf-when">
        {isOpen ? `${texts.current}. ` : ''}
        {texts.changed(texts.when(entry.changed))}
      </p>
      {entry.notes && <p class="shelf-notes">{entry.notes}</p>}
      <p class="shelf-acts">
        {!isOpen && <CompareChoice id={entry.id} name={name} />}
        <button type="button" aria-label={texts.copyNamed(name)} onClick={() => void shelf.copy(entry.id)}>
          {texts.copy}
        </button>
        <button
          type="button"
          class="shelf-rename"
          aria-label={texts.renameNamed(name)}
          onClick={() => setNewName(entry.name)}
        >
          {texts.rename}
        </button>
        <button
          type="button"
          aria-label={texts.removeNamed(name)}
          onClick={() => void shelf.remove(entry.id).then(() => focusIfLost(() => void onGone()))}
        >
          {texts.remove}
        </button>
      </p>
    </li>
  );
}
