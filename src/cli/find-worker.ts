import { parentPort, workerData } from 'node:worker_threads';
import { type FindTask, findWorker } from '../engine/index.ts';
import { packagedCoastFor } from './coast.ts';
import type { ThreadData } from './find-threads.ts';

const { question, time } = workerData as ThreadData;
const work = findWorker(question, { time, coast: packagedCoastFor(question.read.place) });
parentPort!.on('message', (task: FindTask) => parentPort!.postMessage(work(task)));
