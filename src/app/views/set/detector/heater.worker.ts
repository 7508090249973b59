import { HEATER_WATCHED, heaterRuns, type SetDescription } from '../../../../engine/index.ts';
import type { HeaterCurves } from '../../../../outputs/plots/index.ts';
import { errorText, heaterSentences } from '../../../../outputs/words/index.ts';
import type { When } from '../../../description/when.ts';
import { coastFor } from '../../../workers/coast.ts';
import type { Reply } from '../../../workers/latest.ts';

export interface HeaterQuestion {
  readonly set: SetDescription;
  readonly station: number;
  readonly time: When;
}

// A thin shell: the engine answers, this hands the answer back.
addEventListener('message', async ({ data }: MessageEvent<HeaterQuestion>) => {
  let reply: Reply<HeaterCurves | undefined>;
  try {
    const runs = heaterRuns(data.set, data.station, { time: data.time, coast: await coastFor(data.set.place) });
    reply = {
      answer: runs && { ...runs, watched: HEATER_WATCHED, words: heaterSentences(runs.full, runs.less) },
    };
  } catch (error) {
    reply = { error: errorText(error) };
  }
  postMessage(reply);
});
