import { compareDetectorsOn, type DetectorOnStation, type SetDescription } from '../../../../engine/index.ts';
import { errorText } from '../../../../outputs/words/index.ts';
import type { When } from '../../../description/when.ts';
import { coastFor } from '../../../workers/coast.ts';
import type { Reply } from '../../../workers/latest.ts';

export interface CompareQuestion {
  readonly set: SetDescription;
  readonly station: number;
  readonly time?: When;
}

addEventListener('message', async ({ data }: MessageEvent<CompareQuestion>) => {
  let reply: Reply<DetectorOnStation[]>;
  try {
    const options = { time: data.time, coast: await coastFor(data.set.place) };
    reply = { answer: compareDetectorsOn(data.set, data.station, undefined, true, options) };
  } catch (error) {
    reply = { error: errorText(error) };
  }
  postMessage(reply);
});
