import type { SetDescription } from '../../../engine/index.ts';
import { PROGRAMME_RATE, recordedProgramme, renderListening, SOUND_RATE } from '../../../outputs/audio/index.ts';
import type { When } from '../../description/when.ts';
import { answerMessages } from '../../workers/answer-messages.ts';
import { coastFor } from '../../workers/coast.ts';

/** One set on a station, to be heard beside others. */
export interface SoundQuestion {
  readonly index: number;
  readonly set: SetDescription;
  readonly station: number;
  /** Of the station at the ear with this set, dB SPL. */
  readonly level?: number;
  /** What is amplified to the usual level for all sets, dB SPL. */
  readonly amplifiedFrom?: number;
  readonly time: When;
  /** What the station says, at the rate of programmes; left out: invented. */
  readonly spoken?: Float32Array;
}

const SECONDS = 6;
/** At both ends, so that the sound goes round without a click, s. */
const FADE = 0.03;

answerMessages(async (question: SoundQuestion): Promise<Float32Array> => {
  const { set, station, level, amplifiedFrom, time, spoken } = question;
  const sound = renderListening(set, {
    time,
    coast: await coastFor(set.place),
    station,
    level,
    amplifiedFrom,
    how: 'amplified',
    seconds: SECONDS,
    fadeIn: FADE,
    programmes: spoken && new Map([[station, recordedProgramme([spoken], PROGRAMME_RATE, 'speech')]]),
  });
  const last = Math.round(FADE * SOUND_RATE);
  for (let i = 0; i < last; i++) sound[sound.length - 1 - i] *= i / last;
  return sound;
});
