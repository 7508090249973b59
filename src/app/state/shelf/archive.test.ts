import { signal } from '@preact/signals';
import { strToU8, zipSync } from 'fflate';
import { expect, it } from 'vitest';
import { readLog, writeLog } from '../../../engine/index.ts';
import type { StoredDocument } from '../document-store.ts';
import { DEMO, EXAMPLES } from '../examples.ts';
import { type Kept, keptText, readKept } from '../kept.ts';
import { type KeptBeside, makeArchive, readArchive } from './archive.ts';
import { joinedLogs } from './log-text.ts';
import { entryOf, onTheShelf, type ShelfEntry } from './shelf-entry.ts';
import type { SetVersion } from './versions.ts';

/** A shelf in memory. */
function shelfOf() {
  const kept = new Map<string, Kept>();
  const versions = new Map<string, SetVersion[]>();
  const listed = new Map<string, ShelfEntry>();
  const entries = signal<readonly ShelfEntry[]>([]);
  const logs = new Map<string, string>();
  let count = 0;
  return {
    listed,
    entries,
    kept: async (id: string) => kept.get(id),
    versions: async (id: string) => [...(versions.get(id) ?? [])].sort((a, b) => a.at - b.at),
    async put(id: string, { text, entry, version }: StoredDocument) {
      if (text !== undefined) kept.set(id, readKept(text)!);
      if (entry) listed.set(id, entry);
      if (version) versions.set(id, [...(versions.get(id) ?? []).filter(({ at }) => at !== version.at), version]);
    },
    log: async (id: string) => logs.get(id),
    async changeLog(id: string, change: (text: string | undefined) => string) {
      logs.set(id, change(logs.get(id)));
      return logs.get(id)!;
    },
    refresh: async () => {
      entries.value = onTheShelf([...listed.values()]);
    },
    isOpen: () => false,
    changedAt: (id: string) => entries.peek().find((one) => one.id === id)?.changed ?? 0,
    newSetId: () => `new-${++count}`,
    now: () => 5000,
  };
}

/** Boxes and places in memory. */
function besideOf(
  boxes: readonly KeptBeside[] = [],
  places: readonly KeptBeside[] = [],
  unread: { readonly boxes?: readonly string[]; readonly places?: readonly string[] } = {},
) {
  const here = { boxes: [...boxes], places: [...places] };
  const sort = (name: keyof typeof here) => ({
    all: () => here[name],
    unread: () => unread[name] ?? [],
    add: async (one: KeptBeside) => here[name].push(one) > 0,
  });
  return { here, boxes: sort('boxes'), places: sort('places') };
}

const example = JSON.parse(DEMO.text) as object;
const other = JSON.parse(EXAMPLES.find(({ file }) => file !== DEMO.file)!.text) as object;
const setOf = (written: unknown): Kept => ({ revision: 3, written, fileName: 'shed.json', isSaved: true, tab: 'x' });

async function put(shelf: ReturnType<typeof shelfOf>, id: string, written: unknown, changed: number): Promise<void> {
  await shelf.put(id, { text: keptText(setOf(written)), entry: entryOf(id, setOf(written), changed) });
}

it('an archive holds every set with its versions, and comes back whole on another machine, once', async () => {
  const here = shelfOf();
  await put(here, 'a', example, 1000);
  await put(here, 'b', { ...other, name: 'Köder & <b>' }, 2000);
  for (const at of [10, 20]) await here.put('a', { version: { at, written: { ...example, name: `until ${at}` } } });
  const heard = (station: string) =>
    writeLog([{ time: '2026-10-03T20:05+01:00', station, heard: 'faint', remark: '"quoted", =1' }]);
  await here.changeLog('a', () => heard('Saltmarsh Radio'));
  const { blob: archive } = await makeArchive(here, [...here.listed.values()], besideOf());
  const there = shelfOf();
  expect(await readArchive(there, archive, besideOf())).toEqual({
    added: 2,
    merged: 0,
    same: 0,
    boxes: 0,
    places: 0,
    leftOut: [],
  });
  for (const id of ['a', 'b']) {
    expect((await there.kept(id))!.written).toEqual((await here.kept(id))!.written);
    expect(await there.versions(id)).toEqual(await here.versions(id));
    expect(there.listed.get(id)).toEqual(here.listed.get(id));
  }
  await there.changeLog('a', (text) => joinedLogs(text, heard('Radio Alder')));
  expect(await readArchive(there, archive, besideOf())).toEqual({
    added: 0,
    merged: 0,
    same: 2,
    boxes: 0,
    places: 0,
    leftOut: [],
  });
  const logged = readLog((await there.log('a'))!).entries;
  expect(logged.map(({ station, remark }) => [station, remark])).toEqual([
    ['Saltmarsh Radio', '"quoted", =1'],
    ['Radio Alder', '"quoted", =1'],
  ]);
  expect(await there.versions('a')).toEqual(await here.versions('a'));
});

it('boxes and places come along, each once, and one that differs is one more', async () => {
  const box = { written: { format: 'faintwave-box/1', name: 'Shed' }, fileName: 'shed.json', changed: 7 };
  const place = {
    written: { name: 'Fen end', notes: 'Mast by the shed.\nKeys at the gate', stations: [] },
    changed: 8,
  };
  const { blob } = await makeArchive(shelfOf(), [], besideOf([box], [place]));
  const there = besideOf([], [{ written: { name: 'Fen end', stations: [], sunspots: 9 }, changed: 1 }]);
  expect(await readArchive(shelfOf(), blob, there)).toMatchObject({ boxes: 1, places: 1, leftOut: [] });
  expect(there.here.boxes).toEqual([{ ...box, file: 'boxes/shed-1.json' }]);
  expect(there.here.places).toHaveLength(2);
  expect(there.here.places[1]).toMatchObject(place);
  expect(await readArchive(shelfOf(), blob, there)).toMatchObject({ boxes: 0, places: 0, leftOut: [] });
});

it('merging loses neither of two states: the earlier becomes a version', async () => {
  for (const [hereAt, thereAt] of [
    [1000, 2000],
    [2000, 1000],
  ]) {
    const here = shelfOf();
    await put(here, 'a', { ...example, name: 'of the archive' }, hereAt);
    const { blob: archive } = await makeArchive(here, [...here.listed.values()], besideOf());
    const there = shelfOf();
    await put(there, 'a', { ...example, name: 'of the shelf' }, thereAt);
    expect(await readArchive(there, archive, besideOf())).toMatchObject({ added: 0, merged: 1 });
    const states = [(await there.kept('a'))!.written, ...(await there.versions('a')).map(({ written }) => written)];
    expect(states.map((written) => (written as { name: string }).name)).toEqual(
      hereAt > thereAt ? ['of the archive', 'of the shelf'] : ['of the shelf', 'of the archive'],
    );
  }
});

it('descriptions without a list are added, files without a set are named, other files refused', async () => {
  const shelf = shelfOf();
  const blob = (files: Record<string, string>) =>
    new Blob([
      zipSync(Object.fromEntries(Object.entries(files).map(([name, text]) => [name, strToU8(text)]))) as never,
    ]);
  const plain = blob({ 'mine/a.json': DEMO.text, 'b.json': '[1]', 'c.json': '{"format":', 'notes.txt': 'x' });
  expect(await readArchive(shelf, plain, besideOf())).toEqual({
    added: 1,
    merged: 0,
    same: 0,
    boxes: 0,
    places: 0,
    leftOut: ['b.json', 'c.json'],
  });
  expect((await shelf.kept('new-1'))!.written).toEqual(example);
  const hostile = blob({
    'shelf.json': JSON.stringify({
      format: 'faintwave-shelf/1',
      sets: [{ id: '../x', file: 'a.json', versions: [{ at: 'x', file: 'a.json' }, 7] }, 3, { file: 5 }],
    }),
    'a.json': JSON.stringify(other),
  });
  expect(await readArchive(shelf, hostile, besideOf())).toMatchObject({ added: 1, leftOut: [] });
  expect(shelf.listed.has('../x')).toBe(false);
  for (const bad of [new Blob([]), new Blob(['no archive']), blob({ 'a.txt': 'x' })])
    expect(await readArchive(shelf, bad, besideOf())).toEqual({ refused: 'not-an-archive' });
  // Unpacks to more than any archive of the page holds.
  const bomb = blob({ 'a.json': ' '.repeat(210e6) });
  expect(await readArchive(shelf, bomb, besideOf())).toEqual({ refused: 'too-large' });
});

it('a set that was deleted comes back from an archive, also one that went on since', async () => {
  for (const name of ['as archived', 'later']) {
    const here = shelfOf();
    await put(here, 'a', { ...example, name: 'as archived' }, 1000);
    const { blob } = await makeArchive(here, [...here.listed.values()], besideOf());
    await put(here, 'a', { ...example, name }, 2000);
    await here.put('a', { version: { at: 1500, written: { ...example, name: 'as archived' } } });
    await here.put('a', { entry: { ...here.listed.get('a')!, deleted: 3000 } });
    expect(await readArchive(here, blob, besideOf())).toMatchObject({ added: 0, same: 1 });
    expect(here.entries.peek()).toMatchObject([{ id: 'a', name }]);
    expect(here.listed.get('a')!.deleted).toBeUndefined();
  }
});

it('the set that every browser begins with is added once', async () => {
  const here = shelfOf();
  await put(here, 'first', { ...example, name: 'begun with' }, 1000);
  const { blob } = await makeArchive(here, [...here.listed.values()], besideOf());
  const there = shelfOf();
  await put(there, 'first', { ...example, name: 'another' }, 1000);
  expect(await readArchive(there, blob, besideOf())).toMatchObject({ added: 1, same: 0 });
  expect(await readArchive(there, blob, besideOf())).toMatchObject({ added: 0, same: 1 });
  expect(await readArchive(here, blob, besideOf())).toMatchObject({ added: 0, same: 1 });
  expect(
    there.entries
      .peek()
      .map(({ name }) => name)
      .toSorted(),
  ).toEqual(['another', 'begun with']);
});

it('what cannot be read or kept is told, and the rest is in its place', async () => {
  const here = shelfOf();
  for (const id of ['a', 'b', 'c']) await put(here, id, { ...example, name: id }, 1000);
  const failing = async (): Promise<never> => {
    throw new DOMException('full', 'QuotaExceededError');
  };
  const { blob, ...told } = await makeArchive(
    {
      ...here,
      kept: async (id) => (id === 'a' ? undefined : here.kept(id)),
      versions: (id) => (id === 'b' ? failing() : here.versions(id)),
    },
    [...here.listed.values()],
    besideOf(),
  );
  expect(told).toEqual({ sets: 2, boxes: 0, places: 0, leftOut: ['a'], inPart: ['b'] });
  const there = shelfOf();
  const outcome = await readArchive(
    { ...there, put: (id, document) => (id === 'b' ? failing() : there.put(id, document)) },
    blob,
    besideOf(),
  );
  expect(outcome).toEqual({ added: 1, merged: 0, same: 0, boxes: 0, places: 0, leftOut: ['sets/b-b.json'] });
  expect(there.entries.peek().map(({ id }) => id)).toEqual(['c']);
});

it('an archive names the boxes and places that could not be read', async () => {
  const here = shelfOf();
  const unread = { boxes: ['Shed'], places: ['places kept once'] };
  const made = await makeArchive(here, [], besideOf([{ written: { name: 'whole' }, changed: 1 }], [], unread));
  expect([made.boxes, made.leftOut]).toEqual([1, ['Shed', 'places kept once']]);
});
