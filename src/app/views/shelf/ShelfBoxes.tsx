import { useMemo } from 'preact/hooks';
import { findView, shelfWords, keptBoxWords as texts } from '../../../outputs/words/index.ts';
import { tell } from '../../state/notices.ts';
import {
  addBox,
  type BoxEntry,
  boxEntries,
  chooseBox,
  copyBox,
  openBox,
  removeBox,
  renameBox,
} from '../../state/open-boxes.ts';
import { view } from '../../state/page-view.ts';
import { searchShelf } from '../../state/shelf/shelf-entry.ts';
import { NamedCard } from './NamedCard.tsx';

interface Props {
  readonly search: string;
  readonly onGone: () => void;
}

const kept = (isKept: boolean): void => {
  if (!isKept) tell(shelfWords.notKept, { key: 'shelf-not-kept', stays: true });
};

/** The boxes of parts in this browser. */
export function ShelfBoxes({ search, onGone }: Props) {
  const all = boxEntries.value;
  const found = useMemo(() => searchShelf(all, search), [all, search]);
  const openId = openBox.value?.id;
  const remove = async ({ id, name }: BoxEntry) => {
    const putBack = removeBox(id);
    tell(findView.removed(name), { key: `box-removed-${id}`, action: { label: findView.putBack, run: putBack } });
  };
  const show = (act: () => void) => {
    act();
    view.value = 'find';
  };
  return (
    <>
      <p class="about">{texts.about}</p>
      <p class="buttons">
        <button type="button" onClick={() => show(() => addBox())}>
          {texts.add}
        </button>
      </p>
      <p class="quiet" role="status">
        {all.length === 0 ? texts.none : found.length === 0 ? texts.noneFound : texts.count(found.length, all.length)}
      </p>
      <ul class="shelf-list">
        {found.map((box) => {
          const { id, name, notes, changed } = box;
          const isOpen = id === openId;
          return (
            <NamedCard
              key={id}
              name={name}
              isOpen={isOpen}
              when={[
                ...(isOpen ? [texts.current] : []),
                ...(changed > 0 ? [shelfWords.changed(shelfWords.when(changed))] : []),
              ].join('. ')}
              notes={notes}
              onOpen={() => show(() => chooseBox(id))}
              onCopy={() => kept(copyBox(box))}
              onRename={(text) => kept(renameBox(box, text))}
              onRemove={() => remove(box)}
              onGone={onGone}
            />
          );
        })}
      </ul>
    </>
  );
}
