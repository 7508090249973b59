/** One state of the description and what led to it, in words: "Turns of main". */
export interface Step {
  readonly written: unknown;
  readonly label: string;
}

export interface History {
  readonly past: readonly Step[];
  readonly present: Step;
  readonly future: readonly Step[];
  /** While a slider is dragged or a field typed in, all changes are one step; this names it. */
  readonly run?: string;
}

const LONGEST = 200;

export const begin = (written: unknown, label = ''): History => ({ past: [], present: { written, label }, future: [] });

/** What a change within a run starts from: the state before the run began, so that dragging back restores. */
export const baseOf = (history: History, run?: string): unknown =>
  run !== undefined && history.run === run ? history.past[history.past.length - 1].written : history.present.written;

/** Record a change; within the same run it replaces the run's step. A change that changes nothing is no step. */
export function record(history: History, written: unknown, label: string, run?: string): History {
  if (run !== undefined && history.run === run) return { ...history, present: { written, label }, future: [] };
  if (Object.is(written, history.present.written)) return history;
  return {
    past: [...history.past, history.present].slice(-LONGEST),
    present: { written, label },
    future: [],
    run,
  };
}

/** The run is over: the next change is a step of its own. */
export const endRun = (history: History): History =>
  history.run === undefined ? history : { past: history.past, present: history.present, future: history.future };

export function undo(history: History): History {
  const before = history.past[history.past.length - 1];
  return before
    ? { past: history.past.slice(0, -1), present: before, future: [history.present, ...history.future] }
    : endRun(history);
}

export function redo(history: History): History {
  const [after, ...rest] = history.future;
  return after ? { past: [...history.past, history.present], present: after, future: rest } : endRun(history);
}
