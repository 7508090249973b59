import type { FaultModel } from '../../src/engine/faults/fault-model.ts';
import { fromMap, lazilyOf } from '../../src/engine/numerics/lazily.ts';
import { uniform } from '../../src/engine/numerics/random.ts';
import { textHash } from '../../src/engine/numerics/text-hash.ts';

/** Sets of answers drawn with each of two faults. */
const DRAWS = 64;

/** Of a model: by two faults, how often they are told apart. */
const shares = lazilyOf((_: FaultModel) => new Map<string, number>());

/**
 * How often two faults are told apart by somebody who makes every check that the set allows and weighs all answers at
 * once: either fault as likely as the other, severities and everything that is not known drawn as the model has them.
 * @param model of the set
 * @param a place of a fault in the model
 * @param b place of another one
 * @returns share of right decisions: 0.5 by chance, 1 for faults that are always told apart
 */
export function toldApart(model: FaultModel, a: number, b: number): number {
  const [low, high] = a < b ? [a, b] : [b, a];
  return fromMap(shares(model), `${low} ${high}`, () => decided(model, low, high), 5000);
}

function decided(model: FaultModel, a: number, b: number): number {
  const { faults, checks } = model;
  const random = uniform(textHash(`${faults[a].id} ${faults[b].id}`));
  const [ofA, ofB] = [a, b].map((fault) => casesOf(model, fault));
  let right = 0;
  for (const [own, other] of [
    [ofA, ofB],
    [ofB, ofA],
  ])
    for (let draw = 0; draw < DRAWS; draw++) {
      const truth = own[Math.floor(random() * own.length)];
      const answers = checks.map((check) => drawnAnswer(model, check.id, check.answers, truth, random));
      const difference = evidence(model, answers, own) - evidence(model, answers, other);
      right += difference > 0 ? 1 : difference === 0 ? 0.5 : 0;
    }
  return right / (2 * DRAWS);
}

const casesOf = ({ faultOf }: FaultModel, fault: number): readonly number[] =>
  [...faultOf.keys()].filter((i) => faultOf[i] === fault);

function drawnAnswer({ answers }: FaultModel, id: string, n: number, i: number, random: () => number): number {
  const table = answers.get(id)!;
  let left = random();
  for (let answer = 0; answer < n - 1; answer++) if ((left -= table[i * n + answer]) <= 0) return answer;
  return n - 1;
}

/** Natural logarithm of the probability of all answers, mean over cases. */
function evidence({ checks, answers }: FaultModel, given: readonly number[], cases: readonly number[]): number {
  const logs = new Float64Array(cases.length);
  for (const [c, { id, answers: n }] of checks.entries()) {
    const table = answers.get(id)!;
    for (let k = 0; k < logs.length; k++) logs[k] += Math.log(table[cases[k] * n + given[c]]);
  }
  const most = logs.reduce((x, y) => Math.max(x, y), Number.NEGATIVE_INFINITY);
  return most + Math.log(logs.reduce((sum, log) => sum + Math.exp(log - most), 0) / logs.length);
}
