import type { Answered } from '../../engine/faults/answered.ts';
import type { PossibleCheck } from '../../engine/faults/checks.ts';
import { contradictionsAmong, type Diagnosis, diagnose } from '../../engine/faults/diagnose.ts';
import type { FaultModel } from '../../engine/faults/fault-model.ts';
import type { PartId } from '../../engine/network/ids.ts';
import type { Ratio } from '../../engine/units/quantities.ts';
import {
  answerText,
  checkName,
  checkText,
  faultAnswer,
  faultCautionTexts,
  faultText,
  remedyTexts,
} from '../words/index.ts';

/** A likely cause in words, with what speaks for and against it. */
export interface ShownCause {
  readonly probability: Ratio;
  /** The likeliest of the faults that its remedy mends. */
  readonly faults: readonly string[];
  readonly parts: readonly PartId[];
  readonly remedy: string;
  readonly cautions: readonly string[];
  /** Observations with their answers. */
  readonly fits: readonly string[];
  readonly fitsNot: readonly string[];
}

/** Two faults at once, in words. */
export interface ShownPair {
  /** Among single faults and pairs together. */
  readonly probability: Ratio;
  readonly faults: readonly string[];
}

/** The check to make next, in words. */
export interface ShownNext {
  readonly check: PossibleCheck;
  readonly text: string;
  /** What to expect with nothing wrong, and with the likeliest cause. */
  readonly expect: string;
  readonly cautions: readonly string[];
}

/** How far a search has come, in words. */
export interface FaultSearch {
  /** Likeliest first; those hardly likely are left out. */
  readonly causes: readonly ShownCause[];
  /** Two faults at once, where one alone does not explain the observations; likeliest first. */
  readonly pairs: readonly ShownPair[];
  readonly next?: ShownNext;
  /** Why it ends, where it ends. */
  readonly end?: string;
  /** Which causes are not told from the first, where there are some. */
  readonly tied?: string;
  /** Observations that do not fit the others, by their checks. */
  readonly contradictions: readonly { readonly check: string; readonly text: string; readonly probability: Ratio }[];
  readonly diagnosis: Diagnosis;
}

/** How many causes are shown. */
const SHOWN = 5;
/** A cause less likely than this is not worth a line. */
const LEAST_SHOWN = 0.01;
/** Pairs less likely than this are not worth a line, and no more than a few are. */
const LEAST_PAIR = 0.1;
const SHOWN_PAIRS = 3;
/** Answers a cause makes so much likelier, or less likely, than all causes together. */
const FITS = 1.5;
const FITS_NOT = 0.4;
const MOST_FITS = 3;

/**
 * A search for a fault in words: causes with what speaks for and against them, the next check, and how it ends.
 * @param model of the set
 * @param answered checks with their answers
 * @param impossible ids of checks that cannot be done, or need not be taken again
 */
export function faultSearch(
  model: FaultModel,
  answered: readonly Answered[],
  impossible: ReadonlySet<string> = new Set(),
): FaultSearch {
  const { built } = model;
  const diagnosis = diagnose(model, answered, impossible);
  const { causes, pairs, next, state, tied } = diagnosis;
  const checkOf = (id: string): PossibleCheck => model.checks.find((check) => check.id === id)!;
  const texts = ({ faults }: Diagnosis['causes'][number]): readonly string[] => [
    ...new Set(likely(faults).map(({ fault }) => faultText(fault, built))),
  ];
  const observed = ({ check: id }: { readonly check: string }): string => {
    const check = checkOf(id);
    const { answer } = answered.find((one) => one.check === id)!;
    return faultAnswer.observed(checkName(check.check, built), answerText(check, answer));
  };
  return {
    causes: causes
      .slice(0, SHOWN)
      .filter(({ probability }, rank) => rank === 0 || probability >= LEAST_SHOWN)
      .map((cause) => ({
        probability: cause.probability,
        faults: texts(cause),
        parts: [...new Set(likely(cause.faults).map(({ fault }) => fault.part))],
        remedy: remedyTexts[cause.faults[0].fault.remedy],
        cautions: cause.faults[0].fault.cautions.map((caution) => faultCautionTexts[caution]),
        fits: cause.fits
          .filter(({ ratio }) => ratio > FITS)
          .sort((a, b) => b.ratio - a.ratio)
          .slice(0, MOST_FITS)
          .map(observed),
        fitsNot: cause.fits
          .filter(({ ratio }) => ratio < FITS_NOT)
          .sort((a, b) => a.ratio - b.ratio)
          .slice(0, MOST_FITS)
          .map(observed),
      })),
    pairs: pairs
      .filter(({ probability }) => probability >= LEAST_PAIR)
      .slice(0, SHOWN_PAIRS)
      .map(({ probability, faults }) => ({ probability, faults: faults.map((fault) => faultText(fault, built)) })),
    next: next && {
      check: next.check,
      text: checkText(next.check.check, built),
      expect: faultAnswer.expect(answerText(next.check, next.ifSound), answerText(next.check, next.ifCause)),
      cautions: next.check.cautions.map((caution) => faultCautionTexts[caution]),
    },
    end: ends[state],
    tied:
      (state === 'known' || state === 'tied') && tied.length > 0
        ? faultAnswer.tiedWith(tied.map((rank) => texts(causes[rank]).join('; ')))
        : undefined,
    contradictions: contradictionsAmong(model, answered).map(({ check: id, probability }) => {
      const check = checkOf(id);
      const { answer } = answered.find((one) => one.check === id)!;
      const text = faultAnswer.contradicts(checkName(check.check, built), answerText(check, answer));
      return { check: id, text, probability };
    }),
    diagnosis,
  };
}

const ends: Readonly<Record<Diagnosis['state'], string | undefined>> = {
  open: undefined,
  known: faultAnswer.known,
  tied: faultAnswer.tied,
  pair: faultAnswer.pairKnown,
};

/** Of the faults of one cause those worth naming. */
const likely = (faults: Diagnosis['causes'][number]['faults']): Diagnosis['causes'][number]['faults'] =>
  faults.filter(({ probability }) => probability > 0.1 * faults[0].probability);
