import { type Match, matching, type SetDescription, trialsOf } from '../../../../engine/index.ts';
import { errorText } from '../../../../outputs/words/index.ts';
import type { When } from '../../../description/when.ts';
import { coastFor } from '../../../workers/coast.ts';
import type { Reply } from '../../../workers/latest.ts';

export interface MatchQuestion {
  readonly set: SetDescription;
  readonly station: number;
  readonly time: When;
}

addEventListener('message', async ({ data }: MessageEvent<MatchQuestion>) => {
  let reply: Reply<Match[]>;
  try {
    const coast = await coastFor(data.set.place);
    reply = { answer: matching(trialsOf(data.set, { time: data.time, coast }), data.station, { withCoverage: true }) };
  } catch (error) {
    reply = { error: errorText(error) };
  }
  postMessage(reply);
});
