import { compareDetectorsOn, type DetectorOnStation } from '../../engine/reception/compare.ts';
import type { SetDescription } from '../../engine/set/description.ts';
import type { Reply } from '../workers/latest.ts';

export interface CompareQuestion {
  readonly set: SetDescription;
  readonly station: number;
}

addEventListener('message', ({ data }: MessageEvent<CompareQuestion>) => {
  let reply: Reply<DetectorOnStation[]>;
  try {
    reply = { answer: compareDetectorsOn(data.set, data.station) };
  } catch (error) {
    reply = { error: (error as Error).message };
  }
  postMessage(reply);
});
