import { addBand, type BandCoil, type BandName, type WrittenDescription } from '../../../../engine/index.ts';
import { rewindWords } from '../../../../outputs/words/index.ts';
import { answerMessages } from '../../../workers/answer-messages.ts';

export interface AddBandQuestion {
  readonly written: unknown;
  readonly to: BandName;
  readonly coil: BandCoil;
}

export interface AddBandAnswer {
  readonly sentences: readonly string[];
  /** Coils that the band has of its own. */
  readonly coils: readonly string[];
  readonly written: unknown;
  readonly index: number;
}

answerMessages(({ written, to, coil }: AddBandQuestion): AddBandAnswer | undefined => {
  const before = written as WrittenDescription;
  const added = addBand(before, to, coil);
  return (
    added && {
      sentences: rewindWords(added.rewound),
      coils: added.written.coils.slice(before.coils.length).map(({ name }) => String(name)),
      written: added.written,
      index: added.index,
    }
  );
});
