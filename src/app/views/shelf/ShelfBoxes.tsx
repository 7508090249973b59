import { useMemo } from 'preact/hooks';
import { findView, shelfWords, keptBoxWords as texts } from '../../../outputs/words/index.ts';
import { writtenName } from '../../description/written-name.ts';
import { saveUnreadableBox } from '../../state/box-keeper.ts';
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
  type UnreadableBox,
  unreadableBoxes,
} from '../../state/open-boxes.ts';
import { view } from '../../state/page-view.ts';
import { searchShelf } from '../../state/shelf/shelf-entry.ts';
import { focusIfLost } from '../../widgets/focus-if-lost.ts';
import { CardList } from './CardList.tsx';
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
  const unreadable = unreadableBoxes.value;
  const remove = async ({ id, name }: Pick<BoxEntry, 'id' | 'name'>) => {
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
        {all.length + unreadable.length === 0
          ? texts.none
          : found.length === 0
            ? texts.noneFound
            : texts.count(found.length, all.length)}
      </p>
      {unreadable.length > 0 && (
        <ul class="shelf-list">
          {unreadable.map((box) => (
            <UnreadableCard
              key={box.id}
              box={box}
              onRemove={() => void remove(box).then(() => focusIfLost(() => void onGone()))}
            />
          ))}
        </ul>
      )}
      <CardList
        found={found}
        search={search}
        card={(box) => {
          const { id, name, notes, changed } = box;
          const isOpen = id === openId;
          return (
            <NamedCard
              key={id}
              name={name}
              ownName={writtenName(box.written)}
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
        }}
      />
    </>
  );
}

function UnreadableCard({ box, onRemove }: { readonly box: UnreadableBox; readonly onRemove: () => void }) {
  const { name, text } = box;
  return (
    <li class="shelf-card">
      <p class="shelf-name">{name}</p>
      <p class="problem">{texts.unreadable}</p>
      <p class="shelf-acts">
        <button type="button" aria-label={texts.saveNamed(name)} onClick={() => saveUnreadableBox(text)}>
          {texts.save}
        </button>
        <button type="button" aria-label={shelfWords.removeNamed(name)} onClick={onRemove}>
          {shelfWords.remove}
        </button>
      </p>
    </li>
  );
}
