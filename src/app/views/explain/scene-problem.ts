import { waveProblems } from '../../../outputs/words/index.ts';

/** An error whose message is made for the person at the page. */
export class ShownError extends Error {}

/** What to tell the person of an error: a programmer's message is never shown. */
export const waveProblemText = (error: unknown): string => {
  if (error instanceof ShownError) return error.message;
  return error instanceof RangeError ? waveProblems.outOfRange : waveProblems.failed;
};
