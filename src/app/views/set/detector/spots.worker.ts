import {
  type CrystalSpot,
  crystalSurvey,
  type HeardThrough,
  heardAtTouch,
  type SetDescription,
  type WhiskerPosition,
} from '../../../../engine/index.ts';
import { crystalSpots, errorText } from '../../../../outputs/words/index.ts';
import type { When } from '../../../description/when.ts';
import { coastFor } from '../../../workers/coast.ts';
import type { Reply } from '../../../workers/latest.ts';

export interface SpotsQuestion {
  readonly set: SetDescription;
  readonly station: number;
  readonly time: When;
  readonly seed: number;
  readonly whisker: WhiskerPosition;
}

export interface SpotsAnswer {
  readonly here: HeardThrough;
  /** What is heard here over what a good spot gives, dB. */
  readonly overGood: number;
  /** What spots are worth, in words. */
  readonly text: string;
}

/** The spots of a set and station are the same wherever the whisker stands. */
let cached: { readonly key: string; readonly worth: readonly CrystalSpot[] } | undefined;

addEventListener('message', async ({ data }: MessageEvent<SpotsQuestion>) => {
  let reply: Reply<SpotsAnswer>;
  try {
    const { set, station, time, seed, whisker } = data;
    const options = { time, coast: await coastFor(set.place) };
    const key = JSON.stringify([set, station, time, seed, whisker.material]);
    if (cached?.key !== key)
      cached = { key, worth: crystalSurvey(set, station, { ...options, seed, material: whisker.material }) };
    const here = heardAtTouch(set, station, seed, whisker, options);
    const good = cached.worth.find((s) => s.quality === 'good') ?? cached.worth[cached.worth.length - 1];
    reply = {
      answer: {
        here,
        overGood: here.soundPressureLevel - good.soundPressureLevel,
        text: crystalSpots(cached.worth, set.place.stations[station].name),
      },
    };
  } catch (error) {
    reply = { error: errorText(error) };
  }
  postMessage(reply);
});
