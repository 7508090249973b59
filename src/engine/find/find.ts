import type { WrittenDescription } from '../set/description.ts';
import type { WantValue } from '../vary/want-values.ts';
import type { BackEnd, FrontEnd, SetChoice } from './choices.ts';
import { writtenSet } from './chosen-set.ts';
import { contenders, Front, spread } from './ranking.ts';
import {
  type Candidate,
  type FindQuestion,
  type FindTask,
  findSpace,
  type Judged,
  type StationChance,
  type TaskAnswer,
} from './tasks.ts';

/** What a search is doing, and how far it has come. */
export interface FindProgress {
  readonly phase: FindTask['do'];
  /** 0 to 1, of the whole search. */
  readonly share: number;
}

/** How a search is run. */
export interface FindRun {
  /** Does one task, here or in another thread. */
  readonly work: (task: FindTask) => Promise<TaskAnswer> | TaskAnswer;
  /** Tasks at work at once; the answer is the same with any number. Default 1. */
  readonly threads?: number;
  readonly progress?: (progress: FindProgress) => void;
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

/** The best that was received with a part, or an arrangement, that no found set has. */
export interface LeftOut {
  readonly of: 'detector' | 'load' | 'arrangement';
  readonly choice: SetChoice;
  readonly figures: Judged['figures'];
  /** How far it is behind the best found set in what it loses least in, dB. */
  readonly behind: number;
}

/** The sets of a box worth building, and how many were looked at. */
export interface FindAnswer {
  readonly sets: readonly FoundSet[];
  readonly leftOut: readonly LeftOut[];
  /** Sets that the box spans, those valued by the closed form, received, and received with all their spreads. */
  readonly counts: {
    readonly spanned: number;
    readonly valued: number;
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
  const { fronts, backs, counts } = findSpace(box);
  const tally = { estimate: 0, refine: 0, receive: 0, judge: 0, chances: 0 };
  const all = async (tasks: readonly FindTask[]): Promise<readonly TaskAnswer[]> => {
    const answers = await inThreads(tasks, run);
    for (const [i, answer] of answers.entries()) tally[tasks[i].do] += answer.valued;
    return answers;
  };
  const candidatesOf = (answers: readonly TaskAnswer[]): Candidate[] => answers.flatMap(({ candidates }) => candidates);

  const first = candidatesOf(
    backs.length > 0 ? await all(fronts.map((_, front): FindTask => ({ do: 'estimate', front }))) : [],
  );
  const seeds = contenders(first, ESTIMATED_SLACKS, MOST_REFINED);
  const refined = candidatesOf(await all(byEnds(seeds).map((of): FindTask => ({ do: 'refine', seeds: of }))));
  const valued = distinct([...seeds, ...refined]);
  const toReceive = distinct([
    ...contenders(valued, ESTIMATED_SLACKS, MOST_RECEIVED),
    ...contenders(valued.filter(isAtEnd), ESTIMATED_SLACKS, MOST_AT_END.received),
    ...bestWithEach(first, fronts, backs),
  ]);
  const received = candidatesOf(await all(batches(toReceive, 'receive')));
  const toJudge = distinct([
    ...contenders(received, RECEIVED_SLACKS, MOST_JUDGED),
    ...contenders(received.filter(isAtEnd), RECEIVED_SLACKS, MOST_AT_END.judged),
    ...bestWithEach(received, fronts, backs),
  ]);
  const judged = candidatesOf(await all(batches(toJudge, 'judge'))) as Judged[];
  const shown = shownOf(judged.filter(({ figures }) => figures.some(isWorthShowing)));
  const chances = await all(shown.map((candidate): FindTask => ({ do: 'chances', candidate })));
  const choiceOf = ({ front, back, turns }: Candidate): SetChoice => ({
    front: fronts[front],
    back: backs[back],
    turns,
  });
  return {
    sets: shown.map((one, i) => {
      const choice = choiceOf(one);
      const isBest = (k: number): boolean => shown.every(({ scores }) => scores[k] <= one.scores[k]);
      const last = one.scores.length - 1;
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
    }),
    leftOut: leftOutOf(judged, shown, choiceOf),
    counts: {
      spanned: counts.reduce((sum, count) => sum + count, 0) * backs.length,
      valued: tally.estimate + tally.refine,
      received: tally.receive,
      judged: tally.judge,
    },
    isComplete: !run.signal?.aborted,
  };
}

/** Tasks done by so many threads, their answers in the order of the tasks. */
async function inThreads(
  tasks: readonly FindTask[],
  { work, threads = 1, progress, signal }: FindRun,
): Promise<TaskAnswer[]> {
  const answers: TaskAnswer[] = [];
  let [next, done] = [0, 0];
  const phase = tasks[0]?.do;
  const from = phase === undefined ? 0 : startOf(phase);
  const one = async (): Promise<void> => {
    while (next < tasks.length) {
      const at = next++;
      const mayStop = phase === 'estimate' || phase === 'refine';
      answers[at] = mayStop && signal?.aborted ? NOTHING : await work(tasks[at]);
      done++;
      progress?.({ phase, share: from + ((DONE_BY[phase] - from) * done) / tasks.length });
    }
  };
  await Promise.all(Array.from({ length: Math.max(1, threads) }, one));
  return answers;
}

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

const batches = (list: readonly Candidate[], task: 'receive' | 'judge'): FindTask[] =>
  Array.from({ length: Math.ceil(list.length / BATCH) }, (_, i) => ({
    do: task,
    candidates: list.slice(i * BATCH, (i + 1) * BATCH),
  }));

/** What a set is told from another by, besides its turns. */
const TRAITS: Readonly<
  Record<LeftOut['of'], (one: Candidate, fronts: readonly FrontEnd[], backs: readonly BackEnd[]) => string>
> = {
  detector: ({ back }, _, backs) => String(backs[back].detector),
  load: ({ back }, _, backs) => String(backs[back].load),
  arrangement: ({ front }, fronts) => fronts[front].arrangement,
};
const sum = ({ scores }: Candidate): number => scores.reduce((total, score) => total + score, 0);

/** With each detector, load and arrangement the best there is, so that one can say why it is not among the found. */
function bestWithEach<T extends Candidate>(
  list: readonly T[],
  fronts: readonly FrontEnd[],
  backs: readonly BackEnd[],
): T[] {
  const best = new Map<string, T>();
  for (const one of list)
    for (const [of, trait] of Object.entries(TRAITS)) {
      const key = `${of} ${trait(one, fronts, backs)}`;
      const known = best.get(key);
      if (!known || sum(one) > sum(known)) best.set(key, one);
    }
  return [...best.values()];
}

/** Whether a set gives anything of a want. Few parts alone make no set: any has some. */
const isWorthShowing = ({ want, figure }: WantValue): boolean => {
  if (want.kind === 'fewest parts' || figure === undefined) return false;
  return (want.kind !== 'most stations' && want.kind !== 'band') || figure > 0;
};

/** Those that none beats, no two of them alike, at most a dozen; the best of each want first. */
function shownOf(judged: readonly Judged[]): Judged[] {
  const front = new Front<Judged>(SAME);
  const inOrder = [...judged].sort((a, b) => sum(b) - sum(a));
  for (const one of inOrder) front.add(one);
  const few = new Set(spread(front.members, MOST_SHOWN));
  return front.members.filter((one) => few.has(one)).sort((a, b) => firstOf(a, b));
}

const firstOf = (a: Judged, b: Judged): number => {
  const k = a.scores.findIndex((score, i) => score !== b.scores[i]);
  return k < 0 ? 0 : b.scores[k] - a.scores[k];
};

function leftOutOf(
  judged: readonly Judged[],
  shown: readonly Judged[],
  choiceOf: (one: Candidate) => SetChoice,
): LeftOut[] {
  if (shown.length === 0) return [];
  const traitOf = (of: LeftOut['of'], { front, back }: SetChoice): string =>
    String(of === 'arrangement' ? front.arrangement : back[of]);
  return (Object.keys(TRAITS) as LeftOut['of'][]).flatMap((of) => {
    const isShown = new Set(shown.map((one) => traitOf(of, choiceOf(one))));
    const best = new Map<string, Judged>();
    for (const one of judged) {
      const trait = traitOf(of, choiceOf(one));
      if (isShown.has(trait)) continue;
      const known = best.get(trait);
      if (!known || sum(one) > sum(known)) best.set(trait, one);
    }
    return [...best.values()].map((one) => ({
      of,
      choice: choiceOf(one),
      figures: one.figures,
      behind: Math.min(...one.figures.map((_, k) => Math.max(...shown.map(({ scores }) => scores[k])) - one.scores[k])),
    }));
  });
}
