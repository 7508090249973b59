import { type DBSchema, type IDBPDatabase, openDB } from 'idb';

/** A place that is kept once, for any number of sets. */
export interface KeptPlace {
  readonly id: string;
  /** As the `place` of a description is written. */
  readonly written: unknown;
  /** When it was changed last, ms since 1970. */
  readonly changed: number;
}

/** The places kept in this browser. Every function may reject: storage can be blocked or full. */
export interface PlaceStore {
  readonly all: () => Promise<readonly KeptPlace[]>;
  readonly put: (place: KeptPlace) => Promise<void>;
  readonly remove: (id: string) => Promise<void>;
}

interface Schema extends DBSchema {
  places: { key: string; value: KeptPlace };
}

/** Apart from the sets, so that neither waits for a change of the other's form. */
export function openPlaceStore(): PlaceStore {
  async function using<T>(work: (database: IDBPDatabase<Schema>) => Promise<T>): Promise<T> {
    const database = await openDB<Schema>('faintwave-places', 1, {
      upgrade: (made) => void made.createObjectStore('places', { keyPath: 'id' }),
    });
    try {
      return await work(database);
    } finally {
      database.close();
    }
  }
  return {
    all: () => using((database) => database.getAll('places')),
    put: (place) =>
      using(async (database) => {
        const transaction = database.transaction('places', 'readwrite', { durability: 'strict' });
        await Promise.all([transaction.store.put(place), transaction.done]);
      }),
    remove: (id) =>
      using(async (database) => {
        const transaction = database.transaction('places', 'readwrite', { durability: 'strict' });
        await Promise.all([transaction.store.delete(id), transaction.done]);
      }),
  };
}
