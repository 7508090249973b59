import type { Ratio } from '../units/quantities.ts';
import { answersOf, type PossibleCheck } from './checks.ts';
import { entropyOf, likeliest } from './diagnose.ts';
import type { PartFault } from './fault.ts';
import type { FaultModel } from './fault-model.ts';

/** A cause at an end of the tree. */
export interface TreeCause {
  /** Place of its remedy among the model's classes. */
  readonly class: number;
  /** The likeliest of the faults that its remedy mends. */
  readonly fault: PartFault;
  readonly probability: Ratio;
}

/** Where an answer leads: to another step, by its place in the tree, or to causes. */
export type TreeGoal = { readonly step: number } | { readonly causes: readonly TreeCause[]; readonly rest: Ratio };

/** Neighbouring answers of a step that lead to the same. */
export interface TreeBranch {
  /** First and last of the check's answers. */
  readonly answers: readonly [number, number];
  /** The answer of a set with nothing wrong is among them. */
  readonly isGood: boolean;
  /** Of arriving here from the top. */
  readonly probability: Ratio;
  readonly goal: TreeGoal;
}

/** One check of the tree. */
export interface TreeStep {
  readonly check: PossibleCheck;
  /** Most likely answer with nothing wrong. */
  readonly good: number;
  readonly branches: readonly TreeBranch[];
  /** What is known on arriving here, before the check. */
  readonly causes: readonly TreeCause[];
  readonly rest: Ratio;
}

/** A set's decision tree: the first step is its top, each later one follows one before it. */
export interface FaultTree {
  readonly steps: readonly TreeStep[];
}

/** Bounds of a tree. */
export interface TreeBounds {
  /** Steps in all; default 14. */
  readonly steps?: number;
  /** Steps one after another; default 6. */
  readonly depth?: number;
  /** Whether a check may be asked; default every one. */
  readonly isAsked?: (check: PossibleCheck) => boolean;
}

/** Answers told apart at a step. */
const MOST_BRANCHES = 3;
/** Answers are told apart where that is worth this share of what the check tells. */
const WORTH_TELLING = 0.06;
/** An answer so rare is no branch of its own. */
const LEAST_BRANCH = 0.02;
/** Bits of the whole that a step must add. */
const LEAST_GAIN = 0.004;
/** Causes named at an end, and how likely the last of them must be. */
const MOST_NAMED = 3;
const LEAST_NAMED = 0.08;

/** A place that is not asked about yet. */
interface Open {
  /** Of each case: that it is the one, and that its answers lead here. */
  readonly weights: Float64Array;
  readonly probability: Ratio;
  readonly depth: number;
  readonly asked: ReadonlySet<string>;
  /** Where it hangs; nothing for the top. */
  readonly parent?: { readonly step: number; readonly branch: number };
}

interface Split {
  readonly check: PossibleCheck;
  readonly groups: readonly (readonly [number, number])[];
  /** Bits, of the whole tree. */
  readonly gain: number;
}

/**
 * The decision tree of a set: at each place the check that tells most for its trouble, and the tree grown where that
 * tells most, so that any number of steps is well spent. Answers of a check that lead to the same are one branch.
 * @param model of the set; few cases of each fault are enough
 * @param bounds how many steps, of which checks
 * @returns steps, the first at the top; probabilities as the model has them
 */
export function faultTree(
  model: FaultModel,
  { steps: most = 14, depth = 6, isAsked = () => true }: TreeBounds = {},
): FaultTree {
  const checks = model.checks.filter(isAsked);
  const steps: (Omit<TreeStep, 'branches'> & { readonly branches: TreeBranch[] })[] = [];
  const opened = (place: Open) => ({ place, split: place.depth < depth ? bestSplit(model, checks, place) : undefined });
  const open = [opened({ weights: model.prior, probability: 1, depth: 0, asked: new Set() })];
  const gainOf = ({ split }: (typeof open)[number]): number => split?.gain ?? 0;
  while (steps.length < most) {
    const next = open.reduce((a, b) => (gainOf(b) > gainOf(a) ? b : a));
    if (!next.split || gainOf(next) < LEAST_GAIN) break;
    open.splice(open.indexOf(next), 1);
    const { check, groups } = next.split;
    const good = goodAnswer(model, check);
    const step = steps.length;
    lead(next.place, { step });
    steps.push({ check, good, branches: [], ...endOf(model, next.place) });
    groups.forEach((answers, branch) => {
      const place = afterAnswers(model, next.place, check, answers, { step, branch });
      const isGood = good >= answers[0] && good <= answers[1];
      steps[step].branches.push({ answers, isGood, probability: place.probability, goal: { causes: [], rest: 0 } });
      open.push(opened(place));
    });
  }
  for (const { place } of open) lead(place, endOf(model, place));
  return { steps };

  function lead({ parent }: Open, goal: TreeGoal): void {
    if (!parent) return;
    const { branches } = steps[parent.step];
    branches[parent.branch] = { ...branches[parent.branch], goal };
  }
}

/**
 * The same tree with fewer steps: it grew where a step told most, so that the last tell least.
 * @param tree grown
 * @param most steps that are kept
 */
export const prunedTree = ({ steps }: FaultTree, most: number): FaultTree => ({
  steps: steps.slice(0, most).map((step) => ({
    ...step,
    branches: step.branches.map((branch): TreeBranch => {
      const { goal } = branch;
      if (!('step' in goal) || goal.step < most) return branch;
      const { causes, rest } = steps[goal.step];
      return { ...branch, goal: { causes, rest } };
    }),
  })),
});

/**
 * How sure the ends of a tree are.
 * @returns how often the cause named first is the true one, and how often it is among those named
 */
export function treeSureness({ steps }: FaultTree): { readonly first: Ratio; readonly named: Ratio } {
  let [first, named] = [0, 0];
  for (const { branches } of steps)
    for (const { goal, probability } of branches) {
      if ('step' in goal) continue;
      first += probability * (goal.causes[0]?.probability ?? 0);
      named += probability * (1 - goal.rest);
    }
  return { first, named };
}

/** The answer of a set with nothing wrong. */
const goodAnswer = ({ sound, bench }: FaultModel, check: PossibleCheck): number =>
  likeliest(answersOf(check, sound, sound, bench, []));

function afterAnswers(
  model: FaultModel,
  { weights, depth, asked }: Open,
  { id, answers: n }: PossibleCheck,
  [first, last]: readonly [number, number],
  parent: NonNullable<Open['parent']>,
): Open {
  const table = model.answers.get(id)!;
  let probability = 0;
  const after = weights.map((weight, i) => {
    let p = 0;
    for (let a = first; a <= last; a++) p += table[i * n + a];
    probability += weight * p;
    return weight * p;
  });
  return { weights: after, probability, depth: depth + 1, asked: new Set([...asked, id]), parent };
}

/** The check with the most bits for its minutes, its answers grouped. */
function bestSplit(model: FaultModel, checks: readonly PossibleCheck[], place: Open): Split | undefined {
  let best: Split | undefined;
  let worth = 0;
  for (const check of checks) {
    if (place.asked.has(check.id)) continue;
    const split = splitBy(model, place, check);
    if (!split || split.gain / (1 + check.effort) <= worth) continue;
    best = split;
    worth = split.gain / (1 + check.effort);
  }
  return best;
}

/** Sums over the cases of each class, answer by answer. */
function jointOf(model: FaultModel, weights: Float64Array, { id, answers: n }: PossibleCheck): Float64Array[] {
  const table = model.answers.get(id)!;
  const columns = Array.from({ length: n }, () => new Float64Array(model.classes.length));
  for (let i = 0; i < weights.length; i++) {
    if (weights[i] < 1e-9) continue;
    const k = model.classOf[model.faultOf[i]];
    for (let a = 0; a < n; a++) columns[a][k] += weights[i] * table[i * n + a];
  }
  return columns;
}

const sumOf = (column: Float64Array): number => column.reduce((sum, p) => sum + p, 0);

/** Σ p·log₂(p/total): what is known within one group, not divided by its weight. */
function knownIn(column: Float64Array): number {
  const total = sumOf(column);
  let known = entropyOf(total);
  for (const p of column) known -= entropyOf(p);
  return known;
}

/** Neighbouring answers become one where it hardly matters to tell them apart. */
function splitBy(model: FaultModel, { weights }: Open, check: PossibleCheck): Split | undefined {
  const columns = jointOf(model, weights, check);
  const groups = columns.map((column, a) => ({ column, from: a, to: a, known: knownIn(column), sum: sumOf(column) }));
  const all = new Float64Array(model.classes.length);
  for (const { column } of groups)
    column.forEach((p, k) => {
      all[k] += p;
    });
  const before = knownIn(all);
  const total = sumOf(all);
  const gainOf = (): number => groups.reduce((sum, { known }) => sum + known, 0) - before;
  const whole = gainOf();
  while (groups.length > 1) {
    let at = 0;
    let least = Number.POSITIVE_INFINITY;
    for (let k = 0; k + 1 < groups.length; k++) {
      const isRare = Math.min(groups[k].sum, groups[k + 1].sum) < LEAST_BRANCH * total;
      const cost = groups[k].known + groups[k + 1].known - joined(k).known;
      const counted = isRare ? cost - whole : cost;
      if (counted < least) [at, least] = [k, counted];
    }
    if (groups.length <= MOST_BRANCHES && least > WORTH_TELLING * whole) break;
    groups.splice(at, 2, joined(at));
  }
  return groups.length > 1 ? { check, groups: groups.map(({ from, to }) => [from, to]), gain: gainOf() } : undefined;

  function joined(k: number) {
    const [a, b] = [groups[k], groups[k + 1]];
    const column = a.column.map((p, i) => p + b.column[i]);
    return { column, from: a.from, to: b.to, known: knownIn(column), sum: a.sum + b.sum };
  }
}

function endOf(model: FaultModel, { weights, probability }: Open): Extract<TreeGoal, { causes: unknown }> {
  const byFault = new Float64Array(model.faults.length);
  weights.forEach((weight, i) => {
    byFault[model.faultOf[i]] += weight / probability;
  });
  const causes = model.classes
    .map((_, k): TreeCause => {
      const own = model.faults.map((_, f) => f).filter((f) => model.classOf[f] === k);
      const best = own.reduce((a, b) => (byFault[b] > byFault[a] ? b : a));
      return { class: k, fault: model.faults[best], probability: own.reduce((sum, f) => sum + byFault[f], 0) };
    })
    .sort((a, b) => b.probability - a.probability)
    .filter((cause, rank) => rank === 0 || (rank < MOST_NAMED && cause.probability >= LEAST_NAMED));
  return { causes, rest: Math.max(0, 1 - causes.reduce((sum, cause) => sum + cause.probability, 0)) };
}
