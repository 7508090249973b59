import type { Answered } from './answered.ts';
import type { PossibleCheck } from './checks.ts';
import { type PartFault, remediesOf, remedyClass } from './fault.ts';
import type { FaultModel } from './fault-model.ts';
import { expectedOfPair, type RankedPair, rankedPairs } from './pairs.ts';

/** A remedy with what would call for it. */
export interface RankedCause {
  /** Faults that one remedy mends on one part, likeliest first. */
  readonly faults: readonly { readonly fault: PartFault; readonly probability: number }[];
  readonly probability: number;
  /** How well each answer fits: its probability with this cause over that with all. */
  readonly fits: readonly { readonly check: string; readonly ratio: number; readonly probability: number }[];
}

/** The check that tells most for its trouble. */
export interface NextCheck {
  readonly check: PossibleCheck;
  /** Bits expected. */
  readonly information: number;
  /** Most likely answer with nothing wrong, and with the likeliest cause. */
  readonly ifSound: number;
  readonly ifCause: number;
}

/** Causes ranked by what was observed, and what to check next. */
export interface Diagnosis {
  /** If there is one fault: likeliest first; probabilities add up to 1. */
  readonly causes: readonly RankedCause[];
  /** Two faults at once, where one alone does not explain the answers well enough; likeliest first. */
  readonly pairs: readonly RankedPair[];
  /** None is worth its trouble, or the cause is known: then nothing. */
  readonly next?: NextCheck;
  /** Causes that no check of this set tells from the first: by their place in `causes`. */
  readonly tied: readonly number[];
  /** A pair: no check is left, and two faults at once are likelier than one. */
  readonly state: 'known' | 'open' | 'tied' | 'pair';
  /** Of each case: how likely it is now. */
  readonly posterior: Float64Array;
}

/** So sure is sure of a remedy; and of one fault among those that it mends. */
const SURE = 0.9;
const SURE_WHICH = 0.75;
/** Bits: less is not worth looking. Some causes are never sure, and a search for certainty would ask on and on. */
const LEAST_INFORMATION = 0.05;
/**
 * Minutes that any answer costs beside its own: finding how it is done, unplugging, writing it down. With less, many small
 * signs are asked for before the one reading that tells.
 */
const ANSWER = 8;
/** An answer less likely than this after all the others does not fit them. */
const CONTRADICTS = 0.012;

/** How often each check was answered: a reading may be taken twice, no more. */
const MOST_REPEATS = 1;

/** log₂ with nothing for nothing. */
export const entropyOf = (p: number): number => (p > 0 ? -p * Math.log2(p) : 0);

/**
 * Causes by what was observed, by Bayes' rule over all cases, and the check that tells most for its trouble.
 * @param model of the set
 * @param answered checks with their answers; one that was not tried is not there
 * @param impossible ids of checks that cannot be done here
 * @returns ranked causes and the next check
 */
export function diagnose(
  model: FaultModel,
  answered: readonly Answered[],
  impossible: ReadonlySet<string> = new Set(),
): Diagnosis {
  const { posterior, evidence } = posteriorOf(model, answered);
  const pairs = rankedPairs(model, answered, evidence);
  const ofPairs = pairs.reduce((sum, { probability }) => sum + probability, 0);
  const { classes, classOf } = model;
  const byClass = new Float64Array(classes.length);
  const byFault = new Float64Array(model.faults.length);
  posterior.forEach((p, i) => {
    byFault[model.faultOf[i]] += p;
    byClass[classOf[model.faultOf[i]]] += p;
  });
  const order = [...classes.keys()].sort((a, b) => byClass[b] - byClass[a]);
  const causes = order.map(
    (k): RankedCause => ({
      faults: model.faults
        .map((fault, f) => ({ fault, probability: byFault[f] }))
        .filter((_, f) => classOf[f] === k)
        .sort((a, b) => b.probability - a.probability),
      probability: byClass[k],
      fits: [],
    }),
  );
  const fitted = withFits(model, answered, causes);
  const done = new Map<string, number>();
  for (const { check } of answered) done.set(check, (done.get(check) ?? 0) + 1);
  const remedies = pairs.map(({ faults }) => remediesOf(faults));
  const distinct = [...new Set(remedies)];
  const beliefs: Beliefs = {
    posterior,
    ofPairs,
    causes: model.faults.length + distinct.length,
    pairs: pairs.map(({ faults, probability }, i) => ({
      cause: model.faults.length + distinct.indexOf(remedies[i]),
      probability,
      expected: expectedOfPair(model, answered, faults),
    })),
  };
  const best = bestCheck(model, beliefs, (check) =>
    impossible.has(check.id) ? false : (done.get(check.id) ?? 0) < (mayRepeat(check) ? MOST_REPEATS + 1 : 1),
  );
  const isRemedyKnown = (1 - ofPairs) * causes[0].probability >= SURE;
  const isFaultKnown = isRemedyKnown && causes[0].faults[0].probability >= SURE_WHICH * causes[0].probability;
  const isPair = pairs.some(({ probability }) => probability >= SURE);
  const next = !isFaultKnown && !isPair && best && best.information >= LEAST_INFORMATION ? best : undefined;
  // What mends it is known, and no check says which of its faults it is.
  const isKnown = isRemedyKnown && !next;
  const tied = isKnown ? [] : tiedWith(model, order);
  return {
    causes: fitted,
    next: next && { ...next, ...expectedAnswers(model, next.check, causes[0], posterior) },
    tied,
    pairs,
    state: isKnown ? 'known' : next ? 'open' : ofPairs > 0.5 ? 'pair' : 'tied',
    posterior,
  };
}

/** A reading may be taken twice; what one hears once is heard the same again. */
const mayRepeat = ({ check }: PossibleCheck): boolean => check.kind === 'ohms' || check.kind === 'volts';

/** Of each case after the answers; and how likely the answers are with all cases together. */
function posteriorOf(
  model: FaultModel,
  answered: readonly Answered[],
): { readonly posterior: Float64Array; readonly evidence: number } {
  const log = Float64Array.from(model.prior, Math.log);
  for (const { check, answer } of answered) {
    const table = model.answers.get(check);
    if (!table) continue;
    const n = table.length / log.length;
    for (let i = 0; i < log.length; i++) log[i] += Math.log(table[i * n + answer]);
  }
  const top = log.reduce((a, b) => Math.max(a, b), Number.NEGATIVE_INFINITY);
  let sum = 0;
  for (let i = 0; i < log.length; i++) sum += log[i] = Math.exp(log[i] - top);
  for (let i = 0; i < log.length; i++) log[i] /= sum;
  return { posterior: log, evidence: sum * Math.exp(top) };
}

interface Beliefs {
  /** If there is one fault. */
  readonly posterior: Float64Array;
  /** How likely two faults at once are. */
  readonly ofPairs: number;
  /** How many there are: the faults of the model, and after them what mends pairs. */
  readonly causes: number;
  /** Two faults at once, beside all single ones. */
  readonly pairs: readonly {
    /** By its place among all causes. */
    readonly cause: number;
    readonly probability: number;
    readonly expected: (check: PossibleCheck) => Float64Array;
  }[];
}

/** The check with the most bits for its minutes. Faults that one remedy mends are told apart too: where to look. */
function bestCheck(
  model: FaultModel,
  beliefs: Beliefs,
  may: (check: PossibleCheck) => boolean,
): { check: PossibleCheck; information: number } | undefined {
  let best: { check: PossibleCheck; information: number } | undefined;
  let most = 0;
  for (const check of model.checks) {
    if (!may(check)) continue;
    const information = informationOf(model, check, beliefs);
    const worth = information / (ANSWER + check.effort);
    if (worth > most) [most, best] = [worth, { check, information }];
  }
  return best;
}

/** Of single causes and of pairs together: I = H(answers) − Σ P(cause)·H(answers | cause). */
function informationOf(
  { faultOf, answers }: FaultModel,
  check: PossibleCheck,
  { posterior, ofPairs, causes: count, pairs }: Beliefs,
): number {
  const { id, answers: n } = check;
  const table = answers.get(id)!;
  const joint = new Float64Array(count * n);
  for (let i = 0; i < posterior.length; i++) {
    const p = posterior[i];
    if (p < 1e-9) continue;
    const at = faultOf[i] * n;
    for (let a = 0; a < n; a++) joint[at + a] += (1 - ofPairs) * p * table[i * n + a];
  }
  for (const { cause, probability, expected } of pairs)
    for (const [a, share] of expected(check).entries()) joint[cause * n + a] += probability * share;
  const causes = Float64Array.from({ length: count }, (_, k) =>
    joint.subarray(k * n, (k + 1) * n).reduce((sum, p) => sum + p, 0),
  );
  let information = 0;
  for (let a = 0; a < n; a++) {
    let all = 0;
    for (let k = 0; k < causes.length; k++) all += joint[k * n + a];
    information += entropyOf(all);
    for (let k = 0; k < causes.length; k++)
      if (causes[k] > 0) information -= causes[k] * entropyOf(joint[k * n + a] / causes[k]);
  }
  return information;
}

/** Mean probability of each answer over some cases. */
function expectedOf(
  model: FaultModel,
  { id, answers: n }: PossibleCheck,
  weightOf: (index: number) => number,
): Float64Array {
  const table = model.answers.get(id)!;
  const out = new Float64Array(n);
  let sum = 0;
  for (let i = 0; i < model.prior.length; i++) {
    const w = weightOf(i);
    if (w === 0) continue;
    sum += w;
    for (let a = 0; a < n; a++) out[a] += w * table[i * n + a];
  }
  return out.map((p) => p / sum);
}

export const likeliest = (p: Float64Array): number => p.indexOf(Math.max(...p));

function expectedAnswers(model: FaultModel, check: PossibleCheck, first: RankedCause, posterior: Float64Array) {
  const own = new Set(first.faults.map(({ fault }) => fault.id));
  const isSound = model.faults.map(({ remedy }) => remedy === 'none');
  const of = (isOf: (fault: number) => boolean, weights: Float64Array): number =>
    likeliest(expectedOf(model, check, (i) => (isOf(model.faultOf[i]) ? weights[i] : 0)));
  return {
    ifSound: of((f) => isSound[f], model.prior),
    ifCause: of((f) => own.has(model.faults[f].id), posterior),
  };
}

/** How many causes have their fit given. */
const MOST_FITTED = 6;

function withFits(model: FaultModel, answered: readonly Answered[], causes: readonly RankedCause[]): RankedCause[] {
  const all = model.classes.map((_, k) => k);
  const shares = new Float64Array(model.classes.length);
  model.prior.forEach((p, i) => {
    shares[model.classOf[model.faultOf[i]]] += p;
  });
  return causes.map((cause, rank) => {
    if (rank >= MOST_FITTED) return cause;
    const own = model.classes.indexOf(remedyClass(cause.faults[0].fault));
    const fits = answered.flatMap(({ check, answer }) => {
      const means = model.byClass.get(check);
      if (!means) return [];
      const n = means.length / all.length;
      const usual = all.reduce((sum, k) => sum + shares[k] * means[k * n + answer], 0);
      const probability = means[own * n + answer];
      return [{ check, ratio: probability / usual, probability }];
    });
    return { ...cause, fits };
  });
}

/** An answer that does not fit the others: its probability after all of them. */
export interface Contradiction {
  readonly check: string;
  readonly probability: number;
}

/**
 * Each answer by what all the others lead to expect.
 * @param model of the set
 * @param answered at least three answers
 * @returns those that do not fit: each a reading to be taken again, or a sign of a second fault
 */
export function contradictionsAmong(model: FaultModel, answered: readonly Answered[]): readonly Contradiction[] {
  if (answered.length < 3) return [];
  return answered.flatMap(({ check, answer }, k) => {
    const possible = model.checks.find(({ id }) => id === check);
    if (!possible) return [];
    const { posterior: others } = posteriorOf(
      model,
      answered.filter((_, j) => j !== k),
    );
    const probability = expectedOf(model, possible, (i) => others[i])[answer];
    return probability < CONTRADICTS ? [{ check, probability }] : [];
  });
}

/** Above this share in common over all checks two causes are one to whoever looks. */
const ALIKE = 0.5;

/** Bhattacharyya's coefficient of the first cause and each of the next, over every check there is. */
function tiedWith(model: FaultModel, order: readonly number[]): readonly number[] {
  const [first] = order;
  return order.slice(1, MOST_FITTED).flatMap((k, rank) => (overlap(model, first, k) > ALIKE ? [rank + 1] : []));
}

function overlap({ checks, byClass }: FaultModel, a: number, b: number): number {
  let product = 1;
  for (const { id, answers: n } of checks) {
    const means = byClass.get(id)!;
    let sum = 0;
    for (let k = 0; k < n; k++) sum += Math.sqrt(means[a * n + k] * means[b * n + k]);
    product *= sum;
    if (product < ALIKE) return product;
  }
  return product;
}
