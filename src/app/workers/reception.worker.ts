import { receive } from '../../engine/reception/receive.ts';
import type { Reception } from '../../engine/reception/types.ts';
import type { SetDescription } from '../../engine/set/description.ts';
import type { Reply } from './latest.ts';

export interface Question {
  readonly set: SetDescription;
  readonly time: 'day' | 'night';
  /** For which stations to work out what would help most; none if left out. */
  readonly helpFor?: 'all';
}

// A thin shell: the engine answers, this hands the answer back.
addEventListener('message', ({ data }: MessageEvent<Question>) => {
  let reply: Reply<Reception>;
  try {
    reply = { answer: receive(data.set, { time: data.time, helpFor: data.helpFor }) };
  } catch (error) {
    reply = { error: (error as Error).message };
  }
  postMessage(reply);
});
