import { type Match, matching } from '../../engine/find/matching.ts';
import type { SetDescription } from '../../engine/set/description.ts';
import type { Reply } from '../workers/latest.ts';

export interface MatchQuestion {
  readonly set: SetDescription;
  readonly station: number;
}

addEventListener('message', ({ data }: MessageEvent<MatchQuestion>) => {
  let reply: Reply<Match[]>;
  try {
    reply = { answer: matching(data.set, data.station) };
  } catch (error) {
    reply = { error: (error as Error).message };
  }
  postMessage(reply);
});
