import fc from 'fast-check';

/** Something that must hold of every case, however the cases are drawn. */
export interface Trial<Case = unknown> {
  readonly name: string;
  /** Of which kind of work it is, as the report groups it. */
  readonly group: 'readers' | 'laws' | 'storage' | 'listening';
  /** What must hold, for the report. */
  readonly says: string;
  /** Cases survive JSON, so that one can be kept in a file. */
  readonly cases: fc.Arbitrary<Case>;
  /** Throws, or rejects, where it does not hold. */
  readonly check: (given: Case) => void | Promise<void>;
  /** Cases in one batch, which one seed names. */
  readonly batch: number;
  /** Share of the time, against the others. */
  readonly share: number;
  /** A case that takes longer twice counts as one that hangs, s. */
  readonly longest: number;
}

/** A trial among those of other cases. */
export const trial = <Case>(of: Trial<Case>): Trial => of as unknown as Trial;

/** A case for which a trial does not hold, as small as it could be made. */
export interface Finding {
  readonly trial: string;
  readonly seed: number;
  readonly path: string;
  readonly given: unknown;
  readonly message: string;
}

export interface BatchResult {
  readonly cases: number;
  /** s. */
  readonly seconds: number;
  readonly slowest: number;
  readonly finding?: Finding;
}

export interface BatchOptions {
  /** Default as many as the trial says. */
  readonly cases?: number;
  /** Whether a case that takes too long is a finding; not where other work makes the machine slow. */
  readonly isTimed?: boolean;
}

/**
 * Try the cases that a seed gives.
 * @param seed a whole number
 * @returns how many were tried, how long they took, and the first that does not hold
 */
export async function runBatch(one: Trial, seed: number, options: BatchOptions = {}): Promise<BatchResult> {
  const { cases = one.batch, isTimed = false } = options;
  const began = performance.now();
  let tried = 0;
  let slowest = 0;
  const property = fc.asyncProperty(one.cases, async (given) => {
    const seconds = await secondsOf(one, given);
    tried++;
    slowest = Math.max(slowest, seconds);
    // A machine with other work may have held up the first time.
    if (isTimed && seconds > one.longest && (await secondsOf(one, given)) > one.longest)
      throw new Error(`took ${seconds.toFixed(1)} s, more than ${one.longest} s`);
  });
  const result = await fc.check(property, {
    numRuns: cases,
    seed,
    // What was found by then is as small as it gets.
    ...(isTimed && { interruptAfterTimeLimit: 90_000 }),
  });
  return {
    cases: tried,
    seconds: (performance.now() - began) / 1000,
    slowest,
    ...(result.failed && result.counterexample !== null && { finding: findingOf(one, result) }),
  };
}

async function secondsOf(one: Trial, given: unknown): Promise<number> {
  const start = performance.now();
  await one.check(given);
  return (performance.now() - start) / 1000;
}

const findingOf = (one: Trial, result: fc.RunDetails<[unknown]>): Finding => ({
  trial: one.name,
  seed: result.seed,
  path: result.counterexamplePath ?? '',
  given: result.counterexample?.[0],
  message: String((result.errorInstance as Error | undefined)?.stack ?? result.errorInstance).slice(0, 1500),
});
