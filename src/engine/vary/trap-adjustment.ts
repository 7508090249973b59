import type { Adjustment, Edit } from '../kinds/adjustment.ts';
import type { Trials } from './trial.ts';
import { trapFor } from './wave-traps.ts';

/** The station that a trap is to stop, and the one that is to be received. */
interface TrapTask {
  readonly stop: number;
  readonly target: number;
}

/**
 * Wave traps as something to adjust: for each station to be stopped the one that `trapFor` makes.
 * @param trials of the set
 * @param tasks stations by their places in the list
 * @returns none where no trap can be made
 */
export function trapAdjustment(trials: Trials, tasks: readonly TrapTask[]): Adjustment[] {
  const distinct = new Map(tasks.map((task) => [`${task.stop} ${task.target}`, task]));
  const editsOf = new Map<unknown, readonly Edit[]>();
  for (const task of distinct.values()) {
    const offer = trapFor(trials, task);
    const trap = offer?.changes.find(({ path }) => path[0] === 'arrangement');
    // The trap first: it is what the change is about.
    if (trap) editsOf.set(trap.to, [trap, ...offer!.changes.filter((edit) => edit !== trap)]);
  }
  if (editsOf.size === 0) return [];
  return [
    {
      id: 'arrangement.traps',
      part: 'arrangement',
      path: ['arrangement', 'traps'],
      // Its capacitor is one more.
      effort: 'buy',
      domain: { is: 'choice', of: [...editsOf.keys()] },
      now: undefined,
      edits: (trap) => editsOf.get(trap)!,
      serves: ['clearance'],
    },
  ];
}
