import {
  type Edit,
  heardAfter,
  type SetDescription,
  trapEffects,
  trapFor,
  trialsOf,
  twoCircuitsEdits,
  twoCircuitsFor,
} from '../../../../engine/index.ts';
import { trapEffectWords, trapTexts, twoCircuitsTexts, twoCircuitsWords } from '../../../../outputs/words/index.ts';
import type { When } from '../../../description/when.ts';
import { answerMessages } from '../../../workers/answer-messages.ts';
import { coastFor } from '../../../workers/coast.ts';

/** What is to be worked out for a station: a trap for another, two circuits, or what the traps do that there are. */
export interface ReworkQuestion {
  readonly set: SetDescription;
  readonly written: unknown;
  readonly station: number;
  readonly time: When;
  readonly what: 'two circuits' | 'traps' | { readonly stop: number };
}

export interface ReworkAnswer {
  /** One list for each trap, or for what is made. */
  readonly sentences: readonly (readonly string[])[];
  readonly changes: readonly Edit[];
}

async function answer({ set, written, station, time, what }: ReworkQuestion): Promise<ReworkAnswer> {
  const coast = await coastFor(set.place);
  const trials = trialsOf(set, { time, coast });
  if (what === 'traps')
    return { sentences: trapEffects(trials, station).map((effect) => trapEffectWords(effect)), changes: [] };
  if (what === 'two circuits') {
    const facts = twoCircuitsFor(trials, station);
    return facts
      ? {
          sentences: [twoCircuitsWords(facts, heardAfter(trials, twoCircuitsEdits(set, facts)))],
          changes: twoCircuitsEdits(written, facts),
        }
      : { sentences: [[twoCircuitsTexts.none]], changes: [] };
  }
  const offer = trapFor(trials, { stop: what.stop, target: station });
  return offer
    ? {
        sentences: [trapEffectWords(offer.effect, heardAfter(trials, offer.changes, what.stop))],
        changes: offer.changes,
      }
    : { sentences: [[trapTexts.none]], changes: [] };
}

answerMessages(answer);
