import { receive } from '../../engine/reception/receive.ts';
import type { Reception } from '../../engine/reception/types.ts';
import type { SetDescription } from '../../engine/set/description.ts';
import { type Curves, curvesFor } from './curves.ts';
import type { Reply } from './latest.ts';

export interface ReceptionQuestion {
  readonly about: 'reception';
  readonly set: SetDescription;
  readonly time: 'day' | 'night';
  /** For which stations to work out what would help most; none if left out. */
  readonly helpFor?: 'all';
}

export interface CurvesQuestion {
  readonly about: 'curves';
  readonly set: SetDescription;
  readonly station: number;
  /** Ends of what the set tunes to, Hz. */
  readonly covered: readonly [number, number];
}

export type Question = ReceptionQuestion | CurvesQuestion;

const answer = (question: Question): Reception | Curves | undefined =>
  question.about === 'curves'
    ? curvesFor(question.set, question.station, question.covered)
    : receive(question.set, { time: question.time, helpFor: question.helpFor });

// A thin shell: the engine answers, this hands the answer back.
addEventListener('message', ({ data }: MessageEvent<Question>) => {
  let reply: Reply<Reception | Curves | undefined>;
  try {
    reply = { answer: answer(data) };
  } catch (error) {
    reply = { error: (error as Error).message };
  }
  postMessage(reply);
});
