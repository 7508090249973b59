import { isHeard } from '../reception/verdict.ts';
import type { WrittenDescription } from '../set/description.ts';
import type { WantValue } from '../vary/want-values.ts';
import type { Candidate } from './candidate.ts';
import { APART, type FrontEnd, type SetChoice } from './choices.ts';
import { writtenSet } from './chosen-set.ts';
import { type Budget, type GridOfFronts, gridsWithin } from './grids.ts';
import { contenders, Front, scoreSum, spread } from './ranking.ts';
import type { KeptOfEnds } from './set-sweep.ts';
import {
  type FindQuestion,
  type FindTask,
  findSpace,
  type Judged,
  type StationChance,
  setsSpanned,
  type TaskAnswer,
} from './tasks.ts';
import { FINE_GRID, WHOLE_GRID } from './turns-space.ts';
import { bestWithEach, type LeftOut, leftOutOf } from './why-left-out.ts';

/** What a search is doing, and how far it has come. */
export interface FindProgress {
  readonly phase: FindTask['do'];
  /** 0 to 1, of the whole search. */
  readonly share: number;
  /** What has just been tried, where it was one front end. */
  readonly front?: FrontEnd;
}

/** How a search is run. */
export interface FindRun {
  /** Does one task, here or in another thread. */
  readonly work: (task: FindTask) => Promise<TaskAnswer> | TaskAnswer;
  /** Tasks at work at once; the answer is the same with any number. Default 1. */
  readonly threads?: number;
  readonly progress?: (progress: FindProgress) => void;
  /** Told of the best of what has been judged so far: early, and whenever more is known. What is found is not changed by it. */
  readonly found?: (sets: readonly FoundSet[]) => void;
  /** Stops what is only estimated so far; the answer is of what has been received. */
  readonly signal?: { readonly aborted: boolean };
}

/** A set worth building. */
export interface FoundSet {
  readonly choice: SetChoice;
  /** Its description, with this name. */
  readonly describe: (name: string) => WrittenDescription;
  /** What it gives of each want, in the median, as `faintwave path` has it. */
  readonly figures: Judged['figures'];
  readonly parts: number;
  readonly effort: number;
  readonly chances: readonly StationChance[];
  /** Of which wants it is the best that was found; none: it lies between. */
  readonly bestOf: readonly number[];
  readonly isLeastEffort: boolean;
}

/** The sets of a box worth building, and how many were looked at. */
export interface FindAnswer {
  readonly sets: readonly FoundSet[];
  /** Those judged as built that are not worth building beside them. */
  readonly others: readonly Pick<FoundSet, 'choice' | 'figures' | 'parts' | 'effort'>[];
  readonly leftOut: readonly LeftOut[];
  /** Sets that the box spans, those valued by the closed form, received, and received with all their spreads. */
  readonly counts: {
    readonly spanned: number;
    readonly valued: number;
    /** Sets that a bound on their figures showed to be no better than one received. */
    readonly ruledOut: number;
    /** At most so many were neither valued nor ruled out: between those of the grids, or of parts behind in the first look. */
    readonly untried: number;
    readonly received: number;
    readonly judged: number;
  };
  /** False where it was stopped. */
  readonly isComplete: boolean;
}

/** Sets shown. */
const MOST_SHOWN = 12;
/** Of the estimates so many are refined, of these so many received, and of these so many judged as built. */
const MOST_REFINED = 160;
const MOST_RECEIVED = 200;
/** Wants that the closed form tells well; of others more is received, for their estimates may be as far off as this, dB. */
const TOLD_WELL: readonly string[] = ['loudest', 'fewest parts'];
const ROUGH = { slacks: [12, 9, 6, 4, 3, 2, 1.2, 0.7, 0.3], most: 500, kept: { apart: 12, leading: 10 } } as const;
/** Of a box that spans no more sets, all are received where estimates tell little. */
const EVERY: KeptOfEnds = { apart: ROUGH.most, leading: ROUGH.most };
const MOST_JUDGED = 24;
/** Of those with a wanted station at an end of the dial, besides. */
const MOST_AT_END = { received: 40, judged: 8 } as const;
const isAtEnd = ({ isAtEnd: at }: Candidate): boolean => at === true;
/** dB by which a set must be behind in everything to be left out: estimates first, then receptions without spreads. */
const ESTIMATED_SLACKS = [2, 1.2, 0.7, 0.3, 0.1];
const RECEIVED_SLACKS = [1, 0.5, 0.25, 0.1];
/** Sets nearer than this in everything are one, dB. */
const SAME = 0.2;
/** Candidates in one task. */
const BATCH = 4;
/** A first look, before the whole is tried: what it may cost, and how many go on. */
const FIRST_LOOK: Budget = { coils: 300, pairs: 500, coilTuned: 40, sets: 60_000 };
const KEPT_OF_FIRST: KeptOfEnds = { apart: 3, leading: 1 };
/** What may be tried after it, and of a box that spans more sets only front and back ends that are no further behind, dB. */
const WHOLE_BUDGET: Budget = { coils: 20_000, pairs: 20_000, coilTuned: 500, sets: 1e7 };
const TRIED_WHOLE = 3e6;
const PROMISING = 4;
const KEPT_OF_WHOLE: KeptOfEnds = { apart: 6, leading: 2 };
/** Of the first look so many are received, for others to be compared with, and so many judged, to be shown. */
const MOST_REFERENCE = 60;
const MOST_LOOKED_AT = 4;
const WHOLE: readonly [number, number] = [0, 1];
/** Of the estimates the first look takes so much. */
const FIRST_SHARE = 0.1;

/** Share of the whole that each phase is done by. */
const DONE_BY: Readonly<Record<FindTask['do'], number>> = {
  estimate: 0.4,
  refine: 0.55,
  receive: 0.7,
  judge: 0.95,
  chances: 1,
};

/**
 * The few sets of a box worth building: those that no other beats in everything that is wanted, and in effort. Every set
 * is valued by a closed form; the best are received in full, those of them judged as sets built like them, in the median.
 * @param question box and place, as read
 * @param run how the work is done
 * @returns at most twelve sets; none where the box lacks something, or where no set gives anything of what is wanted
 */
export async function findSets(question: FindQuestion, run: FindRun): Promise<FindAnswer> {
  const { box } = question;
  const space = findSpace(box);
  const { fronts, backs } = space;
  const spanned = setsSpanned(box, space);
  const tally = { estimate: 0, refine: 0, receive: 0, judge: 0, chances: 0, ruledOut: 0 };
  const all = async (
    tasks: readonly FindTask[],
    part = WHOLE,
    each?: (answer: TaskAnswer) => void,
  ): Promise<readonly TaskAnswer[]> => {
    const answers = await inThreads(tasks, run, (task, answer, done) => {
      const [from, to] = part;
      const start = startOf(task.do);
      run.progress?.({
        phase: task.do,
        share: start + (DONE_BY[task.do] - start) * (from + (to - from) * done),
        ...(task.do === 'estimate' ? { front: fronts[task.fronts[0]] } : {}),
      });
      each?.(answer);
    });
    for (const [i, answer] of answers.entries()) {
      tally[tasks[i].do] += answer.valued;
      tally.ruledOut += answer.ruledOut ?? 0;
    }
    return answers;
  };
  const candidatesOf = (answers: readonly TaskAnswer[]): Candidate[] => answers.flatMap(({ candidates }) => candidates);

  const choiceOf = ({ front, back, turns }: Candidate): SetChoice => ({
    front: fronts[front],
    back: backs[back],
    turns,
  });
  const foundOf = (shown: readonly Judged[], chances?: readonly TaskAnswer[]): FoundSet[] =>
    asFound(question, choiceOf, shown, chances);
  const tellOf = (judged: readonly Judged[]): void => run.found?.(foundOf(shownOf(worthShowing(judged))));

  const isRough = !question.read.wants.every(({ kind }) => TOLD_WELL.includes(kind));
  const keptOf = !isRough ? KEPT_OF_WHOLE : spanned <= ROUGH.most ? EVERY : ROUGH.kept;
  const everyBack = backs.map((_, back) => back);
  const isWhole = spanned <= TRIED_WHOLE;
  const firstLook = gridsWithin(box, space, FIRST_LOOK, (front) =>
    isWhole || isNearest(fronts[front]) ? everyBack : [],
  );
  const firstAnswers = await all(estimates(firstLook, keptOf), [0, FIRST_SHARE]);
  const first = candidatesOf(firstAnswers);
  const reference = candidatesOf(
    await inThreads(batches(contenders(first, ESTIMATED_SLACKS, MOST_REFERENCE), 'receive'), run),
  );
  tally.receive += reference.length;
  const known: Judged[] = [];
  if (run.found && !run.signal?.aborted) {
    const looked = batches(contenders(reference, RECEIVED_SLACKS, MOST_LOOKED_AT), 'judge', 1);
    known.push(...(candidatesOf(await inThreads(looked, run)) as Judged[]));
    tellOf(known);
  }
  const beaten = new Front<Candidate>(0);
  for (const one of reference) beaten.add(one);

  const promising = promisingOf(contenders(first, [PROMISING], Number.POSITIVE_INFINITY), fronts);
  const grids = gridsWithin(box, space, WHOLE_BUDGET, isWhole ? () => everyBack : promising);
  const gridOf = gridByFront(grids);
  const firstGridOf = gridByFront(firstLook);
  const isFiner = ({ fronts: [front], grid }: GridOfFronts): boolean => grid < (firstGridOf.get(front) ?? Infinity);
  const swept = await all(
    estimates(
      grids.filter(isFiner),
      keptOf,
      beaten.members.map(({ scores }) => scores),
    ),
    [FIRST_SHARE, 1],
  );
  const found = distinct([...first, ...candidatesOf(swept)]);
  const isSwept = new Set(grids.filter(isFiner).flatMap((one) => one.fronts));
  const tried = [...firstAnswers.filter((_, i) => !isSwept.has(firstLook[i].fronts[0])), ...swept].reduce(
    (sum, { valued, ruledOut = 0 }) => sum + valued + ruledOut,
    0,
  );

  const seeds = contenders(found, ESTIMATED_SLACKS, MOST_REFINED);
  const withEach = bestWithEach(found, fronts, backs);
  // What is ruled out may only be known from the first look; why it is not shown deserves a closer one.
  const gridAt = (front: number): number => gridOf.get(front) ?? FINE_GRID;
  const roughly = [...seeds, ...withEach].filter(({ front }) => gridAt(front) > FINE_GRID);
  const nearer = candidatesOf(await all(refining(roughly, gridAt), [0, 0.4]));
  const fine = [
    ...contenders([...seeds, ...nearer], ESTIMATED_SLACKS, MOST_REFINED),
    ...bestWithEach([...withEach, ...nearer], fronts, backs),
  ].filter(({ front }) => gridAt(front) !== WHOLE_GRID || firstGridOf.get(front) !== WHOLE_GRID);
  const finest = candidatesOf(
    await all(
      refining(fine, () => FINE_GRID),
      [0.4, 1],
    ),
  );
  const refined = [...nearer, ...finest];
  const valued = distinct([...(isRough ? found : seeds), ...refined]);
  const toReceive = distinct([
    ...(keptOf === EVERY
      ? valued
      : isRough
        ? contenders(valued, ROUGH.slacks, ROUGH.most)
        : contenders(valued, ESTIMATED_SLACKS, MOST_RECEIVED)),
    ...contenders(valued.filter(isAtEnd), ESTIMATED_SLACKS, MOST_AT_END.received),
    ...bestWithEach([...found, ...refined], fronts, backs),
  ]);
  const isReceived = new Set(reference.map(keyOf));
  const more = toReceive.filter((one) => !isReceived.has(keyOf(one)));
  const received = [...reference, ...candidatesOf(await all(batches(more, 'receive')))];
  const toJudge = distinct([
    ...contenders(received, RECEIVED_SLACKS, MOST_JUDGED),
    ...contenders(received.filter(isAtEnd), RECEIVED_SLACKS, MOST_AT_END.judged),
    ...bestWithEach(received, fronts, backs),
  ]);
  const judged = candidatesOf(
    await all(batches(toJudge, 'judge'), WHOLE, ({ candidates }) => {
      known.push(...(candidates as Judged[]));
      tellOf(distinct(known));
    }),
  ) as Judged[];
  const shown = shownOf(worthShowing(judged));
  const chances = await all(shown.map((candidate): FindTask => ({ do: 'chances', candidate })));
  const isShown = new Set(shown);
  return {
    sets: foundOf(shown, chances),
    others: foundOf(worthShowing(judged).filter((one) => !isShown.has(one))).map(
      ({ choice, figures, parts, effort }) => ({ choice, figures, parts, effort }),
    ),
    leftOut: leftOutOf(judged, shown, choiceOf),
    counts: {
      spanned,
      valued: tally.estimate + tally.refine,
      ruledOut: tally.ruledOut,
      untried: Math.max(0, spanned - tried),
      received: tally.receive,
      judged: tally.judge,
    },
    isComplete: !run.signal?.aborted,
  };
}

/** Judged sets as they are shown. */
function asFound(
  question: FindQuestion,
  choiceOf: (one: Candidate) => SetChoice,
  shown: readonly Judged[],
  chances: readonly TaskAnswer[] = [],
): FoundSet[] {
  return shown.map((one, i) => {
    const choice = choiceOf(one);
    const last = one.scores.length - 1;
    const isBest = (k: number): boolean => shown.every(({ scores }) => scores[k] <= one.scores[k]);
    return {
      choice,
      describe: (name) => writtenSet(question, choice, question.at, name),
      figures: one.figures,
      parts: one.parts,
      effort: -one.scores[last],
      chances: chances[i]?.chances ?? [],
      bestOf: one.figures.flatMap((_, k) => (isBest(k) ? [k] : [])),
      isLeastEffort: isBest(last),
    };
  });
}

/** Tasks done by so many threads, their answers in the order of the tasks. @param each is told of every answer, and the share that is done */
async function inThreads(
  tasks: readonly FindTask[],
  { work, threads = 1, signal }: FindRun,
  each?: (task: FindTask, answer: TaskAnswer, done: number) => void,
): Promise<TaskAnswer[]> {
  const answers: TaskAnswer[] = [];
  let [next, done] = [0, 0];
  const one = async (): Promise<void> => {
    while (next < tasks.length) {
      const at = next++;
      const task = tasks[at];
      const mayStop = task.do === 'estimate' || task.do === 'refine';
      answers[at] = mayStop && signal?.aborted ? NOTHING : await work(task);
      done++;
      each?.(task, answers[at], done / tasks.length);
    }
  };
  await Promise.all(Array.from({ length: Math.max(1, threads) }, one));
  return answers;
}

/** Of two coils end to end that differ in their distance alone, those that are nearest. */
const isNearest = ({ apart }: FrontEnd): boolean => apart === undefined || apart === APART[0];

/** Back ends that promise something, of each front end: those of sets that did, at whatever distance of the coils. */
function promisingOf(sets: readonly Candidate[], fronts: readonly FrontEnd[]): (front: number) => readonly number[] {
  const alike = ({ apart: _, ...front }: FrontEnd): string => JSON.stringify(front);
  const backs = new Map<string, Set<number>>();
  for (const { front, back } of sets) {
    const key = alike(fronts[front]);
    backs.set(key, (backs.get(key) ?? new Set()).add(back));
  }
  return (front) => [...(backs.get(alike(fronts[front])) ?? [])].sort((a, b) => a - b);
}

const gridByFront = (grids: readonly GridOfFronts[]): Map<number, number> =>
  new Map(grids.flatMap(({ fronts, grid }) => fronts.map((front) => [front, grid] as const)));

const NOTHING: TaskAnswer = { valued: 0, candidates: [] };

function startOf(phase: FindTask['do']): number {
  const phases = Object.keys(DONE_BY) as FindTask['do'][];
  const at = phases.indexOf(phase);
  return at === 0 ? 0 : DONE_BY[phases[at - 1]];
}

const keyOf = ({ front, back, turns: t }: Candidate): string =>
  `${front} ${back} ${t.turns} ${t.secondTurns} ${t.aerialTap} ${t.detectorTap}`;

const distinct = <T extends Candidate>(list: readonly T[]): T[] => [
  ...new Map(list.map((one) => [keyOf(one), one])).values(),
];

/** In groups of one front end and one back end, in the order of their first. */
function byEnds(list: readonly Candidate[]): Candidate[][] {
  const groups = new Map<string, Candidate[]>();
  for (const one of list) {
    const key = `${one.front} ${one.back}`;
    const group = groups.get(key);
    if (group) group.push(one);
    else groups.set(key, [one]);
  }
  return [...groups.values()];
}

/** Tasks that try grids. @param reference scores of sets received in full; none before any is */
const estimates = (
  grids: readonly GridOfFronts[],
  keptOf: KeptOfEnds,
  reference?: readonly (readonly number[])[],
): FindTask[] =>
  grids.map((one) => ({
    do: 'estimate',
    ...one,
    kept: reference || one.grid === WHOLE_GRID ? keptOf : KEPT_OF_FIRST,
    ...(reference ? { reference } : {}),
  }));

/** Tasks that look about sets, each once. */
const refining = (seeds: readonly Candidate[], gridAt: (front: number) => number): FindTask[] =>
  byEnds(distinct(seeds)).map((of) => ({ do: 'refine', seeds: of, grid: gridAt(of[0].front) }));

const batches = (list: readonly Candidate[], task: 'receive' | 'judge', size = BATCH): FindTask[] =>
  Array.from({ length: Math.ceil(list.length / size) }, (_, i) => ({
    do: task,
    candidates: list.slice(i * size, (i + 1) * size),
  }));

/** Those that give anything of what is wanted. */
const worthShowing = (judged: readonly Judged[]): Judged[] =>
  judged.filter(({ figures }) => figures.some(isWorthShowing));

/** Whether a set gives anything of a want. Few parts alone make no set: any has some. */
const isWorthShowing = ({ want, figure }: WantValue): boolean => {
  if (want.kind === 'fewest parts' || figure === undefined) return false;
  return (want.kind !== 'most stations' && want.kind !== 'band') || figure > 0;
};

/** Those that none beats, no two of them alike, at most a dozen, in the order of `byWantsMet`. */
function shownOf(judged: readonly Judged[]): Judged[] {
  const front = new Front<Judged>(SAME);
  const inOrder = [...judged].sort((a, b) => scoreSum(b) - scoreSum(a));
  for (const one of inOrder) front.add(one);
  const few = new Set(spread(front.members, MOST_SHOWN));
  return front.members.filter((one) => few.has(one)).sort(byWantsMet);
}

const count = (figures: Judged['figures'], is: (value: WantValue) => boolean): number => figures.filter(is).length;

/** The set first that meets more wants, then the one that hears more of the stations they are for, then the one that gives more of all. */
function byWantsMet(a: Judged, b: Judged): number {
  const met = count(b.figures, ({ isMet }) => isMet === true) - count(a.figures, ({ isMet }) => isMet === true);
  if (met !== 0) return met;
  const isForHeard = ({ verdict }: WantValue): boolean => verdict !== undefined && isHeard(verdict);
  const heard = count(b.figures, isForHeard) - count(a.figures, isForHeard);
  if (heard !== 0) return heard;
  const worth = ({ scores }: Judged): number => scoreSum({ scores: scores.slice(0, -1) });
  return worth(b) - worth(a) || b.scores[b.scores.length - 1] - a.scores[a.scores.length - 1];
}
