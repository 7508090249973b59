import { type DBSchema, type IDBPDatabase, type OpenDBCallbacks, openDB } from 'idb';
import { readKept } from './kept.ts';
import { entryOf, type ShelfEntry } from './shelf/shelf-entry.ts';
import { type SetVersion, versionsToDrop } from './shelf/versions.ts';

/** What is kept of one document. */
export interface StoredDocument {
  readonly text?: string;
  readonly history?: unknown;
  /** How the shelf lists it. */
  readonly entry?: ShelfEntry;
  /** A state to go back to, added to those there are. */
  readonly version?: SetVersion;
}

/**
 * Documents kept in this browser, each under its id, in two places: one that is written before the call returns, so
 * that nothing is lost when the page is left, and one that is on the disk when its promise is fulfilled, so that
 * nothing is lost when the browser is killed. Every function may throw or reject: storage can be blocked or full.
 */
export interface DocumentStore {
  readonly readNow: (id: string) => string | null;
  readonly writeNow: (id: string, text: string) => void;
  /** Of what the first place holds. */
  readonly idsNow: () => readonly string[];
  /** Makes room in the first place, once the disk has the same text. */
  readonly forgetNow: (id: string, text: string) => void;
  /** Puts a text that cannot be used where nothing writes over it. */
  readonly setAside: (id: string, text: string) => void;
  readonly read: (id: string) => Promise<StoredDocument>;
  /** The text alone, without the steps to undo. */
  readonly readText: (id: string) => Promise<string | undefined>;
  /** Parts that are left out stay as they were kept. */
  readonly write: (id: string, document: StoredDocument) => Promise<void>;
  /** What the shelf lists. */
  readonly entries: () => Promise<readonly ShelfEntry[]>;
  /** Oldest first. */
  readonly versions: (id: string) => Promise<readonly SetVersion[]>;
  /** What was heard with it, as the text of a table; undefined: nothing yet. */
  readonly log: (id: string) => Promise<string | undefined>;
  /** Changes that text as it is then, whichever tab wrote it. @returns as it is now */
  readonly changeLog: (id: string, change: (text: string | undefined) => string) => Promise<string>;
  /** For good, from both places; left as it is where one of them holds a later revision than `upTo`. */
  readonly remove: (id: string, upTo?: number) => Promise<void>;
}

interface Schema extends DBSchema {
  texts: { key: string; value: string };
  histories: { key: string; value: unknown };
  entries: { key: string; value: ShelfEntry };
  versions: { key: [string, number]; value: SetVersion };
  logs: { key: string; value: string };
}

const STORES = ['texts', 'histories', 'entries', 'versions', 'logs'] as const;
const DATABASE = 'faintwave';
/** 1: texts and histories; 2: entries of the shelf and versions; 3: logs. */
const FORM = 3;
/** The first versions of the page knew one document and kept it here. */
const OLD_KEY = 'faintwave.set';
const PREFIX = 'faintwave.document.';
const ASIDE = '.aside';
const keyOf = (id: string): string => PREFIX + id;
const asideKeyOf = (id: string): string => keyOf(id) + ASIDE;
const versionsOf = (id: string): IDBKeyRange => IDBKeyRange.bound([id, -Infinity], [id, Infinity]);
/**
 * Opens the database. A browser that was killed may hold it for a while after it is started again; only that is waited
 * for, what is blocked is told at once. One that a newer version of the page has made is used as it is.
 */
async function openPatiently(events: OpenDBCallbacks<Schema>): Promise<IDBPDatabase<Schema>> {
  for (const pause of [100, 300, 1000, 3000])
    try {
      return await openDB<Schema>(DATABASE, FORM, events);
    } catch (error) {
      const name = error instanceof DOMException ? error.name : '';
      if (name === 'VersionError') return openDB<Schema>(DATABASE, undefined, events);
      if (name !== 'UnknownError') throw error;
      await new Promise((resolve) => setTimeout(resolve, pause));
    }
  return openDB<Schema>(DATABASE, FORM, events);
}

/** @param firstId id of the document that takes over what the first versions kept. */
export function openDocumentStore(firstId: string): DocumentStore {
  let connection: Promise<IDBPDatabase<Schema>> | undefined;
  const forget = () => {
    connection = undefined;
  };
  const connect = () => {
    connection ??= openPatiently({
      async upgrade(database, old, _new, transaction) {
        if (old < 1) {
          database.createObjectStore('texts');
          database.createObjectStore('histories');
        }
        if (old < 3) database.createObjectStore('logs');
        if (old >= 2) return;
        const entries = database.createObjectStore('entries');
        database.createObjectStore('versions');
        const texts = transaction.objectStore('texts');
        for (const id of await texts.getAllKeys()) {
          const kept = readKept((await texts.get(id)) ?? '');
          if (kept) await entries.put(entryOf(id, kept, Date.now()), id);
        }
      },
      blocking(_now, _wanted, event) {
        (event.target as IDBDatabase).close();
        forget();
      },
      terminated: forget,
    });
    connection.catch(forget);
    return connection;
  };
  return {
    readNow: (id) => localStorage.getItem(keyOf(id)) ?? (id === firstId ? localStorage.getItem(OLD_KEY) : null),
    writeNow(id, text) {
      localStorage.setItem(keyOf(id), text);
      if (id === firstId) localStorage.removeItem(OLD_KEY);
    },
    idsNow: () =>
      Object.keys(localStorage)
        .filter((key) => key.startsWith(PREFIX) && !key.endsWith(ASIDE))
        .map((key) => key.slice(PREFIX.length)),
    forgetNow(id, text) {
      if (localStorage.getItem(keyOf(id)) === text) localStorage.removeItem(keyOf(id));
    },
    setAside(id, text) {
      localStorage.setItem(asideKeyOf(id), text);
      localStorage.removeItem(keyOf(id));
      if (id === firstId) localStorage.removeItem(OLD_KEY);
    },
    readText: async (id) => (await connect()).get('texts', id),
    async read(id) {
      const database = await connect();
      const [text, history] = await Promise.all([database.get('texts', id), database.get('histories', id)]);
      return { text, history };
    },
    async write(id, { text, history, entry, version }) {
      const database = await connect();
      const transaction = database.transaction(STORES, 'readwrite', { durability: 'strict' });
      const puts: Promise<unknown>[] = [];
      if (text !== undefined) puts.push(transaction.objectStore('texts').put(text, id));
      if (history !== undefined) puts.push(transaction.objectStore('histories').put(history, id));
      if (entry) puts.push(transaction.objectStore('entries').put(entry, id));
      if (version) puts.push(transaction.objectStore('versions').put(version, [id, version.at]));
      // Not left to when the puts are done: the page may be gone by then.
      transaction.commit();
      await Promise.all([...puts, transaction.done]);
      if (version) await thin(database, id, version.at);
    },
    async entries() {
      return (await connect()).getAll('entries');
    },
    async versions(id) {
      return (await connect()).getAll('versions', versionsOf(id));
    },
    async log(id) {
      return (await connect()).get('logs', id);
    },
    async changeLog(id, change) {
      const transaction = (await connect()).transaction('logs', 'readwrite', { durability: 'strict' });
      const text = change(await transaction.store.get(id));
      await Promise.all([transaction.store.put(text, id), transaction.done]);
      return text;
    },
    async remove(id, upTo) {
      const database = await connect();
      const transaction = database.transaction(STORES, 'readwrite', { durability: 'strict' });
      const texts = [await transaction.objectStore('texts').get(id), localStorage.getItem(keyOf(id))];
      if (texts.some((text) => isLater(text, upTo))) return transaction.done;
      await Promise.all([
        transaction.objectStore('texts').delete(id),
        transaction.objectStore('histories').delete(id),
        transaction.objectStore('entries').delete(id),
        transaction.objectStore('versions').delete(versionsOf(id)),
        transaction.objectStore('logs').delete(id),
        transaction.done,
      ]);
      // Another tab may have changed it meanwhile.
      if (!isLater(localStorage.getItem(keyOf(id)), upTo)) localStorage.removeItem(keyOf(id));
    },
  };
}

const isLater = (text: string | null | undefined, revision: number | undefined): boolean =>
  revision !== undefined && (readKept(text ?? '')?.revision ?? 0) > revision;

/** Of many versions those that are needed least go. */
async function thin(database: IDBPDatabase<Schema>, id: string, now: number): Promise<void> {
  const keys = await database.getAllKeys('versions', versionsOf(id));
  const dropped = versionsToDrop(
    keys.map(([, at]) => at),
    now,
  );
  for (const at of dropped) await database.delete('versions', [id, at]);
}
