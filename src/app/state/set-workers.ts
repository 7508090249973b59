import type { BandsReceived, Reception, Suggestion, WantSuggestion, WantValue } from '../../engine/index.ts';
import type { Reading } from '../description/stand-ins.ts';
import type { Curves } from '../workers/curves.ts';
import type {
  BandsQuestion,
  CurvesQuestion,
  ReceptionQuestion,
  SuggestionsQuestion,
  Uncertainties,
  UncertaintyQuestion,
  WantSuggestionsQuestion,
  WantValuesQuestion,
} from '../workers/engine.worker.ts';
import { type Asked, type Latest, type OnReply, shareWorker } from '../workers/latest.ts';

type Asking<Question, Answer> = (heard: OnReply<Question, Answer>) => Latest<Question>;

/** The workers of the page, each shared by all open sets: a set asks, and hears the answers to its own questions. */
export interface SetWorkers {
  readonly askReading: Asking<{ readonly value: unknown; readonly lastGood?: unknown }, Reading>;
  readonly askReception: Asking<ReceptionQuestion, Reception>;
  readonly askBands: Asking<BandsQuestion, BandsReceived>;
  readonly askCurves: Asking<CurvesQuestion, Curves | undefined>;
  readonly askUncertainty: Asking<UncertaintyQuestion, Uncertainties>;
  /** The same of the worker of the figures, which is loaded and has made the set; further figures wait for the answer. */
  readonly askFirstUncertainty: Asking<UncertaintyQuestion, Uncertainties>;
  readonly askSuggestions: Asking<SuggestionsQuestion, readonly Suggestion[]>;
  readonly askWantValues: Asking<WantValuesQuestion, readonly WantValue[]>;
  readonly askWantSuggestions: Asking<WantSuggestionsQuestion, readonly WantSuggestion[]>;
}

/** Starts a worker by its name: `reading`, `reception`, `curves`, `uncertainty` or `advice`. */
export type StartWorker = (name: string) => Asked;

/** Each worker is started by the first set that asks it, and hears several sorts of questions. */
export function createSetWorkers(start: StartWorker): SetWorkers {
  const shares = new Map<string, Asking<never, unknown>>();
  const shared =
    <Question, Answer>(name: string): Asking<Question, Answer> =>
    (heard) => {
      if (!shares.has(name)) shares.set(name, shareWorker<never, unknown>(start(name)));
      // A worker answers each question as its sort asks.
      return (shares.get(name) as unknown as Asking<Question, Answer>)(heard);
    };
  return {
    askReading: shared('reading'),
    askReception: shared('reception'),
    askBands: shared('uncertainty'),
    askCurves: shared('curves'),
    askUncertainty: shared('uncertainty'),
    askFirstUncertainty: shared('reception'),
    askSuggestions: shared('advice'),
    askWantValues: shared('uncertainty'),
    askWantSuggestions: shared('advice'),
  };
}
