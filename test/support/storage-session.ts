import fc from 'fast-check';
import { notices } from '../../src/app/state/notices.ts';
import { Browser, CONFIRMED, nameIn, SLOWEST, statesOnDisk, Tab } from './simulated-browser.ts';

/** Names carry the number of the edit: a later one holds the earlier. */
const numberOf = (name: string): number => Number(/^edit (\d+)$/.exec(name)?.[1] ?? -1);

/** One thing that a person, a browser or a disk does. */
export const storageAction = fc.oneof(
  { weight: 8, arbitrary: fc.record({ act: fc.constant('edit' as const), tab: fc.nat(1) }) },
  { weight: 4, arbitrary: fc.record({ act: fc.constant('wait' as const), ms: fc.nat(1800) }) },
  { weight: 2, arbitrary: fc.record({ act: fc.constant('open' as const), tab: fc.nat(1), which: fc.nat(3) }) },
  { weight: 1, arbitrary: fc.record({ act: fc.constant('add' as const), tab: fc.nat(1) }) },
  { weight: 1, arbitrary: fc.record({ act: fc.constant('close' as const), tab: fc.nat(1) }) },
  { weight: 1, arbitrary: fc.record({ act: fc.constant('second tab' as const) }) },
  { weight: 1, arbitrary: fc.record({ act: fc.constant('disk' as const), fails: fc.boolean() }) },
  { weight: 1, arbitrary: fc.record({ act: fc.constant('near' as const), fails: fc.boolean() }) },
  {
    weight: 2,
    arbitrary: fc.record({ act: fc.constant('latency' as const), ms: fc.integer({ min: 1, max: SLOWEST }) }),
  },
  { weight: 2, arbitrary: fc.record({ act: fc.constant('kill' as const) }) },
  { weight: 1, arbitrary: fc.record({ act: fc.constant('upgrade' as const) }) },
  { weight: 1, arbitrary: fc.record({ act: fc.constant('hide' as const), tab: fc.nat(1) }) },
);
type StorageAction = typeof storageAction extends fc.Arbitrary<infer T> ? T : never;

/**
 * Everything that was done in order, then a kill: what a browser finds when it is started again.
 * @param settle lets so much time pass, ms
 * @throws Error for a change older than a second that is lost, and a disk that fails without a word
 */
export async function playSession(
  actions: readonly StorageAction[],
  settle: (ms: number) => Promise<unknown>,
): Promise<void> {
  notices.value = [];
  const browser = new Browser();
  let edits: { readonly id: string; readonly number: number; readonly at: number }[] = [];
  let count = 0;
  let failedUntil = Number.NEGATIVE_INFINITY;
  let focus = 'first';
  const openTab = async (): Promise<Tab> => {
    const tab = new Tab(browser, focus);
    await settle(SLOWEST + 50);
    return tab;
  };
  const tabAt = (index: number): Tab => browser.tabs[Math.min(index, browser.tabs.length - 1)].comeForward();
  const isDue = ({ at }: { readonly at: number }): boolean => Date.now() - at > CONFIRMED && at > failedUntil;
  const check = (): void => {
    for (const id of new Set(edits.map((edit) => edit.id))) {
      const due = edits.filter((edit) => edit.id === id && isDue(edit));
      const latest = due.at(-1);
      if (!latest) continue;
      // The disk alone: the first place has the last seconds only where the browser was not killed.
      const states = statesOnDisk(browser, id).map(numberOf);
      if (!(Math.max(-1, ...states) >= latest.number)) throw new Error(`edit ${latest.number} of ${id} is lost`);
    }
  };
  const mustAgree = async (): Promise<void> => {
    // A tab that is opened while storage fails cannot know what the others have, and says so.
    if (actions.some(({ act }) => act === 'disk' || act === 'near')) return;
    await settle(5 * SLOWEST);
    const names = browser.tabs.flatMap(({ sets }) =>
      sets.all.peek().map((set) => [set.id, nameIn(set.written.peek())]),
    );
    for (const [id, name] of names)
      if (names.some((other) => other[0] === id && other[1] !== name)) throw new Error(`tabs show ${id} differently`);
  };
  await openTab();
  for (const one of [...actions, { act: 'agree' } as const, { act: 'kill' } as const]) {
    if (browser.isDiskFailing) failedUntil = Date.now();
    switch (one.act) {
      case 'edit': {
        const set = tabAt(one.tab).sets.focused.peek();
        set.apply(set.valueChange(['name'], `edit ${++count}`, { run: `typing ${count}` }));
        edits.push({ id: set.id, number: count, at: Date.now() });
        await settle(10);
        break;
      }
      case 'wait':
        await settle(one.ms);
        break;
      case 'add': {
        const tab = tabAt(one.tab);
        const from = tab.sets.focused.peek();
        const name = `edit ${++count}`;
        const written = { ...(from.written.peek() as object), name };
        focus = tab.shelf.add({ written, result: { ok: false, problems: [] } }, 'added.json').id;
        edits.push({ id: focus, number: count, at: Date.now() });
        // Nobody closes a tab before it has read what the disk has of a set just opened.
        await settle(SLOWEST + 10);
        break;
      }
      case 'open': {
        const { shelf, sets } = tabAt(one.tab);
        void shelf.refresh();
        await settle(SLOWEST + 10);
        const found = shelf.entries.peek() ?? [];
        const next = found[one.which % Math.max(1, found.length)];
        if (next) void shelf.open(next.id);
        await settle(SLOWEST + 10);
        focus = sets.focused.peek().id;
        break;
      }
      case 'agree':
        await mustAgree();
        break;
      case 'second tab':
        if (browser.tabs.length < 2) await openTab();
        break;
      case 'close':
        if (browser.tabs.length > 1) tabAt(one.tab).close(browser);
        break;
      case 'disk':
        browser.isDiskFailing = one.fails;
        break;
      case 'near':
        browser.isNearFailing = one.fails;
        break;
      case 'latency':
        browser.latency = one.ms;
        break;
      case 'hide': {
        // Whoever goes elsewhere leaves the field: only the steps to undo are then still to be kept.
        const tab = tabAt(one.tab);
        tab.sets.focused.peek().endRun();
        tab.putAway();
        break;
      }
      // A new version of the page loads every tab anew.
      case 'upgrade': {
        const open = browser.tabs.length;
        for (const tab of [...browser.tabs]) tab.close(browser);
        for (let k = 0; k < open; k++) await openTab();
        break;
      }
      case 'kill':
        if (browser.isDiskFailing) {
          const tried = edits.some(({ at }) => at > failedUntil - 1 && Date.now() - at > CONFIRMED);
          if (tried && !notices.value.some(({ key }) => key === 'storage'))
            throw new Error('a failing disk is not told');
        }
        browser.kill();
        check();
        // Later ones may be gone.
        edits = edits.filter(isDue);
        browser.isDiskFailing = false;
        browser.isNearFailing = false;
        await openTab();
        break;
    }
  }
}
