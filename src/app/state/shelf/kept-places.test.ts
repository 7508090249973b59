import { signal } from '@preact/signals';
import { afterEach, expect, it } from 'vitest';
import { valueAtPath, withValueAt } from '../../../engine/index.ts';
import { DEMO } from '../examples.ts';
import type { Kept } from '../kept.ts';
import { notices } from '../notices.ts';
import { createPlaces, type SetsOfPlaces, searchPlaces } from './kept-places.ts';
import type { KeptPlace, PlaceStore } from './place-store.ts';
import { entryOf, type ShelfEntry } from './shelf-entry.ts';

afterEach(() => {
  notices.value = [];
});

function storeOf(): PlaceStore & { isBlocked: boolean; readonly there: Map<string, KeptPlace> } {
  const there = new Map<string, KeptPlace>();
  const check = () => {
    if (store.isBlocked) throw new Error('blocked');
  };
  const store = {
    isBlocked: false,
    there,
    all: async () => {
      check();
      return [...there.values()];
    },
    put: async (place: KeptPlace) => {
      check();
      there.set(place.id, place);
    },
    remove: async (id: string) => {
      check();
      there.delete(id);
    },
  };
  return store;
}

const demo = JSON.parse(DEMO.text) as { place: object };

/** Sets of a shelf in memory, by their id. */
function setsOf(all: Readonly<Record<string, unknown>>) {
  const written = new Map(Object.entries(all));
  const entries = signal<readonly ShelfEntry[]>([]);
  let now = 1000;
  const list = () => {
    entries.value = [...written].map(([id, one]) => entryOf(id, { written: one, fileName: '' }, now));
  };
  list();
  let count = 0;
  const sets: SetsOfPlaces = {
    entries,
    kept: async (id) => ({ written: written.get(id) }) as Kept,
    isOpen: () => false,
    changeSet: async (id, make) => {
      now++;
      written.set(id, make(written.get(id)));
      list();
      return true;
    },
    newSetId: () => `place-${++count}`,
    now: () => now,
  };
  const placeOf = (id: string) => valueAtPath(written.get(id), ['place']);
  return { sets, written, placeOf };
}

const act = async (key: string): Promise<void> => {
  notices
    .peek()
    .find((one) => one.key === key)!
    .action!.run();
  for (let turn = 0; turn < 20; turn++) await new Promise((resolve) => setTimeout(resolve));
};

const fen = { ...demo.place, name: 'Fen end' };
const hill = { ...demo.place, name: 'Hill top' };

it('a place that is kept once is used by the sets that hold the same, and is kept once only', async () => {
  const { sets } = setsOf({ a: { ...demo, place: fen }, b: { ...demo, place: fen }, c: demo });
  const places = createPlaces(storeOf(), sets, () => {});
  const id = (await places.add(fen))!;
  expect(await places.add(fen)).toBeUndefined();
  expect((await places.uses()).get(id)!.map((one) => one.id)).toEqual(['a', 'b']);
});

it('a set that is moved to a kept place holds it whole, and comes back as it was', async () => {
  const { sets, written, placeOf } = setsOf({ a: demo });
  const places = createPlaces(storeOf(), sets, () => {});
  const id = (await places.add(hill))!;
  await places.use(id, 'a');
  expect(placeOf('a')).toEqual(hill);
  await act('place-used');
  expect(written.get('a')).toEqual(demo);
});

it('a change of a kept place is offered to the sets that used it, and to no other', async () => {
  const { sets, placeOf } = setsOf({ a: { ...demo, place: fen }, b: { ...demo, place: fen }, c: demo });
  const places = createPlaces(storeOf(), sets, () => {});
  const id = (await places.add(fen))!;
  await places.rename(id, 'Fen corner');
  expect(placeOf('a')).toEqual(fen);
  // One that is changed meanwhile has a place of its own.
  await sets.changeSet('b', (now) => withValueAt(now, ['place', 'name'], 'Elsewhere'), '');
  await act('place-changed');
  expect(valueAtPath(placeOf('a'), ['name'])).toBe('Fen corner');
  expect(valueAtPath(placeOf('b'), ['name'])).toBe('Elsewhere');
  expect(placeOf('c')).toEqual(demo.place);
  expect((await places.uses()).get(id)!.map((one) => one.id)).toEqual(['a']);
  await act('place-brought');
  expect(placeOf('a')).toEqual(fen);
});

it('a set that could not be calculated at the changed place keeps its own, and is named', async () => {
  const { sets, placeOf } = setsOf({ a: { ...demo, place: fen } });
  const places = createPlaces(storeOf(), sets, () => {});
  const id = (await places.add(fen))!;
  await places.replace(id, { ...fen, environment: 'nowhere' });
  await act('place-changed');
  expect(placeOf('a')).toEqual(fen);
  expect(notices.peek().find(({ key }) => key === 'place-brought')!.text).toContain(
    String(valueAtPath(demo, ['name'])),
  );
});

it('a place that is deleted can be put back; the sets keep theirs', async () => {
  const { sets, placeOf } = setsOf({ a: { ...demo, place: fen } });
  const store = storeOf();
  const places = createPlaces(store, sets, () => {});
  const id = (await places.add(fen))!;
  await places.remove(id);
  expect([places.all.peek(), store.there.size, placeOf('a')]).toEqual([[], 0, fen]);
  await act(`place-removed-${id}`);
  expect(places.all.peek()!.map((one) => one.written)).toEqual([fen]);
});

it('without storage a place lasts as long as the page, which says so', async () => {
  const store = storeOf();
  store.isBlocked = true;
  const { sets } = setsOf({});
  const places = createPlaces(store, sets, () => {});
  await places.add(hill);
  await places.refresh();
  expect(places.all.peek()!.map((one) => one.written)).toEqual([hill]);
  expect(notices.peek().map(({ key }) => key)).toEqual(['places-not-read', 'place-not-kept']);
});

it('places that cannot be read stay listed as they were, which is told until they can be read', async () => {
  const store = storeOf();
  const { sets } = setsOf({});
  const places = createPlaces(store, sets, () => {});
  await places.add(hill);
  store.isBlocked = true;
  await places.refresh();
  expect([places.isUnread.peek(), places.all.peek()!.map((one) => one.written)]).toEqual([true, [hill]]);
  expect(notices.peek().map(({ key }) => key)).toEqual(['places-not-read']);
  store.isBlocked = false;
  await places.refresh();
  expect([places.isUnread.peek(), notices.peek()]).toEqual([false, []]);
});

it('what has no name is named as such in what is told', async () => {
  const { sets } = setsOf({ a: { ...demo, name: '' } });
  const places = createPlaces(storeOf(), sets, () => {});
  const id = (await places.add({ ...demo.place, name: '' }))!;
  await places.use(id, 'a');
  await places.replace(id, hill);
  await places.replace(id, { ...hill, name: '' });
  await places.remove(id);
  expect(notices.peek().map(({ text }) => text)).toEqual([
    'Set without a name now uses Place without a name.',
    'Hill top is changed. Set without a name has the place as it was before.',
    'Place without a name is no longer kept. The sets that use it keep their own copy.',
  ]);
});

it('a change is no longer offered to a set that uses the changed place meanwhile', async () => {
  const { sets } = setsOf({ a: { ...demo, place: fen }, b: { ...demo, place: fen } });
  const places = createPlaces(storeOf(), sets, () => {});
  const id = (await places.add(fen))!;
  const offered = () => notices.peek().find(({ key }) => key === 'place-changed')?.action?.label;
  await places.rename(id, 'Fen corner');
  expect(offered()).toContain('2 sets');
  await places.use(id, 'a');
  expect(offered()).toContain('1 set');
  await places.use(id, 'b');
  expect(offered()).toBeUndefined();
});

it('places are read again only where they were looked for', async () => {
  const store = storeOf();
  const places = createPlaces(store, setsOf({}).sets, () => {});
  await places.refreshAgain();
  expect(places.all.peek()).toBeUndefined();
  await places.refresh();
  store.there.set('elsewhere', { id: 'elsewhere', written: hill, changed: 1 });
  await places.refreshAgain();
  expect(places.all.peek()!.map((one) => one.written)).toEqual([hill]);
});

it('places are found by their name, their notes and the names of their stations', () => {
  const place = (id: string, name: string, station: string): KeptPlace => ({
    id,
    written: { name, stations: [{ name: station }] },
    changed: 0,
  });
  const all = [place('a', 'Fen end', 'Saltmarsh Radio'), place('b', 'Hill top', 'Radio Alder')];
  const found = (text: string) => searchPlaces(all, text).map(({ id }) => id);
  const noted = withValueAt(all[1].written, ['notes'], 'Mast by the shed.\nKeys at the gate');
  expect(searchPlaces([all[0], { ...all[1], written: noted }], 'gate alder').map(({ id }) => id)).toEqual(['b']);
  expect([found(''), found('fen'), found('radio hill'), found('salt top')]).toEqual([['a', 'b'], ['a'], ['b'], []]);
});
