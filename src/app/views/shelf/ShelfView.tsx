import { useEffect, useMemo, useRef, useState } from 'preact/hooks';
import { shelfWords as texts } from '../../../outputs/words/index.ts';
import { isBeginning } from '../../state/begin.ts';
import { useOpenSet, usePlaces, useShelf } from '../../state/set-context.ts';
import { type ShelfEntry, searchShelf } from '../../state/shelf/shelf-entry.ts';
import { ArchiveButtons } from './ArchiveButtons.tsx';
import { CardList } from './CardList.tsx';
import { CompareButton } from './CompareSets.tsx';
import { ShareLink } from './ShareLink.tsx';
import { ShelfBoxes } from './ShelfBoxes.tsx';
import { ShelfCard } from './ShelfCard.tsx';
import { ShelfPlaces } from './ShelfPlaces.tsx';
import { Versions } from './Versions.tsx';
import { WriteUpCard } from './WriteUpCard.tsx';
import './shelf.css';

/** All sets, boxes and places of this browser, and of the set in focus its link and versions. */
export function ShelfView() {
  const shelf = useShelf();
  const { id } = useOpenSet();
  const [search, setSearch] = useState('');
  const entries = shelf.entries.value;
  const found = useMemo(() => searchShelf(entries ?? [], search), [entries, search]);
  useEffect(() => void shelf.refresh(), [shelf]);
  const title = useRef<HTMLHeadingElement>(null);
  const [kind, setKind] = useState<keyof typeof texts.kind>('sets');
  const places = usePlaces();
  useEffect(() => void places.refresh(), [places]);
  const onGone = () => title.current?.focus({ preventScroll: true });
  return (
    <section class="shelf" aria-labelledby="shelf-title">
      <div class="shelf-sets">
        <h2 id="shelf-title" ref={title} tabIndex={-1}>
          {texts.title}
        </h2>
        <fieldset class="shelf-kinds">
          <legend class="visually-hidden">{texts.kinds}</legend>
          {(Object.keys(texts.kind) as (keyof typeof texts.kind)[]).map((one) => (
            <button key={one} type="button" aria-pressed={kind === one} onClick={() => setKind(one)}>
              {texts.kind[one]}
            </button>
          ))}
        </fieldset>
        {kind === 'sets' && <p class="about">{texts.about}</p>}
        {shelf.isBlocked.value && (
          <p class="problem" role="alert">
            {texts.blocked}
          </p>
        )}
        <div class="shelf-tools">
          <label class="shelf-search">
            <span class="visually-hidden">{texts.search[kind]}</span>
            <input
              type="text"
              value={search}
              placeholder={texts.search[kind]}
              onInput={(event) => setSearch(event.currentTarget.value)}
            />
          </label>
          <button
            type="button"
            onClick={() => {
              isBeginning.value = true;
            }}
          >
            {texts.fromBench}
          </button>
          <CompareButton />
          <ArchiveButtons />
        </div>
        {kind === 'boxes' ? (
          <ShelfBoxes search={search} onGone={onGone} />
        ) : kind === 'places' ? (
          <ShelfPlaces search={search} onGone={onGone} />
        ) : (
          <Sets found={found} all={entries?.length} search={search} onGone={onGone} />
        )}
        {kind === 'sets' && <Deleted />}
        <Persistence />
      </div>
      <div class="shelf-one">
        <ShareLink key={`link of ${id}`} />
        <WriteUpCard key={`write-up of ${id}`} />
        <Versions />
      </div>
    </section>
  );
}

interface SetsProps {
  readonly found: readonly ShelfEntry[];
  /** How many sets there are; undefined until it is known. */
  readonly all: number | undefined;
  readonly search: string;
  readonly onGone: () => void;
}

function Sets({ found, all, search, onGone }: SetsProps) {
  const { id } = useOpenSet();
  return (
    <>
      {all !== undefined && (
        <p class="quiet" role="status">
          {all > 0 && found.length === 0 ? texts.noneFound : texts.count(found.length, all)}
        </p>
      )}
      <CardList
        found={found}
        search={search}
        card={(entry) => <ShelfCard key={entry.id} entry={entry} isOpen={entry.id === id} onGone={onGone} />}
      />
    </>
  );
}

function Deleted() {
  const shelf = useShelf();
  const gone = shelf.deleted.value;
  if (gone.length === 0) return null;
  return (
    <details class="shelf-deleted">
      <summary>{texts.deletedTitle(gone.length)}</summary>
      <ul>
        {gone.map((entry) => (
          <li key={entry.id}>
            <span>
              {entry.name || texts.unnamed}{' '}
              <span class="quiet">{texts.deletedOn(texts.when(entry.deleted ?? entry.changed))}</span>
            </span>
            <button
              type="button"
              aria-label={texts.restoreNamed(entry.name || texts.unnamed)}
              onClick={() => void shelf.restore(entry)}
            >
              {texts.undoDelete}
            </button>
          </li>
        ))}
      </ul>
    </details>
  );
}

/** Whether the browser may clear the sets away by itself; it is asked not to. */
function Persistence() {
  const [isPersistent, setPersistent] = useState<boolean | undefined>();
  useEffect(() => {
    const { storage } = navigator as Partial<Navigator>;
    storage
      ?.persist?.()
      .then(setPersistent)
      .catch(() => setPersistent(false));
  }, []);
  if (isPersistent === undefined) return null;
  return <p class="quiet">{isPersistent ? texts.isPersistent : texts.isNotPersistent}</p>;
}
