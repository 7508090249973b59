import { arrivalMemory } from '../../engine/place/stations/arrival.ts';
import { receive } from '../../engine/reception/path/receive.ts';
import type { Reception } from '../../engine/reception/path/types.ts';
import type { SetDescription } from '../../engine/set/description.ts';
import type { When } from '../description/when.ts';
import { coastFor } from './coast.ts';
import { type Curves, curvesFor } from './curves.ts';
import type { Reply } from './latest.ts';

export interface ReceptionQuestion {
  readonly about: 'reception';
  readonly set: SetDescription;
  readonly time: When;
  /** For which stations to work out what would help most; none if left out. */
  readonly helpFor?: 'all';
}

export interface CurvesQuestion {
  readonly about: 'curves';
  readonly set: SetDescription;
  readonly station: number;
  /** Ends of what the set tunes to, Hz. */
  readonly covered: readonly [number, number];
  readonly time: When;
}

export type Question = ReceptionQuestion | CurvesQuestion;

const memory = arrivalMemory();

async function answer(question: Question): Promise<Reception | Curves | undefined> {
  const { set, time } = question;
  const options = { time, memory, coast: await coastFor(set.place) };
  return question.about === 'curves'
    ? curvesFor(set, question.station, question.covered, options)
    : receive(set, { ...options, helpFor: question.helpFor });
}

// A thin shell: the engine answers, this hands the answer back.
addEventListener('message', async ({ data }: MessageEvent<Question>) => {
  let reply: Reply<Reception | Curves | undefined>;
  try {
    reply = { answer: await answer(data) };
  } catch (error) {
    reply = { error: (error as Error).message };
  }
  postMessage(reply);
});
