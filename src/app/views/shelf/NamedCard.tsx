import type { ComponentChildren } from 'preact';
import { useRef, useState } from 'preact/hooks';
import { shelfWords as texts } from '../../../outputs/words/index.ts';
import { focusIfLost } from '../../widgets/focus-if-lost.ts';

interface Props {
  readonly name: string;
  /** What is renamed; empty where it has no name and is shown by another. */
  readonly ownName: string;
  /** It is the one that is open. */
  readonly isOpen: boolean;
  /** Shown above the name. */
  readonly drawing?: ComponentChildren;
  readonly when: string;
  readonly notes: string;
  /** Left out: it cannot be opened by itself. */
  readonly onOpen?: () => void;
  readonly onCopy: () => void;
  /** Is given a name that is not empty. */
  readonly onRename: (name: string) => void;
  /** Its end is when the card is gone. */
  readonly onRemove: () => Promise<void>;
  /** The card is gone, and with it what had the focus. */
  readonly onGone: () => void;
  /** More buttons, before the others. */
  readonly children?: ComponentChildren;
}

/** One of what the shelf lists: opened by its name, copied, renamed, deleted. */
export function NamedCard(props: Props) {
  const { name, ownName, isOpen, drawing, when, notes, onOpen, onCopy, onRename, onRemove, onGone, children } = props;
  const [newName, setNewName] = useState<string | undefined>();
  const card = useRef<HTMLLIElement>(null);
  const endRenaming = () => {
    setNewName(undefined);
    focusIfLost(() => card.current?.querySelector<HTMLElement>('.shelf-rename'));
  };
  return (
    <li ref={card} class={`shelf-card${isOpen ? ' is-open' : ''}`} aria-current={isOpen}>
      {drawing}
      {newName !== undefined ? (
        <form
          class="shelf-rename-form"
          onSubmit={(event) => {
            event.preventDefault();
            const text = newName.trim();
            if (text !== '') onRename(text);
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
      ) : onOpen ? (
        <button type="button" class="shelf-name" onClick={onOpen}>
          {name}
        </button>
      ) : (
        <p class="shelf-name">{name}</p>
      )}
      <p class="quiet shelf-when">{when}</p>
      {notes && <p class="shelf-notes">{notes}</p>}
      <p class="shelf-acts">
        {children}
        <button type="button" aria-label={texts.copyNamed(name)} onClick={onCopy}>
          {texts.copy}
        </button>
        <button
          type="button"
          class="shelf-rename"
          aria-label={texts.renameNamed(name)}
          onClick={() => setNewName(ownName)}
        >
          {texts.rename}
        </button>
        <button
          type="button"
          aria-label={texts.removeNamed(name)}
          onClick={() => void onRemove().then(() => focusIfLost(() => void onGone()))}
        >
          {texts.remove}
        </button>
      </p>
    </li>
  );
}
