import fc from 'fast-check';
import { aroundPage } from '../support/simulated-browser.ts';
import { playSession, storageAction } from '../support/storage-session.ts';
import { VirtualClock } from '../support/virtual-clock.ts';
import { trial } from './trial.ts';

type Actions = Parameters<typeof playSession>[0];

async function play(actions: Actions): Promise<void> {
  const clock = new VirtualClock();
  const before = Object.fromEntries(Object.keys(aroundPage()).map((name) => [name, Reflect.get(globalThis, name)]));
  Object.assign(globalThis, aroundPage());
  try {
    await playSession(actions, clock.pass);
  } finally {
    Object.assign(globalThis, before);
    clock.stop();
  }
}

const inTwoTabs = storageAction.filter(({ act }) => act !== 'kill' && act !== 'disk' && act !== 'near');

export const STORAGE_TRIALS = [
  trial({
    name: 'kills and faults of storage',
    group: 'storage',
    says: 'no change older than a second is lost by kills, closing, other sets or a disk that fails and says so',
    cases: fc.array(storageAction, { minLength: 10, maxLength: 60 }),
    check: play,
    batch: 100,
    share: 10,
    longest: 30,
  }),
  trial({
    name: 'two tabs',
    group: 'storage',
    says: 'two tabs that change one set, and others, come to show the same, and no change is lost',
    cases: fc
      .array(inTwoTabs, { minLength: 10, maxLength: 40 })
      .map((actions): Actions => [{ act: 'second tab' }, ...actions]),
    check: play,
    batch: 100,
    share: 4,
    longest: 30,
  }),
];
