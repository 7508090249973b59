import { strToU8, zipSync } from 'fflate';
import { expect, it } from 'vitest';
import { readLog, writeLog } from '../../../engine/index.ts';
import type { StoredDocument } from '../document-store.ts';
import { DEMO, EXAMPLES } from '../examples.ts';
import { type Kept, keptText, readKept } from '../kept.ts';
import { makeArchive, readArchive } from './archive.ts';
import { entryOf, type ShelfEntry } from './entry.ts';
import { joinedLogs } from './log-text.ts';
import type { SetVersion } from './versions.ts';

/** A shelf in memory. */
function shelfOf() {
  const kept = new Map<string, Kept>();
  const versions = new Map<string, SetVersion[]>();
  const entries = new Map<string, ShelfEntry>();
  const logs = new Map<string, string>();
  let count = 0;
  return {
    entries,
    kept: async (id: string) => kept.get(id),
    versions: async (id: string) => [...(versions.get(id) ?? [])].sort((a, b) => a.at - b.at),
    async put(id: string, { text, entry, version }: StoredDocument) {
      if (text !== undefined) kept.set(id, readKept(text)!);
      if (entry) entries.set(id, entry);
      if (version) versions.set(id, [...(versions.get(id) ?? []).filter(({ at }) => at !== version.at), version]);
    },
    log: async (id: string) => logs.get(id),
    async changeLog(id: string, change: (text: string | undefined) => string) {
      logs.set(id, change(logs.get(id)));
      return logs.get(id)!;
    },
    refresh: async () => undefined,
    isOpen: () => false,
    changedAt: (id: string) => entries.get(id)?.changed ?? 0,
    newSetId: () => `new-${++count}`,
    now: () => 5000,
  };
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
  const archive = await makeArchive(here, [...here.entries.values()]);
  const there = shelfOf();
  expect(await readArchive(there, archive)).toEqual({ added: 2, merged: 0, same: 0, leftOut: [] });
  for (const id of ['a', 'b']) {
    expect((await there.kept(id))!.written).toEqual((await here.kept(id))!.written);
    expect(await there.versions(id)).toEqual(await here.versions(id));
    expect(there.entries.get(id)).toEqual(here.entries.get(id));
  }
  await there.changeLog('a', (text) => joinedLogs(text, heard('Radio Alder')));
  expect(await readArchive(there, archive)).toEqual({ added: 0, merged: 0, same: 2, leftOut: [] });
  const logged = readLog((await there.log('a'))!).entries;
  expect(logged.map(({ station, remark }) => [station, remark])).toEqual([
    ['Saltmarsh Radio', '"quoted", =1'],
    ['Radio Alder', '"quoted", =1'],
  ]);
  expect(await there.versions('a')).toEqual(await here.versions('a'));
});

it('merging loses neither of two states: the earlier becomes a version', async () => {
  for (const [hereAt, thereAt] of [
    [1000, 2000],
    [2000, 1000],
  ]) {
    const here = shelfOf();
    await put(here, 'a', { ...example, name: 'of the archive' }, hereAt);
    const archive = await makeArchive(here, [...here.entries.values()]);
    const there = shelfOf();
    await put(there, 'a', { ...example, name: 'of the shelf' }, thereAt);
    expect(await readArchive(there, archive)).toMatchObject({ added: 0, merged: 1 });
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
  expect(await readArchive(shelf, plain)).toEqual({ added: 1, merged: 0, same: 0, leftOut: ['b.json', 'c.json'] });
  expect((await shelf.kept('new-1'))!.written).toEqual(example);
  const hostile = blob({
    'shelf.json': JSON.stringify({
      format: 'faintwave-shelf/1',
      sets: [{ id: '../x', file: 'a.json', versions: [{ at: 'x', file: 'a.json' }, 7] }, 3, { file: 5 }],
    }),
    'a.json': DEMO.text,
  });
  expect(await readArchive(shelf, hostile)).toMatchObject({ added: 1, leftOut: [] });
  expect(shelf.entries.has('../x')).toBe(false);
  for (const bad of [new Blob([]), new Blob(['no archive']), blob({ 'a.txt': 'x' })])
    expect(await readArchive(shelf, bad)).toEqual({ refused: 'not-an-archive' });
  // Unpacks to more than any archive of the page holds.
  const bomb = blob({ 'a.json': ' '.repeat(210e6) });
  expect(await readArchive(shelf, bomb)).toEqual({ refused: 'too-large' });
});
