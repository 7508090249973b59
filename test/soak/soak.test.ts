import { readdirSync, readFileSync } from 'node:fs';
import { afterEach, describe, expect, it } from 'vitest';
import { notices } from '../../src/app/state/notices.ts';
import { type Finding, runBatch } from './trial.ts';
import { trialsWith } from './trials.ts';

/** A few of each, the same every time; `npm run soak` tries others for as long as it is given. */
const FEW = { readers: 60, laws: 100, storage: 4, listening: 1 };
const LISTENED = 1;
const TRIALS = trialsWith(LISTENED);
const FOLDER = new URL('cases/', import.meta.url);

afterEach(() => {
  notices.value = [];
});

describe('a short run', () => {
  it.each(TRIALS)('$name: $says', async (one) => {
    const { finding, cases } = await runBatch(one, 1, { cases: FEW[one.group] });
    expect(finding).toBeUndefined();
    expect(cases).toBe(FEW[one.group]);
  });
});

it.each(readdirSync(FOLDER).sort())('%s, which a longer run has found, does not happen any more', async (file) => {
  const { trial, given } = JSON.parse(readFileSync(new URL(file, FOLDER), 'utf8')) as Finding;
  await TRIALS.find(({ name }) => name === trial)!.check(given);
});
