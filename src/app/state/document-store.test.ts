import { IDBFactory, IDBObjectStore } from 'fake-indexeddb';
import { beforeEach, expect, it, vi } from 'vitest';
import 'fake-indexeddb/auto';
import { openDocumentStore } from './document-store.ts';

const local = new Map<string, string>();

beforeEach(() => {
  local.clear();
  vi.unstubAllGlobals();
  vi.stubGlobal('indexedDB', new IDBFactory());
  vi.stubGlobal('localStorage', {
    getItem: (key: string) => local.get(key) ?? null,
    setItem: (key: string, value: string) => local.set(key, value),
    removeItem: (key: string) => local.delete(key),
  });
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
