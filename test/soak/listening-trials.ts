import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import fc from 'fast-check';
import { BLOCK, openListening, SOUND_RATE } from '../../src/outputs/audio/index.ts';
import { EXAMPLE_SETS } from './base-files.ts';
import { type Trial, trial } from './trial.ts';

/** What the limiter never lets through, as a share of full scale. */
const CEILING = 0.5;
/** A bend of the sound from one block to the next counts as a click when it is so many times sharper than any within them. */
const SHARPER = 4;
/** Bends fainter than this are no clicks, as a share of full scale: 0.1 % of the ceiling. */
const INAUDIBLE = CEILING / 1000;
/** Silence to the last digit for so long is a gap, s: there is noise at every setting of the dial. */
const GAP = 0.005;
/** The heap may grow by so much in half a stretch, bytes. */
const GROWTH = 2e6;
/** Where it grows more, so many halves more must show that it comes to rest: the dial has then been everywhere. */
const MORE = 4;

setFlagsFromString('--expose-gc');
const collect = runInNewContext('gc') as () => void;

/** What is held, bytes: one collection leaves some of what nobody holds any more. */
function memory(): number {
  let least = Number.POSITIVE_INFINITY;
  for (let times = 0; times < 4; times++) {
    collect();
    const { heapUsed, arrayBuffers } = process.memoryUsage();
    least = Math.min(least, heapUsed + arrayBuffers);
  }
  return least;
}

/** The dial by turns swept through, stepped, and left alone. @param at s */
function dialAt(at: number, sweep: number, phase: number): number {
  const turn = Math.floor(at / 7) % 3;
  const swept = 0.5 - 0.5 * Math.cos(2 * Math.PI * (at / sweep + phase));
  if (turn === 0) return swept;
  return turn === 1 ? Math.round(8 * swept) / 8 : 0.5 - 0.5 * Math.cos(2 * Math.PI * phase);
}

interface Stretch {
  readonly set: number;
  readonly seed: number;
  /** s, once there and back. */
  readonly sweep: number;
  readonly phase: number;
  /** s of sound. */
  readonly seconds: number;
}

function listen({ set, seed, sweep, phase, seconds }: Stretch): void {
  const listening = openListening(EXAMPLE_SETS[set], { seed, fadeIn: 0 });
  const out = new Float32Array(BLOCK);
  let blocks = Math.round((seconds * SOUND_RATE) / BLOCK);
  const half = blocks >> 1;
  // Beside other trials of the same process only a long stretch says something of memory.
  const isLong = seconds >= 60;
  let [last, before, silent, sharpestBefore, held] = [0, 0, 0, 0, 0];
  const longest = blocks + MORE * half;
  for (let block = 0; block < blocks; block++) {
    const at = (block * BLOCK) / SOUND_RATE;
    listening.tune(dialAt(at, sweep, phase));
    listening.process(out, BLOCK);
    let edge = 0;
    let sharpest = 0;
    for (let i = 0; i < BLOCK; i++) {
      const x = out[i];
      if (!(Math.abs(x) <= CEILING)) throw new Error(`${x} at ${at} s passes the limiter`);
      const bend = Math.abs(x - 2 * last + before);
      if (i < 2) edge = Math.max(edge, bend);
      else sharpest = Math.max(sharpest, bend);
      silent = x === 0 ? silent + 1 : 0;
      if (silent > GAP * SOUND_RATE && at > 0.1) throw new Error(`a gap at ${at} s`);
      before = last;
      last = x;
    }
    if (block > 4 && edge > SHARPER * Math.max(sharpest, sharpestBefore) + INAUDIBLE)
      throw new Error(`a click at ${at} s: ${edge} between blocks, ${Math.max(sharpest, sharpestBefore)} within`);
    sharpestBefore = sharpest;
    if (isLong && block === half) held = memory();
    if (isLong && block === blocks - 1) {
      const now = memory();
      const grown = now - held;
      held = now;
      if (grown > GROWTH && blocks === longest) throw new Error(`memory still grows by ${grown} bytes`);
      if (grown > GROWTH) blocks = Math.min(longest, blocks + half);
    }
  }
  if (listening.clock !== blocks * BLOCK) throw new Error(`the clock stands at ${listening.clock}`);
  if (listening.meters.lost > 0) throw new Error(`${listening.meters.lost} steps of the circuit were lost`);
}

/** @param seconds of sound in each stretch */
export const listeningTrial = (seconds: number): Trial =>
  trial({
    name: 'listening',
    group: 'listening',
    says: 'with the dial swept, stepped and left alone the sound has no gap and no click, passes no limiter and takes no more memory',
    cases: fc.noShrink(
      fc.record({
        set: fc.nat(EXAMPLE_SETS.length - 1),
        seed: fc.integer({ min: 1, max: 1e6 }),
        sweep: fc.integer({ min: 2, max: 60 }),
        phase: fc.double({ min: 0, max: 1, noNaN: true }),
        seconds: fc.constant(seconds),
      }),
    ),
    check: listen,
    batch: 1,
    share: 14,
    longest: 20 * seconds,
  });
