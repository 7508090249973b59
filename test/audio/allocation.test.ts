import { readFileSync } from 'node:fs';
import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import { expect, it } from 'vitest';
import { readValue } from '../../src/engine/set/read.ts';
import { BLOCK, openListening } from '../../src/outputs/audio/index.ts';

setFlagsFromString('--expose-gc');
const collect = runInNewContext('gc') as () => void;

/** Bytes of arrays of numbers, and of all else on the heap, left by each of so many runs before anything is collected. */
function bytesPerRun(run: () => void, times = 400): { arrays: number; heap: number } {
  collect();
  collect();
  const before = process.memoryUsage();
  for (let i = 0; i < times; i++) run();
  const after = process.memoryUsage();
  return {
    arrays: (after.arrayBuffers - before.arrayBuffers) / times,
    heap: (after.heapUsed - before.heapUsed) / times,
  };
}

/** A few numbers kept from block to block are new ones on the heap; a number for every sample would be 4 kB. */
const A_FEW_NUMBERS = 1500;

it('a block of sound makes no arrays and no objects', () => {
  const read = readValue(JSON.parse(readFileSync('examples/medium-wave-galena.json', 'utf8')));
  if (!read.ok) throw new Error('the example does not read');
  const listening = openListening(read.set, { prepared: true, time: 'night' });
  const out = new Float32Array(BLOCK);
  const block = () => listening.process(out, BLOCK);
  // Until the code is compiled for good, which a busy machine does late, numbers are boxed: what a block allocates by
  // itself is there in every window of 400.
  let used = bytesPerRun(block);
  for (let window = 0; window < 30 && !(used.arrays <= 0 && used.heap < A_FEW_NUMBERS); window++)
    used = bytesPerRun(block);
  // What was there before may be collected meanwhile; nothing may come to it.
  expect(used.arrays).toBeLessThanOrEqual(0);
  expect(used.heap).toBeLessThan(A_FEW_NUMBERS);
  // The measure is one that could fail.
  let kept = new Float32Array(0);
  const wasteful = () => {
    block();
    kept = new Float32Array(BLOCK);
  };
  expect(bytesPerRun(wasteful).arrays).toBeGreaterThan(0);
  expect(kept.length).toBe(BLOCK);
});
