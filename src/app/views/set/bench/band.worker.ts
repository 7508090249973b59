import {
  type BandName,
  type FrequencyRange,
  type Move,
  moveBand,
  rewindFor,
  SameBandError,
  type SetDescription,
} from '../../../../engine/index.ts';
import { moveWords, rewindWords } from '../../../../outputs/words/index.ts';
import { answerMessages } from '../../../workers/answer-messages.ts';

export interface BandQuestion {
  readonly set: SetDescription;
  /** A band by its name, to which the set is moved; else only its turns are looked for. */
  readonly to?: BandName;
  readonly band: FrequencyRange;
}

export interface BandAnswer {
  readonly sentences: readonly string[];
  readonly changes: Move['changes'];
}

const answer = ({ set, to, band }: BandQuestion): BandAnswer => {
  try {
    const move = to && moveBand(set, { to });
    if (move) return { sentences: moveWords(move), changes: move.changes };
  } catch (refusal) {
    if (!(refusal instanceof SameBandError)) throw refusal;
  }
  const rewound = rewindFor(set, band);
  return { sentences: rewindWords(rewound), changes: rewound.changes };
};

answerMessages(answer);
