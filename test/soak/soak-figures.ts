import type { BatchResult, Finding, Trial } from './trial.ts';

/** What a soak has seen of one trial. */
export class Figures {
  readonly trial: Trial;
  readonly findings: Finding[] = [];
  cases = 0;
  batches = 0;
  /** Batches that are being tried. */
  running = 0;
  /** s, of all threads. */
  seconds = 0;
  /** The slowest case, s. */
  slowest = 0;
  /** Most that a thread held after a batch, bytes. */
  memory = 0;

  constructor(trial: Trial) {
    this.trial = trial;
  }

  /** Of a batch, s. */
  get mean(): number {
    return this.batches === 0 ? 1 : this.seconds / this.batches;
  }

  add({ cases, seconds, slowest }: BatchResult, memory: number): void {
    this.batches++;
    this.cases += cases;
    this.seconds += seconds;
    this.slowest = Math.max(this.slowest, slowest);
    this.memory = Math.max(this.memory, memory);
  }
}

export const figuresOf = (trial: Trial): Figures => new Figures(trial);
