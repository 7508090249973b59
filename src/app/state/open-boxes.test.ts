import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import { notices } from './notices.ts';

const local = new Map<string, string>();

/** One more tab of the browser: its own page, the storage of all. */
async function openTab() {
  vi.resetModules();
  const heard: ((event: unknown) => void)[] = [];
  vi.stubGlobal('addEventListener', (_event: string, act: (event: unknown) => void) => heard.push(act));
  const boxes = await import('./open-boxes.ts');
  const names = () => boxes.shelvedBoxes.value.map(({ name }) => name);
  const hear = (key = 'faintwave.boxes') => {
    for (const act of heard) act({ key, newValue: local.get(key) ?? null });
  };
  return { ...boxes, names, hear };
}

const boxNamed = (name: string) => ({ format: 'faintwave-box/1', name });

beforeEach(() => {
  local.clear();
  vi.stubGlobal(
    'localStorage',
    new Proxy(
      {
        getItem: (key: string) => local.get(key) ?? null,
        setItem: (key: string, value: string) => void local.set(key, value),
        removeItem: (key: string) => void local.delete(key),
      },
      {
        ownKeys: () => [...local.keys()],
        getOwnPropertyDescriptor: () => ({ enumerable: true, configurable: true }),
      },
    ),
  );
});
afterEach(() => {
  notices.value = [];
  vi.unstubAllGlobals();
});

it('two tabs lose no box of each other', async () => {
  const [a, b] = [await openTab(), await openTab()];
  a.addBox(boxNamed('of a'));
  // Not told yet: events between tabs come when they can.
  b.addBox(boxNamed('of b'));
  a.hear();
  b.hear();
  expect([a.names(), b.names()]).toEqual([
    ['of a', 'of b'],
    ['of a', 'of b'],
  ]);
  const c = await openTab();
  expect(c.names()).toEqual(['of a', 'of b']);
  for (const { id, name } of c.shelvedBoxes.value) {
    c.chooseBox(id);
    expect(c.openBox.value?.written.value).toEqual(boxNamed(name));
  }
});

it('a box that is removed in one tab goes from the other, and can be put back', async () => {
  const a = await openTab();
  a.addBox(boxNamed('stays'));
  a.addBox(boxNamed('goes'));
  const b = await openTab();
  expect(b.reopenBox()).toBe(true);
  expect(b.openBox.value?.written.value).toEqual(boxNamed('goes'));
  const putBack = a.removeBox();
  b.hear();
  expect(b.openBox.value?.written.value).toEqual(boxNamed('stays'));
  putBack();
  b.hear();
  expect([a.names(), b.names()]).toEqual([
    ['stays', 'goes'],
    ['stays', 'goes'],
  ]);
});

it('what cannot be read is put aside, a box as well as the list', async () => {
  const a = await openTab();
  a.addBox(boxNamed('one'));
  a.addBox(boxNamed('two'));
  const [{ id }] = a.shelvedBoxes.value;
  local.set(`faintwave.box.${id}`, '{"written":');
  local.set('faintwave.boxes', '[{"id":');
  const b = await openTab();
  expect(b.names().toSorted()).toEqual(['New box', 'two']);
  b.chooseBox(id);
  expect([...local.values()]).toContain('{"written":');
});

it('boxes that are not in view are copied, renamed and removed on the shelf, the one in view too', async () => {
  const a = await openTab();
  a.addBox({ ...boxNamed('first'), notes: 'in the shed' });
  a.addBox(boxNamed('second'));
  const entry = (name: string) => a.boxEntries.value.find((box) => box.name === name)!;
  expect(entry('first').notes).toBe('in the shed');
  expect(a.copyBox(entry('first'))).toBe(true);
  expect(a.renameBox(entry('first'), 'third')).toBe(true);
  expect(a.renameBox(entry('second'), 'fourth')).toBe(true);
  expect(a.openBox.value!.written.value).toEqual(boxNamed('fourth'));
  expect(a.boxEntries.value.map(({ name }) => name).sort()).toEqual(['first (copy)', 'fourth', 'third']);
  const putBack = a.removeBox(entry('third').id);
  expect(a.openBox.value!.written.value).toEqual(boxNamed('fourth'));
  expect(a.names().sort()).toEqual(['first (copy)', 'fourth']);
  putBack();
  expect((await openTab()).names().sort()).toEqual(['first (copy)', 'fourth', 'third']);
});

it('a box that is only looked at keeps the date of its last change', async () => {
  const a = await openTab();
  a.addBox(boxNamed('first'));
  a.addBox(boxNamed('second'));
  const first = a.boxEntries.value.find(({ name }) => name === 'first')!;
  a.shelveBox({ ...first, changed: 5 }, first.id);
  a.chooseBox(first.id);
  expect(a.boxEntries.value.find(({ name }) => name === 'first')!.changed).toBe(5);
  a.openBox.value!.edit(['notes'], 'now');
  a.chooseBox(a.boxEntries.value.find(({ name }) => name === 'second')!.id);
  expect(a.boxEntries.value.find(({ name }) => name === 'first')!.changed).toBeGreaterThan(5);
});

it('a box that cannot be read is listed as such: listing writes nothing, and it can be deleted and put back', async () => {
  const a = await openTab();
  a.addBox(boxNamed('broken'));
  a.addBox(boxNamed('whole'));
  const [{ id }] = a.shelvedBoxes.value;
  local.set(`faintwave.box.${id}`, '{"written":');
  const b = await openTab();
  const before = new Map(local);
  expect(b.boxEntries.value.map(({ name }) => name)).toEqual(['whole']);
  expect(b.unreadableBoxes.value).toEqual([{ id, name: 'broken', text: '{"written":' }]);
  expect([local, notices.value]).toEqual([before, []]);
  const putBack = b.removeBox(id);
  expect([b.unreadableBoxes.value, local.has(`faintwave.box.${id}`)]).toEqual([[], false]);
  putBack();
  expect(b.unreadableBoxes.value).toEqual([{ id, name: 'broken', text: '{"written":' }]);
});

it('renaming and copying on the shelf keep what another tab changed since', async () => {
  const a = await openTab();
  a.addBox(boxNamed('first'));
  a.addBox(boxNamed('in view'));
  const b = await openTab();
  const seen = b.boxEntries.value.find(({ name }) => name === 'first')!;
  a.chooseBox(seen.id);
  a.openBox.value!.edit(['notes'], 'two more coils');
  b.renameBox(seen, 'renamed');
  b.copyBox(seen);
  const entries = b.boxEntries.value.filter(
    ({ id }) => id !== b.shelvedBoxes.value.find((one) => one.name === 'in view')?.id,
  );
  expect(entries.map(({ name, notes }) => [name, notes]).sort()).toEqual([
    ['renamed (copy)', 'two more coils'],
    ['renamed', 'two more coils'],
  ]);
});

it('the shelf lists what another tab changes, and a box that it removed stays removed', async () => {
  const a = await openTab();
  a.addBox(boxNamed('first'));
  const b = await openTab();
  const [seen] = b.boxEntries.value;
  a.openBox.value!.edit(['notes'], 'dry now');
  b.hear(`faintwave.box.${seen.id}`);
  expect(b.boxEntries.value[0].notes).toBe('dry now');
  a.removeBox(seen.id);
  expect(b.renameBox(seen, 'back')).toBe(true);
  expect(b.boxEntries.value).toEqual([]);
});
