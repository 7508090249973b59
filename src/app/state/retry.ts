const FIRST_PAUSE_MS = 1000;
const LONGEST_PAUSE_MS = 30_000;

/** Something that failed, tried again after pauses that grow. */
export class Retry {
  private readonly act: () => void;
  private timer: ReturnType<typeof setTimeout> | undefined;
  private pause = FIRST_PAUSE_MS;

  constructor(act: () => void) {
    this.act = act;
  }

  get isWaiting(): boolean {
    return this.timer !== undefined;
  }

  /** After a failure. */
  later(): void {
    this.timer = setTimeout(() => {
      this.timer = undefined;
      this.act();
    }, this.pause);
    this.pause = Math.min(2 * this.pause, LONGEST_PAUSE_MS);
  }

  /** Not by itself any more. */
  stop(): void {
    clearTimeout(this.timer);
    this.timer = undefined;
  }

  /** The next failure is the first again. */
  begin(): void {
    this.stop();
    this.pause = FIRST_PAUSE_MS;
  }
}
