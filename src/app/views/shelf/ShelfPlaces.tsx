import { useEffect, useMemo, useState } from 'preact/hooks';
import { valueAtPath } from '../../../engine/index.ts';
import { shelfWords, keptPlaceWords as texts } from '../../../outputs/words/index.ts';
import { writtenName } from '../../description/written-name.ts';
import { tell } from '../../state/notices.ts';
import { useOpenSet, usePlaces, useShelf } from '../../state/set-context.ts';
import { notesOf, type SetAtPlace, searchPlaces } from '../../state/shelf/kept-places.ts';
import type { KeptPlace } from '../../state/shelf/place-store.ts';
import { focusIfLost } from '../../widgets/focus-if-lost.ts';
import { CardList } from './CardList.tsx';
import { NamedCard } from './NamedCard.tsx';

interface Props {
  readonly search: string;
  readonly onGone: () => void;
}

const NONE: readonly KeptPlace[] = [];
type Uses = ReadonlyMap<string, readonly SetAtPlace[]>;

/** The places that are kept once, and the sets that use each. */
export function ShelfPlaces({ search, onGone }: Props) {
  const places = usePlaces();
  const shelf = useShelf();
  const { whole } = useOpenSet();
  const all = places.all.value ?? NONE;
  const entries = shelf.entries.value;
  const here = valueAtPath(whole.value, ['place']);
  const hereText = useMemo(() => JSON.stringify(here), [here]);
  const found = useMemo(() => searchPlaces(all, search), [all, search]);
  const [uses, setUses] = useState<Uses>(new Map());
  useEffect(() => {
    let isHere = true;
    void places.uses().then((now) => isHere && setUses(now));
    return () => {
      isHere = false;
    };
  }, [places, all, entries, hereText]);
  const keep = async () => {
    if ((await places.add(here)) === undefined) tell(texts.alreadyKept, { key: 'place-kept' });
  };
  return (
    <>
      <p class="about">{texts.about}</p>
      <p class="buttons">
        <button type="button" disabled={here === undefined} onClick={() => void keep()}>
          {texts.add}
        </button>
      </p>
      {places.isUnread.value && (
        <p class="problem" role="alert">
          {texts.notRead}
        </p>
      )}
      <p class="quiet" role="status">
        {all.length === 0 && places.isUnread.value
          ? ''
          : all.length === 0
            ? texts.none
            : found.length === 0
              ? texts.noneFound
              : texts.count(found.length, all.length)}
      </p>
      <CardList
        found={found}
        search={search}
        card={(place) => (
          <PlaceCard
            key={place.id}
            place={place}
            here={here}
            hereText={hereText}
            users={uses.get(place.id)}
            onGone={onGone}
          />
        )}
      />
    </>
  );
}

interface CardProps {
  readonly place: KeptPlace;
  /** The place of the open set, and its text. */
  readonly here: unknown;
  readonly hereText: string;
  /** Undefined until they are known. */
  readonly users: readonly SetAtPlace[] | undefined;
  readonly onGone: () => void;
}

function PlaceCard({ place, here, hereText, users, onGone }: CardProps) {
  const places = usePlaces();
  const { id: setId } = useOpenSet();
  const { id, written, changed } = place;
  const name = writtenName(written) || texts.unnamed;
  const stations = valueAtPath(written, ['stations']);
  const notes = notesOf(written);
  const isHere = useMemo(() => JSON.stringify(written) === hereText, [written, hereText]);
  const use =
    users && (users.length > 0 ? texts.usedBy(users.map((one) => one.name || shelfWords.unnamed)) : texts.unused);
  return (
    <NamedCard
      name={name}
      ownName={writtenName(written)}
      isOpen={isHere}
      when={`${texts.stations(Array.isArray(stations) ? stations.length : 0)}. ${shelfWords.changed(shelfWords.when(changed))}`}
      notes={[...(isHere ? [texts.inUse] : []), ...(use ? [use] : []), ...(notes === '' ? [] : [notes])].join(' ')}
      onCopy={() => void places.copy(id)}
      onRename={(text) => void places.rename(id, text)}
      onRemove={() => places.remove(id)}
      onGone={onGone}
    >
      {!isHere && (
        <>
          <button
            type="button"
            class="primary"
            aria-label={texts.useNamed(name)}
            onClick={({ currentTarget }) => keepFocusIn(currentTarget, places.use(id, setId))}
          >
            {texts.use}
          </button>
          <button
            type="button"
            aria-label={texts.takeOverNamed(name)}
            disabled={here === undefined}
            onClick={({ currentTarget }) => keepFocusIn(currentTarget, places.replace(id, here))}
          >
            {texts.takeOver}
          </button>
        </>
      )}
    </NamedCard>
  );
}

/** The button is gone once its work is done: its card keeps the focus. */
function keepFocusIn(button: HTMLElement, work: Promise<void>): void {
  const card = button.closest('.shelf-card');
  void work.then(() => focusIfLost(() => card?.querySelector<HTMLElement>('.shelf-rename')));
}
