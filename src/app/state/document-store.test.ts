import { IDBFactory, IDBObjectStore } from 'fake-indexeddb';
import { beforeEach, expect, it, vi } from 'vitest';
import 'fake-indexeddb/auto';
import { openDB } from 'idb';
import { openDocumentStore } from './document-store.ts';

const local = new Map<string, string>();

/** Its keys are its own, as in a browser. */
const localStorageOf = (kept: Map<string, string>) =>
  new Proxy(
    {
      getItem: (key: string) => kept.get(key) ?? null,
      setItem: (key: string, value: string) => void kept.set(key, value),
      removeItem: (key: string) => void kept.delete(key),
    },
    {
      ownKeys: () => [...kept.keys()],
      getOwnPropertyDescriptor: (_target, key) => ({
        value: kept.get(String(key)),
        enumerable: true,
        configurable: true,
      }),
    },
  );

beforeEach(() => {
  local.clear();
  vi.unstubAllGlobals();
  vi.stubGlobal('indexedDB', new IDBFactory());
  vi.stubGlobal('localStorage', localStorageOf(local));
});

it('keeps several documents apart, in both places, and finds them when opened anew', async () => {
  const store = openDocumentStore('first');
  expect(await store.read('first')).toEqual({});
  for (const id of ['first', 'second']) {
    store.writeNow(id, `now ${id}`);
    await store.write(id, { text: `disk ${id}`, history: { of: id } });
  }
  await store.write('second', { text: 'disk again' });
  const anew = openDocumentStore('first');
  expect([anew.readNow('first'), anew.readNow('second'), anew.readNow('third')]).toEqual([
    'now first',
    'now second',
    null,
  ]);
  expect(await anew.read('first')).toEqual({ text: 'disk first', history: { of: 'first' } });
  expect(await anew.read('second')).toEqual({ text: 'disk again', history: { of: 'second' } });
});

it('keeps what the steps of a history share only once', async () => {
  const store = openDocumentStore('first');
  const shared = { name: 'shared' };
  await store.write('first', { history: [{ shared }, { shared }] });
  const { history } = (await store.read('first')) as { history: { shared: unknown }[] };
  expect(history[0].shared).toBe(history[1].shared);
});

it('takes over what the first versions kept, for the first document only, until that is written', () => {
  local.set('faintwave.set', 'old');
  const store = openDocumentStore('first');
  expect([store.readNow('first'), store.readNow('second')]).toEqual(['old', null]);
  store.writeNow('second', 'other');
  expect(store.readNow('first')).toBe('old');
  store.writeNow('first', 'new');
  expect(store.readNow('first')).toBe('new');
  expect(local.has('faintwave.set')).toBe(false);
});

it('rejects where the database fails, and works again when that does', async () => {
  const store = openDocumentStore('first');
  const put = vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementation(() => {
    throw new DOMException('full', 'QuotaExceededError');
  });
  await expect(store.write('first', { text: 'a' })).rejects.toThrow('full');
  put.mockRestore();
  await store.write('first', { text: 'b' });
  expect(await store.read('first')).toEqual({ text: 'b' });

  const whole = indexedDB;
  vi.stubGlobal('indexedDB', {
    open: () => {
      throw new DOMException('blocked', 'SecurityError');
    },
  });
  const blocked = openDocumentStore('first');
  await expect(blocked.read('first')).rejects.toThrow('blocked');
  vi.stubGlobal('indexedDB', whole);
  expect(await blocked.read('first')).toEqual({ text: 'b' });
});

it('waits for a database that a killed browser still holds', async () => {
  await openDocumentStore('first').write('first', { text: 'kept' });
  const whole = indexedDB;
  let held = 2;
  vi.stubGlobal('indexedDB', {
    open: (...given: Parameters<IDBFactory['open']>) => {
      if (held-- > 0) throw new DOMException('the files are in use', 'UnknownError');
      return whole.open(...given);
    },
  });
  expect(await openDocumentStore('first').read('first')).toEqual({ text: 'kept' });
  expect(held).toBe(-1);
});

it('lists what it keeps, with the versions of each, and forgets all of one that is removed', async () => {
  const store = openDocumentStore('first');
  const entry = (id: string) => ({ id, name: `Set ${id}`, notes: '', fileName: 'set.json', changed: 1 });
  for (const id of ['a', 'ab']) {
    await store.write(id, { text: id, entry: entry(id) });
    for (const at of [30, 10, 20]) await store.write(id, { version: { at, written: `${id} ${at}` } });
  }
  expect(await store.entries()).toEqual([entry('a'), entry('ab')]);
  expect((await store.versions('a')).map(({ at }) => at)).toEqual([10, 20, 30]);
  store.writeNow('a', 'a');
  await store.remove('a');
  expect([await store.read('a'), await store.versions('a'), store.readNow('a')]).toEqual([{}, [], null]);
  expect((await store.versions('ab')).length).toBe(3);
  expect(await store.entries()).toEqual([entry('ab')]);
});

it('empties the first place of a document only if that holds what the disk has', () => {
  const store = openDocumentStore('first');
  store.writeNow('a', 'later');
  store.forgetNow('a', 'earlier');
  expect([store.readNow('a'), store.idsNow()]).toEqual(['later', ['a']]);
  store.forgetNow('a', 'later');
  expect([store.readNow('a'), store.idsNow()]).toEqual([null, []]);
});

it('lists what the page kept before there was a shelf', async () => {
  const old = await openDB('faintwave', 1, {
    upgrade(database) {
      database.createObjectStore('texts');
      database.createObjectStore('histories');
    },
  });
  const kept = { revision: 4, written: { name: 'Shed set', notes: 'in the shed' }, fileName: 'shed.json', tab: 'x' };
  await old.put('texts', JSON.stringify(kept), 'first');
  old.close();
  const store = openDocumentStore('first');
  expect(await store.entries()).toMatchObject([{ id: 'first', name: 'Shed set', notes: 'in the shed' }]);
  expect((await store.read('first')).text).toContain('Shed set');
});

it('an older page uses the database that a newer one has made', async () => {
  const now = openDocumentStore('first');
  await now.write('first', { text: 'kept' });
  // The page that is open lets the newer one in.
  const newer = await openDB('faintwave', 99, { upgrade: (database) => void database.createObjectStore('of later') });
  await newer.put('texts', 'of the newer page', 'first');
  newer.close();
  for (const store of [now, openDocumentStore('first')]) {
    expect(await store.read('first')).toMatchObject({ text: 'of the newer page' });
    await store.write('first', { history: 1 });
  }
});
