import { type ReadonlySignal, signal } from '@preact/signals';
import { isRecord, readValue, valueAtPath, withValueAt } from '../../../engine/index.ts';
import { shelfWords, keptPlaceWords as texts } from '../../../outputs/words/index.ts';
import { writtenName } from '../../description/written-name.ts';
import { dismiss, notices, tell } from '../notices.ts';
import { nextTurn } from './next-turn.ts';
import type { KeptPlace, PlaceStore } from './place-store.ts';
import type { Shelf } from './shelf.ts';
import { withAllWords } from './with-all-words.ts';

/** As much of the sets as places have to do with. */
export type SetsOfPlaces = Pick<Shelf, 'entries' | 'kept' | 'isOpen' | 'changeSet' | 'newSetId' | 'now'>;

/** A set that stands at a kept place. */
export interface SetAtPlace {
  readonly id: string;
  readonly name: string;
}

/** A set that was moved to another place, as it was and as it became. */
interface Moved {
  readonly id: string;
  readonly before: unknown;
  readonly after: unknown;
}

/**
 * Places that are kept once. A set holds its place whole, so that its file needs no other: it uses a kept place while the
 * two are the same.
 */
export interface Places {
  /** Changed last first, as they were read last; undefined until they are looked for. */
  readonly all: ReadonlySignal<readonly KeptPlace[] | undefined>;
  /** The browser did not give them out when they were looked for last: there may be more. */
  readonly isUnread: ReadonlySignal<boolean>;
  readonly refresh: () => Promise<void>;
  /** As `refresh`, but only where they were looked for before. */
  readonly refreshAgain: () => Promise<void>;
  /** @returns its id; undefined where the same is kept already */
  readonly add: (written: unknown) => Promise<string | undefined>;
  readonly copy: (id: string) => Promise<void>;
  /** As `replace`, by another name. */
  readonly rename: (id: string, name: string) => Promise<void>;
  /** Another state of a kept place; the sets that use the one before are offered it. */
  readonly replace: (id: string, written: unknown) => Promise<void>;
  /** The message of it puts it back. */
  readonly remove: (id: string) => Promise<void>;
  /** The set stands at this place from now on. */
  readonly use: (id: string, setId: string) => Promise<void>;
  /** The sets that use each kept place, by its id. */
  readonly uses: () => Promise<ReadonlyMap<string, readonly SetAtPlace[]>>;
}

const PLACE = ['place'];
const textOf = (written: unknown): string => JSON.stringify(written) ?? '';

/** Sets that are looked at in one task. */
const AT_ONCE = 20;

const shownName = (written: unknown): string => writtenName(written) || texts.unnamed;
const shownSet = ({ name }: Pick<SetAtPlace, 'name'>): string => name || shelfWords.unnamed;

/** Notes of a place as written; '' where it has none. */
export function notesOf(written: unknown): string {
  const notes = valueAtPath(written, ['notes']);
  return typeof notes === 'string' ? notes : '';
}

/** Those in whose name, notes or names of stations every word of the text is. */
export const searchPlaces = (places: readonly KeptPlace[], text: string): readonly KeptPlace[] =>
  withAllWords(places, text, ({ written }) => {
    const stations = valueAtPath(written, ['stations']);
    const names = Array.isArray(stations) ? stations.map(writtenName) : [];
    return [writtenName(written), notesOf(written), ...names].join('\n');
  });

/** @param tellOthers tells other tabs that the list is another */
export function createPlaces(store: PlaceStore, sets: SetsOfPlaces, tellOthers: () => void): Places {
  const all = signal<readonly KeptPlace[] | undefined>(undefined);
  const isUnread = signal(false);
  let isLookedFor = false;
  let lastRead: readonly KeptPlace[] = [];
  /** What could not be written counts for as long as the page lasts. */
  const held = new Map<string, KeptPlace | undefined>();
  /** The place of each set, as of when it was changed. */
  const placeTexts = new Map<string, { readonly changed: number; readonly text: string }>();

  async function refresh(): Promise<void> {
    isLookedFor = true;
    try {
      lastRead = await store.all();
      isUnread.value = false;
      dismiss('places-not-read');
    } catch {
      if (!isUnread.peek()) tell(texts.notRead, { key: 'places-not-read', stays: true });
      isUnread.value = true;
    }
    const found = new Map(lastRead.map((place) => [place.id, place]));
    for (const [id, place] of held) {
      if (place) found.set(id, place);
      else found.delete(id);
    }
    all.value = [...found.values()].sort((a, b) => b.changed - a.changed);
  }

  async function write(id: string, place: KeptPlace | undefined): Promise<void> {
    try {
      await (place ? store.put(place) : store.remove(id));
      held.delete(id);
    } catch {
      held.set(id, place);
      tell(texts.notKept, { key: 'place-not-kept', stays: true });
    }
    await refresh();
    tellOthers();
  }

  const placeOf = (id: string): KeptPlace | undefined => all.peek()?.find((one) => one.id === id);

  async function add(written: unknown): Promise<string | undefined> {
    await refresh();
    const text = textOf(written);
    if (all.peek()?.some((one) => textOf(one.written) === text)) return undefined;
    const id = sets.newSetId();
    await write(id, { id, written, changed: sets.now() });
    return id;
  }

  /** Sets by the text of their place. */
  async function setsByPlace(): Promise<ReadonlyMap<string, readonly SetAtPlace[]>> {
    const found = new Map<string, SetAtPlace[]>();
    for (const [done, { id, name, changed }] of (sets.entries.peek() ?? []).entries()) {
      if (done % AT_ONCE === AT_ONCE - 1) await nextTurn();
      let known = placeTexts.get(id);
      // The list learns a moment later of what is changed in an open set.
      if (known?.changed !== changed || sets.isOpen(id)) {
        known = { changed, text: textOf(valueAtPath((await sets.kept(id))?.written, PLACE)) };
        placeTexts.set(id, known);
      }
      found.set(known.text, [...(found.get(known.text) ?? []), { id, name }]);
    }
    return found;
  }

  /** @returns the change as it was made; undefined: it cannot be made */
  async function move(one: SetAtPlace, place: unknown): Promise<Moved | undefined> {
    const before = (await sets.kept(one.id))?.written;
    if (before === undefined) return undefined;
    const isDone = await sets.changeSet(one.id, (now) => withValueAt(now, PLACE, place), texts.label);
    return isDone ? { id: one.id, before, after: (await sets.kept(one.id))?.written } : undefined;
  }

  /** What was changed since stays so. */
  async function moveBack(moved: readonly Moved[]): Promise<void> {
    for (const { id, before, after } of moved)
      await sets.changeSet(
        id,
        (now) => (textOf(now) === textOf(after) ? before : withValueAt(now, PLACE, valueAtPath(before, PLACE))),
        texts.label,
      );
  }

  /** The last change of a place that was offered to sets. */
  let offered: { readonly before: unknown; readonly after: unknown } | undefined;

  /** @returns whether there is a set to offer it to */
  async function offer(before: unknown, after: unknown): Promise<boolean> {
    const users = (await setsByPlace()).get(textOf(before)) ?? [];
    if (users.length === 0) return false;
    offered = { before, after };
    const name = shownName(after);
    tell(texts.changed(name, users.map(shownSet)), {
      key: 'place-changed',
      stays: true,
      action: { label: texts.bring(users.length), run: () => void bring(name, users, before, after) },
    });
    return true;
  }

  /** A set has another place now: a change is offered only to those that still have the place before it. */
  async function offerAgain(): Promise<void> {
    const isOffered = notices.peek().some(({ key }) => key === 'place-changed');
    if (offered && isOffered && !(await offer(offered.before, offered.after))) dismiss('place-changed');
  }

  async function bring(name: string, users: readonly SetAtPlace[], before: unknown, after: unknown): Promise<void> {
    dismiss('place-changed');
    const done: Moved[] = [];
    const refused: string[] = [];
    for (const one of users) {
      await nextTurn();
      const written = (await sets.kept(one.id))?.written;
      if (textOf(valueAtPath(written, PLACE)) !== textOf(before)) continue;
      const isWorse = readValue(written).ok && !readValue(withValueAt(written, PLACE, after)).ok;
      const moved = isWorse ? undefined : await move(one, after);
      if (moved) done.push(moved);
      else refused.push(shownSet(one));
    }
    tell(texts.brought(name, done.length, refused), {
      key: 'place-brought',
      stays: refused.length > 0,
      action: { label: texts.undo, run: () => void moveBack(done) },
    });
  }

  async function replace(id: string, written: unknown): Promise<void> {
    const before = placeOf(id);
    if (!before || textOf(before.written) === textOf(written)) return;
    await write(id, { id, written, changed: sets.now() });
    await offer(before.written, written);
  }

  return {
    all,
    isUnread,
    refresh,
    async refreshAgain() {
      if (isLookedFor) await refresh();
    },
    add,
    replace,
    async copy(id) {
      const from = placeOf(id)?.written;
      if (isRecord(from)) await add(withValueAt(from, ['name'], texts.copyOf(shownName(from))));
    },
    async rename(id, name) {
      const from = placeOf(id)?.written;
      if (isRecord(from)) await replace(id, withValueAt(from, ['name'], name));
    },
    async remove(id) {
      const gone = placeOf(id);
      if (!gone) return;
      await write(id, undefined);
      tell(texts.removed(shownName(gone.written)), {
        key: `place-removed-${id}`,
        action: { label: texts.putBack, run: () => void write(id, gone) },
      });
    },
    async use(id, setId) {
      const place = placeOf(id)?.written;
      if (place === undefined) return;
      const name = sets.entries.peek()?.find((one) => one.id === setId)?.name ?? '';
      const moved = await move({ id: setId, name }, place);
      if (!moved) return;
      tell(texts.used(shownSet({ name }), shownName(place)), {
        key: 'place-used',
        action: { label: texts.undo, run: () => void moveBack([moved]) },
      });
      await offerAgain();
    },
    async uses() {
      const byPlace = await setsByPlace();
      return new Map((all.peek() ?? []).map(({ id, written }) => [id, byPlace.get(textOf(written)) ?? []]));
    },
  };
}
