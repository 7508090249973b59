import {
  type Answered,
  answersTo,
  builtSet,
  type FaultModel,
  faultModel,
  readAnswer,
  type SetDescription,
} from '../../../engine/index.ts';
import {
  type FaultSearch,
  faultSearch,
  type ShownNext,
  type TouchBoard,
  touchBoard,
  touchOnBoard,
  touchOnCircuit,
} from '../../../outputs/faults/index.ts';
import type { Scene } from '../../../outputs/scene/index.ts';
import type { When } from '../../description/when.ts';
import { answerMessages } from '../../workers/answer-messages.ts';
import { coastFor } from '../../workers/coast.ts';
import { checkKey, type ShownCheck, type ShownChecks, shownCheck, shownChecks } from './shown-checks.ts';

/** What is observed of a set: answers as typed, by the keys of their checks. */
export interface FaultQuestion {
  readonly set: SetDescription;
  readonly time: When;
  /** Of each fault. */
  readonly cases: number;
  readonly answers: Readonly<Record<string, string>>;
}

/** What the page shows of it. */
export interface FaultAnswer {
  readonly checks: ShownChecks;
  readonly search: Omit<FaultSearch, 'diagnosis' | 'next'>;
  readonly next?: ShownNextCheck;
  /** Keys of checks whose answer is not understood. */
  readonly notUnderstood: readonly string[];
}

/** The next check, how it is made, and where it touches the set. */
export interface ShownNextCheck {
  readonly check: ShownCheck;
  readonly text: string;
  readonly expect: string;
  readonly circuit?: Scene;
  readonly board?: Scene;
}

interface Known {
  readonly key: string;
  readonly model: FaultModel;
  readonly checks: ShownChecks;
  readonly board: TouchBoard | undefined;
}

let known: Known | undefined;

async function modelFor({ set, time, cases }: FaultQuestion): Promise<Known> {
  const key = JSON.stringify([set, time, cases]);
  if (known?.key === key) return known;
  const built = builtSet(set);
  const model = faultModel(built, {
    time,
    cases,
    coast: await coastFor(set.place),
    onProgress: (progress) => postMessage({ progress }),
  });
  known = { key, model, checks: shownChecks(model), board: boardOf(model) };
  return known;
}

/** Parts that no board can carry have none drawn. */
function boardOf({ built }: FaultModel): TouchBoard | undefined {
  try {
    return touchBoard(built);
  } catch (problem) {
    if (problem instanceof RangeError) return undefined;
    throw problem;
  }
}

/** Answers to the checks of a model; what is not understood is said, what it does not ask is passed over. */
function understood(model: FaultModel, answers: FaultQuestion['answers']) {
  const answered: Answered[] = [];
  const impossible = new Set<string>();
  const notUnderstood: string[] = [];
  for (const { id, check } of model.checks) {
    const key = checkKey(check, model.built);
    const text = answers[key]?.trim() ?? '';
    if (text === '') continue;
    const read = readAnswer(check, text, model.built);
    if (!read.ok) {
      notUnderstood.push(key);
      continue;
    }
    const given = answersTo(model, read.observations);
    answered.push(...given.answered);
    // What was answered is not asked again: whoever doubts it types it anew.
    impossible.add(id);
  }
  return { answered, impossible, notUnderstood };
}

async function answer(question: FaultQuestion): Promise<FaultAnswer> {
  const { model, checks, board } = await modelFor(question);
  const { answered, impossible, notUnderstood } = understood(model, question.answers);
  const { diagnosis: _, next, ...search } = faultSearch(model, answered, impossible);
  return { checks, search, notUnderstood, next: next && shownNext(next, model, board) };
}

const shownNext = (
  { check, text, expect }: ShownNext,
  model: FaultModel,
  board: TouchBoard | undefined,
): ShownNextCheck => ({
  check: shownCheck(check, model),
  text,
  expect,
  circuit: touchOnCircuit(check.check, model.built),
  board: board && touchOnBoard(check.check, model.built, board),
});

answerMessages(answer);
