import { type BuiltSet, builtSet } from '../built/built-set.ts';
import type { SetCircuit } from '../built/set-circuit.ts';
import { fromMap, lazilyOf } from '../numerics/lazily.ts';
import { textHash } from '../numerics/text-hash.ts';
import type { Ratio } from '../units/quantities.ts';
import type { Answered } from './answered.ts';
import { circuitWith, nuisances, seedOfSet } from './cases.ts';
import type { PossibleCheck } from './checks.ts';
import { answerShares, drawnCase, HEARERS, MIDDLE_SPREAD, shownToHearers } from './drawn-cases.ts';
import { type PartFault, remedyClass } from './fault.ts';
import type { FaultModel } from './fault-model.ts';
import type { SetShows } from './shown.ts';

/** Two faults at once. */
export interface RankedPair {
  readonly faults: readonly [PartFault, PartFault];
  /** Among single faults and pairs together. */
  readonly probability: Ratio;
}

/**
 * How many more faults a set with a fault has, on average: a pair is so much less likely beforehand than one of its faults
 * after the other. Common practice, no source.
 */
const MORE_FAULTS = 0.3;
/** Cases of each pair, and how many pairs are planted. */
const CASES = 12;
const PLANTED = 12;
/** Pairs whose cases a model keeps, the latest: enough for several searches. */
const PAIRS_KEPT = 20 * PLANTED;
/** Pairs are planted only where a first estimate gives them this share beside single faults. */
const WORTH_PLANTING = 0.05;
/** And each of them this share of its own: far less than is shown. */
const LEAST_ESTIMATE = 0.01;
/** A single fault of fewer cases is weighed too lightly beside a pair. */
const LEAST_CASES = 6;
const LEAST_SHOWN = 0.02;

/**
 * Pairs of faults by what was observed. All pairs are estimated from what each fault does alone, each answer by the one
 * that changes it more; the likeliest are then planted together, and weighed against single faults by Bayes' rule.
 * @param model of the set
 * @param answered checks with their answers
 * @param single probability of the answers with one fault, summed over cases with their priors
 * @returns likeliest first; none where one fault explains the answers well enough
 */
export function rankedPairs(model: FaultModel, answered: readonly Answered[], single: number): readonly RankedPair[] {
  const known = answered.filter(({ check }) => model.answers.has(check));
  const cases = model.prior.length / (model.faults.length * HEARERS);
  if (known.length < 2 || cases < LEAST_CASES) return [];
  const likely = likelyPairs(model, known);
  const weighed = likely.map(({ pair, prior }) => ({ pair, weight: prior * evidenceOf(model, pair, known) }));
  const total = weighed.reduce((sum, { weight }) => sum + weight, single);
  return weighed
    .map(({ pair: [a, b], weight }): RankedPair => {
      return { faults: [model.faults[a], model.faults[b]], probability: weight / total };
    })
    .filter(({ probability }) => probability >= LEAST_SHOWN)
    .sort((a, b) => b.probability - a.probability);
}

/** Places of two faults in the model. */
type Pair = readonly [number, number];

interface LikelyPair {
  readonly pair: Pair;
  readonly prior: number;
  readonly estimate: number;
}

function likelyPairs(model: FaultModel, known: readonly Answered[]): readonly LikelyPair[] {
  const { faults } = model;
  const { shares, distances } = meansOf(model);
  const priors = priorsOf(model);
  const singles = faults.reduce(
    (sum, _, f) => sum + priors[f] * known.reduce((p, { check, answer }) => p * shares.get(check)![f][answer], 1),
    0,
  );
  const pairs: LikelyPair[] = [];
  for (let a = 0; a < faults.length; a++)
    for (let b = a + 1; b < faults.length; b++) {
      if (!mayBeTogether(faults[a], faults[b])) continue;
      const prior = MORE_FAULTS * priors[a] * priors[b];
      let estimate = prior;
      for (const { check, answer } of known) {
        const share = shares.get(check)!;
        const [da, db] = [distances.get(check)![a], distances.get(check)![b]];
        estimate *= (da * share[a][answer] + db * share[b][answer]) / (da + db);
      }
      pairs.push({ pair: [a, b], prior, estimate });
    }
  const best = pairs.sort((a, b) => b.estimate - a.estimate).slice(0, PLANTED);
  const sum = best.reduce((all, { estimate }) => all + estimate, 0);
  if (sum < WORTH_PLANTING * singles) return [];
  return best.filter(({ estimate }) => estimate >= LEAST_ESTIMATE * (singles + sum));
}

/** Nothing wrong is no fault; of one part, one fault at a time. What is no part of the set goes with anything. */
const mayBeTogether = (a: PartFault, b: PartFault): boolean =>
  a.remedy !== 'none' &&
  b.remedy !== 'none' &&
  remedyClass(a) !== remedyClass(b) &&
  (a.part !== b.part || isOutside(a) || isOutside(b));

const OUTSIDE: ReadonlySet<PartFault['code']> = new Set(['station-off-air', 'fading-at-night', 'mains-hum']);
const isOutside = ({ code }: PartFault): boolean => OUTSIDE.has(code);

const priorsOf = ({ faults, faultOf, prior }: FaultModel): Float64Array => {
  const priors = new Float64Array(faults.length);
  prior.forEach((p, i) => {
    priors[faultOf[i]] += p;
  });
  return priors;
};

/** Of each check: the mean share of each answer, fault by fault, and how far each is from a set with nothing wrong. */
const meansOf = lazilyOf((model: FaultModel) => {
  const { checks, faults, faultOf, prior, answers } = model;
  const priors = priorsOf(model);
  const nothing = faults.findIndex(({ remedy }) => remedy === 'none');
  const shares = new Map<string, Float64Array[]>();
  const distances = new Map<string, Float64Array>();
  for (const { id, answers: n } of checks) {
    const table = answers.get(id)!;
    const means = faults.map(() => new Float64Array(n));
    prior.forEach((p, i) => {
      const f = faultOf[i];
      for (let a = 0; a < n; a++) means[f][a] += (p / priors[f]) * table[i * n + a];
    });
    shares.set(id, means);
    const usual = means[nothing];
    distances.set(
      id,
      // Two faults that change nothing share what is seen evenly.
      Float64Array.from(means, (mean) => 1e-3 + mean.reduce((sum, p, a) => sum + Math.abs(p - usual[a]), 0) / 2),
    );
  }
  return { shares, distances };
});

/** Cases of a pair, and of each check asked so far the probability of each answer, case by case. */
interface PlantedPair {
  readonly shown: readonly SetShows[];
  readonly shares: Map<string, Float64Array>;
}

const plantedPairs = lazilyOf((_: FaultModel) => new Map<string, PlantedPair>());

/** Cases of a pair; none for a pair that cannot be built. */
function plantedPair(model: FaultModel, [a, b]: Pair): PlantedPair {
  return fromMap(
    plantedPairs(model),
    `${a} ${b}`,
    () => ({ shown: plantPair(model, model.faults[a], model.faults[b]), shares: new Map() }),
    PAIRS_KEPT,
  );
}

/** Probability of each answer to a check, case by case. */
function pairShares(model: FaultModel, pair: Pair, check: PossibleCheck): Float64Array {
  const { shown, shares } = plantedPair(model, pair);
  const { sound, bench, faults } = model;
  const both = pair.map((f) => faults[f]);
  return fromMap(shares, check.id, () => {
    const table = new Float64Array(shown.length * check.answers);
    for (const [i, one] of shown.entries())
      table.set(answerShares(check, one, sound, bench, both, MIDDLE_SPREAD), i * check.answers);
    return table;
  });
}

/** Of each case of a pair: how likely all answers are. */
function likelihoods(model: FaultModel, pair: Pair, known: readonly Answered[]): Float64Array {
  const all = new Float64Array(plantedPair(model, pair).shown.length).fill(1);
  for (const { check: id, answer } of known) {
    const check = model.checks.find((one) => one.id === id)!;
    const shares = pairShares(model, pair, check);
    for (let i = 0; i < all.length; i++) all[i] *= shares[i * check.answers + answer];
  }
  return all;
}

/**
 * What two faults at once lead to expect of a check, after what was observed.
 * @param model of the set
 * @param answered checks with their answers
 * @param faults of a pair that is ranked by these answers
 * @returns probability of each answer to a check of the model
 */
export function expectedOfPair(
  model: FaultModel,
  answered: readonly Answered[],
  faults: RankedPair['faults'],
): (check: PossibleCheck) => Float64Array {
  const pair: Pair = [model.faults.indexOf(faults[0]), model.faults.indexOf(faults[1])];
  const weights = likelihoods(
    model,
    pair,
    answered.filter(({ check }) => model.answers.has(check)),
  );
  const total = weights.reduce((sum, w) => sum + w, 0);
  return (check) => {
    const shares = pairShares(model, pair, check);
    const mean = new Float64Array(check.answers);
    for (let i = 0; i < weights.length; i++)
      for (let a = 0; a < mean.length; a++) mean[a] += (weights[i] / total) * shares[i * mean.length + a];
    return mean;
  };
}

function plantPair(
  { built, bench, faults, sound, typical }: FaultModel,
  a: PartFault,
  b: PartFault,
): readonly SetShows[] {
  try {
    const circuit = circuitWithBoth(built, a, b);
    const seed = seedOfSet(built) ^ textHash(`${a.id} ${b.id}`);
    const draw = nuisances(built.circuit, seed, bench.stations.length, MIDDLE_SPREAD);
    // What each costs alone is lost beside the other too: near enough for a sign.
    const mended = ({ margins }: SetShows) =>
      [a, b].map((fault) => {
        const alone = typical[faults.indexOf(fault)].margins;
        return margins.map((margin, i) => margin + Math.max(0, sound.margins[i] - alone[i]));
      });
    return Array.from({ length: CASES }, (_, j) => [
      { fault: a, severity: (j + 0.5) / CASES },
      // Each severity of the one with another of the other, spread over all.
      { fault: b, severity: (((5 * j + 3) % CASES) + 0.5) / CASES },
    ]).flatMap((both) => shownToHearers(bench, circuit, both, drawnCase(draw), mended, MIDDLE_SPREAD, 1 / CASES));
  } catch (problem) {
    if (problem instanceof RangeError) return [];
    throw problem;
  }
}

/**
 * The set as really built with two faults: descriptions are changed first, one after the other.
 * @throws RangeError where the two cannot be built together
 */
export function circuitWithBoth(built: BuiltSet, a: PartFault, b: PartFault): SetCircuit {
  if (!a.describe) return circuitWith(built, b);
  if (!b.describe) return circuitWith(built, a);
  return circuitWith(builtSet(a.describe(built.set)), b);
}

/** Mean over cases of the probability of all answers. */
function evidenceOf(model: FaultModel, pair: Pair, known: readonly Answered[]): number {
  const all = likelihoods(model, pair, known);
  return all.length > 0 ? all.reduce((sum, p) => sum + p, 0) / all.length : 0;
}
