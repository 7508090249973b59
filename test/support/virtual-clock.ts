interface Timer {
  readonly at: number;
  readonly act: () => void;
}

/** Never the same twice: what is left from before may still be cleared. */
let count = 0;

/**
 * Time that passes only when told: `setTimeout`, `clearTimeout` and `Date.now` go by it from its making until `stop`.
 * Between two timers everything that was promised is done.
 */
export class VirtualClock {
  private now = 1_700_000_000_000;
  private readonly timers = new Map<number, Timer>();
  private readonly real = { setTimeout, clearTimeout, now: Date.now };

  constructor() {
    const set = (act: () => void, pause = 0): number => {
      this.timers.set(++count, { at: this.now + Math.max(1, pause), act });
      return count;
    };
    Object.assign(globalThis, { setTimeout: set, clearTimeout: (id: number) => void this.timers.delete(id) });
    Date.now = () => this.now;
  }

  /** @param ms how much time passes @returns once all that was due in it is done */
  readonly pass = async (ms: number): Promise<void> => {
    const end = this.now + ms;
    await settled();
    for (let next = this.next(end); next !== undefined; next = this.next(end)) {
      const { at, act } = this.timers.get(next)!;
      this.timers.delete(next);
      this.now = Math.max(this.now, at);
      act();
      await settled();
    }
    this.now = end;
  };

  stop(): void {
    const { now, ...timers } = this.real;
    Object.assign(globalThis, timers);
    Date.now = now;
  }

  /** The timer that is due first, by its number where several are. */
  private next(end: number): number | undefined {
    let first: number | undefined;
    for (const [id, { at }] of this.timers)
      if (at <= end && (first === undefined || at < this.timers.get(first)!.at)) first = id;
    return first;
  }
}

const settled = (): Promise<void> => new Promise((resolve) => setImmediate(resolve));
