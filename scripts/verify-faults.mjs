// Plants faults in copies of sets, answers the checks asked for, and writes docs/fault-search.md; with names only prints.
import { once } from 'node:events';
import { availableParallelism } from 'node:os';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { isMainThread, parentPort, Worker } from 'node:worker_threads';
import { bundled } from './support/bundled.mjs';
import { nodeIsNewEnough } from './support/node-version.mjs';
import { inRoot } from './support/paths.mjs';

const FOLDER = 'verify-faults';

if (!isMainThread) {
  const { faultsPlayed } = await import(pathToFileURL(inRoot(`dist/${FOLDER}/fault-report.js`)).href);
  parentPort?.on('message', (job) => parentPort?.postMessage(faultsPlayed(job)));
} else if (nodeIsNewEnough()) {
  const options = process.argv.slice(2);
  const { faultJobs, reportFaults } = await bundled('test/support/fault-report.ts', FOLDER);
  reportFaults(options, await allOf(faultJobs(options)));
}

/**
 * Every job, as many at a time as there are processors.
 * @param {readonly object[]} jobs
 * @returns {Promise<object[]>} what came of each, in the order of the jobs
 */
async function allOf(jobs) {
  /** @type {object[]} */
  const results = [];
  let next = 0;
  const workOff = async () => {
    const worker = new Worker(fileURLToPath(import.meta.url));
    while (next < jobs.length) {
      const at = next++;
      console.error(`${at + 1} of ${jobs.length}: ${JSON.stringify(jobs[at])}`);
      const answered = once(worker, 'message');
      worker.postMessage(jobs[at]);
      [results[at]] = await answered;
    }
    await worker.terminate();
  };
  await Promise.all(Array.from({ length: Math.min(jobs.length, availableParallelism()) }, workOff));
  return results;
}
