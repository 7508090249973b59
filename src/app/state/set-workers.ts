import type { ReadResult, Reception, Suggestion } from '../../engine/index.ts';
import type { Curves } from '../workers/curves.ts';
import type {
  CurvesQuestion,
  ReceptionQuestion,
  StationUncertainties,
  SuggestionsQuestion,
  UncertaintyQuestion,
} from '../workers/engine.worker.ts';
import { type Asked, type Latest, type OnReply, shareWorker } from '../workers/latest.ts';

type Asking<Question, Answer> = (heard: OnReply<Question, Answer>) => Latest<Question>;

/** The workers of the page, each shared by all open sets: a set asks, and hears the answers to its own questions. */
export interface SetWorkers {
  readonly askReading: Asking<{ readonly value: unknown }, ReadResult>;
  readonly askReception: Asking<ReceptionQuestion, Reception>;
  readonly askCurves: Asking<CurvesQuestion, Curves | undefined>;
  readonly askUncertainty: Asking<UncertaintyQuestion, StationUncertainties>;
  readonly askSuggestions: Asking<SuggestionsQuestion, readonly Suggestion[]>;
}

/** Starts a worker by its name: `reading`, `reception`, `curves`, `uncertainty` or `advice`. */
export type StartWorker = (name: string) => Asked;

/** Each worker is started by the first set that asks it. */
export function createSetWorkers(start: StartWorker): SetWorkers {
  const shared = <Question, Answer>(name: string): Asking<Question, Answer> => {
    let share: Asking<Question, Answer> | undefined;
    return (heard) => (share ??= shareWorker<Question, Answer>(start(name)))(heard);
  };
  return {
    askReading: shared('reading'),
    askReception: shared('reception'),
    askCurves: shared('curves'),
    askUncertainty: shared('uncertainty'),
    askSuggestions: shared('advice'),
  };
}
