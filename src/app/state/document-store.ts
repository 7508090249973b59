import { type DBSchema, type IDBPDatabase, type OpenDBCallbacks, openDB } from 'idb';

/** What is kept of one document. */
export interface StoredDocument {
  readonly text?: string;
  readonly history?: unknown;
}

/**
 * Documents kept in this browser, each under its id, in two places: one that is written before the call returns, so
 * that nothing is lost when the page is left, and one that is on the disk when its promise is fulfilled, so that
 * nothing is lost when the browser is killed. Every function may throw or reject: storage can be blocked or full.
 */
export interface DocumentStore {
  readonly readNow: (id: string) => string | null;
  readonly writeNow: (id: string, text: string) => void;
  /** Puts a text that cannot be used where nothing writes over it. */
  readonly setAside: (id: string, text: string) => void;
  readonly read: (id: string) => Promise<StoredDocument>;
  /** Parts that are left out stay as they were kept. */
  readonly write: (id: string, document: StoredDocument) => Promise<void>;
  /** Calls back when another tab has written the document, until `signal` ends it. */
  readonly watch: (id: string, changed: (text: string) => void, signal?: AbortSignal) => void;
}

interface Schema extends DBSchema {
  texts: { key: string; value: string };
  histories: { key: string; value: unknown };
}

const DATABASE = 'faintwave';
/** The first versions of the page knew one document and kept it here. */
const OLD_KEY = 'faintwave.set';
const keyOf = (id: string): string => `faintwave.document.${id}`;
const asideKeyOf = (id: string): string => `${keyOf(id)}.aside`;

/**
 * Opens the database. A browser that was killed may hold it for a while after it is started again; only that is waited
 * for, what is blocked or of another version is told at once.
 */
async function openPatiently(events: OpenDBCallbacks<Schema>): Promise<IDBPDatabase<Schema>> {
  for (const pause of [100, 300, 1000, 3000])
    try {
      return await openDB<Schema>(DATABASE, 1, events);
    } catch (error) {
      if (!(error instanceof DOMException && error.name === 'UnknownError')) throw error;
      await new Promise((resolve) => setTimeout(resolve, pause));
    }
  return openDB<Schema>(DATABASE, 1, events);
}

/** @param firstId id of the document that takes over what the first versions kept. */
export function openDocumentStore(firstId: string): DocumentStore {
  let connection: Promise<IDBPDatabase<Schema>> | undefined;
  const forget = () => {
    connection = undefined;
  };
  const connect = () => {
    connection ??= openPatiently({
      upgrade(database) {
        database.createObjectStore('texts');
        database.createObjectStore('histories');
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
    setAside(id, text) {
      localStorage.setItem(asideKeyOf(id), text);
      localStorage.removeItem(keyOf(id));
      if (id === firstId) localStorage.removeItem(OLD_KEY);
    },
    async read(id) {
      const database = await connect();
      const [text, history] = await Promise.all([database.get('texts', id), database.get('histories', id)]);
      return { text, history };
    },
    async write(id, { text, history }) {
      const database = await connect();
      const transaction = database.transaction(['texts', 'histories'], 'readwrite', { durability: 'strict' });
      const puts = [
        text === undefined ? undefined : transaction.objectStore('texts').put(text, id),
        history === undefined ? undefined : transaction.objectStore('histories').put(history, id),
      ];
      // Not left to when the puts are done: the page may be gone by then.
      transaction.commit();
      await Promise.all([...puts, transaction.done]);
    },
    watch(id, changed, signal) {
      const heard = ({ key, newValue }: StorageEvent) => {
        if (key === keyOf(id) && newValue !== null) changed(newValue);
      };
      addEventListener('storage', heard, { signal });
    },
  };
}
