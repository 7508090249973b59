import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { isMainThread, parentPort, Worker, workerData } from 'node:worker_threads';
import { inRoot } from '../../scripts/support/paths.mjs';
import { type Figures, figuresOf } from './soak-figures.ts';
import { REPORT, reportOf } from './soak-report.ts';
import { type BatchResult, type Finding, runBatch, type Trial } from './trial.ts';
import { trialsWith } from './trials.ts';

const MINUTES = 60;
/** A stretch of listening, s of sound. */
const LISTENED = 60;
/** What a thread may hold, MB; more ends it, and is a finding. */
const MOST_MEMORY = 700;
/** A batch that has said nothing for so long hangs, s. */
const SILENT = 900;

const TRIALS = trialsWith(LISTENED);

interface Task {
  readonly trial: number;
  readonly seed: number;
}

/** What a thread answers: the batch, and the memory it holds then, bytes. */
interface Answer extends BatchResult {
  readonly memory: number;
}

if (!isMainThread && workerData === 'soak')
  parentPort!.on('message', async ({ trial, seed }: Task) => {
    const result = await runBatch(TRIALS[trial], seed, { isTimed: true });
    parentPort!.postMessage({ ...result, memory: process.memoryUsage().heapUsed } satisfies Answer);
  });

/** Runs batches until the time is up, each kind as often as its share of the time says. */
class Soak {
  readonly figures: readonly Figures[];
  private readonly trials: readonly { readonly one: Trial; readonly place: number }[];
  private readonly batches = new Map<number, number>();
  private readonly first: number;
  private readonly until: number;

  /** @param until ms since 1970 */
  constructor(trials: readonly Trial[], first: number, until: number) {
    this.first = first;
    this.until = until;
    this.trials = trials.map((one) => ({ one, place: TRIALS.indexOf(one) }));
    this.figures = trials.map(figuresOf);
  }

  async run(threads: number): Promise<void> {
    await Promise.all(Array.from({ length: threads }, () => this.work()));
  }

  private async work(): Promise<void> {
    let thread = startThread();
    while (Date.now() < this.until) {
      const k = this.next();
      const { one, place } = this.trials[k];
      const batch = this.batches.get(k) ?? 0;
      this.batches.set(k, batch + 1);
      const seed = this.first + batch;
      this.figures[k].running++;
      const answer = await askThread(thread, { trial: place, seed });
      this.figures[k].running--;
      if (answer instanceof Error) {
        this.note(k, { trial: one.name, seed, path: '', given: undefined, message: answer.message });
        void thread.terminate();
        thread = startThread();
      } else {
        this.figures[k].add(answer, answer.memory);
        if (answer.finding) this.note(k, answer.finding);
      }
    }
    await thread.terminate();
  }

  /** The trial that is furthest behind its share of the time. */
  private next(): number {
    const spent = (k: number): number => {
      const { seconds, running, mean } = this.figures[k];
      return (seconds + running * mean) / this.trials[k].one.share;
    };
    return this.trials.reduce((least, _, k) => (spent(k) < spent(least) ? k : least), 0);
  }

  private note(k: number, finding: Finding): void {
    this.figures[k].findings.push(finding);
    const { trial, seed, path, message } = finding;
    console.error(`${trial}: seed ${seed}, path ${path || 'none'}\n${message}\n`);
    if (finding.given === undefined || this.figures[k].findings.length > 3) return;
    mkdirSync(inRoot('test/soak/cases'), { recursive: true });
    const file = `test/soak/cases/${trial.replaceAll(' ', '-')}-${seed}.json`;
    // Where in which file it was thrown is of this machine only.
    const kept = { ...finding, message: message.split('\n')[0] };
    writeFileSync(inRoot(file), `${JSON.stringify(kept, undefined, 2)}\n`);
    console.error(`kept as ${file}\n`);
  }
}

const startThread = (): Worker =>
  new Worker(fileURLToPath(import.meta.url), {
    workerData: 'soak',
    resourceLimits: { maxOldGenerationSizeMb: MOST_MEMORY },
  });

/** @returns what it answers; why it does not, where it ends or hangs */
const askThread = (thread: Worker, task: Task): Promise<Answer | Error> =>
  new Promise((resolve) => {
    const silent = setTimeout(() => end(new Error(`nothing came within ${SILENT} s`)), 1000 * SILENT);
    const ended = (code: number): void => end(new Error(`the thread ended with ${code}`));
    const end = (outcome: Answer | Error): void => {
      clearTimeout(silent);
      thread.off('message', end).off('error', end).off('exit', ended);
      resolve(outcome);
    };
    thread.on('message', end).on('error', end).on('exit', ended);
    thread.postMessage(task);
  });

/**
 * Try everything for a while, say what does not hold, and keep it as a file.
 * @param given options as typed
 * @returns whether everything held
 */
export async function soak(given: readonly string[]): Promise<boolean> {
  const { values } = parseArgs({
    args: [...given],
    options: {
      minutes: { type: 'string', default: String(MINUTES) },
      seed: { type: 'string', default: '1' },
      threads: { type: 'string', default: String(availableParallelism()) },
      only: { type: 'string', multiple: true },
      write: { type: 'boolean', default: false },
    },
  });
  const [minutes, seed, threads] = [values.minutes, values.seed, values.threads].map(Number);
  const { only } = values;
  const trials = TRIALS.filter(({ name, group }) => !only || only.includes(name) || only.includes(group));
  if (!(minutes > 0 && threads >= 1 && Number.isSafeInteger(seed) && trials.length > 0)) {
    console.error('npm run soak -- [--minutes 60] [--seed 1] [--threads 2] [--only "two tabs"] [--write]');
    return false;
  }
  console.error(`${minutes} minutes from seed ${seed} on, ${threads} at a time`);
  const run = new Soak(trials, seed, Date.now() + 60_000 * minutes);
  await run.run(threads);
  const before = existsSync(inRoot(REPORT)) ? readFileSync(inRoot(REPORT), 'utf8') : '';
  const report = reportOf(run.figures, { minutes, seed, threads, listened: LISTENED }, before);
  console.log(report);
  if (values.write) writeFileSync(inRoot(REPORT), report);
  return run.figures.every(({ findings }) => findings.length === 0);
}
