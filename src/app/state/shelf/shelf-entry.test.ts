import { expect, it } from 'vitest';
import { deletedOf, goneForGood, onTheShelf, type ShelfEntry, searchShelf } from './shelf-entry.ts';

const entry = (id: string, more: Partial<ShelfEntry> = {}): ShelfEntry => ({
  id,
  name: `Set ${id}`,
  notes: '',
  fileName: `${id}.json`,
  changed: 0,
  ...more,
});

it('finds sets by all words, anywhere in name, notes and file name, in any case', () => {
  const all = [
    entry('a', { name: 'Kitchen set', notes: 'Germanium diode from the drawer' }),
    entry('b', { name: 'Shed set', notes: 'galena' }),
    entry('c', { fileName: 'kitchen-second.json' }),
  ];
  const ids = (text: string) => searchShelf(all, text).map(({ id }) => id);
  expect(ids('')).toEqual(['a', 'b', 'c']);
  expect(ids('KITCHEN')).toEqual(['a', 'c']);
  expect(ids('diode  kitchen')).toEqual(['a']);
  expect(ids('galena kitchen')).toEqual([]);
});

it('deleted sets leave the shelf, can be had back for thirty days, and go after that', () => {
  const day = 86_400_000;
  const all = [entry('a', { changed: 1 }), entry('b', { changed: 2 }), entry('c', { deleted: 5 * day })];
  expect(onTheShelf(all).map(({ id }) => id)).toEqual(['b', 'a']);
  expect(deletedOf(all).map(({ id }) => id)).toEqual(['c']);
  expect(goneForGood(all, 34 * day)).toEqual([]);
  expect(goneForGood(all, 36 * day).map(({ id }) => id)).toEqual(['c']);
});
