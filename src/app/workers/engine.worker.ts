import {
  arrivalMemory,
  type BandsReceived,
  type CurveOptions,
  type DialUncertainty,
  dialUncertaintyOf,
  type FieldOptions,
  type Reception,
  receive,
  receiveBands,
  type SetDescription,
  type StationUncertainty,
  type Suggestion,
  setCircuit,
  suggest,
  suggestForWants,
  type Trials,
  trialsOf,
  uncertaintyOf,
  type WantSuggestion,
  type WantValue,
  wantValuesOnBands,
} from '../../engine/index.ts';
import type { When } from '../description/when.ts';
import { answerMessages } from './answer-messages.ts';
import { coastFor } from './coast.ts';
import { type Curves, curvesFor } from './curves.ts';

export interface ReceptionQuestion {
  readonly about: 'reception';
  readonly set: SetDescription;
  readonly time: When;
}

/** What every band of a set with a band switch receives. */
export interface BandsQuestion {
  readonly about: 'bands';
  readonly set: SetDescription;
  readonly time: When;
}

export interface SuggestionsQuestion {
  readonly about: 'suggestions';
  readonly set: SetDescription;
  readonly station: number;
  readonly time: When;
}

/** What the set gives of its wants. */
export interface WantValuesQuestion {
  readonly about: 'wantValues';
  readonly set: SetDescription;
  readonly time: When;
}

/** What would serve them. */
export interface WantSuggestionsQuestion {
  readonly about: 'wantSuggestions';
  readonly set: SetDescription;
  readonly time: When;
}

export interface CurvesQuestion {
  readonly about: 'curves';
  readonly set: SetDescription;
  readonly station: number;
  /** Ends of what the set tunes to, Hz. */
  readonly covered: readonly [number, number];
  /** Of the station, as the page shows them. */
  readonly figures: CurveOptions['figures'];
  readonly time: When;
}

/** How sure the figures of stations are. */
export interface UncertaintyQuestion {
  readonly about: 'uncertainty';
  readonly set: SetDescription;
  readonly stations: readonly number[];
  readonly time: When;
}

/** How sure the figures are. */
export interface Uncertainties {
  /** In the order asked; undefined for a station of which nothing arrives. */
  readonly stations: readonly (StationUncertainty | undefined)[];
  readonly dial: DialUncertainty;
}

export type EngineQuestion =
  | ReceptionQuestion
  | BandsQuestion
  | SuggestionsQuestion
  | WantValuesQuestion
  | WantSuggestionsQuestion
  | CurvesQuestion
  | UncertaintyQuestion;
export type EngineAnswer =
  | Reception
  | BandsReceived
  | readonly Suggestion[]
  | readonly WantValue[]
  | readonly WantSuggestion[]
  | Curves
  | Uncertainties
  | undefined;

const memory = arrivalMemory();

/** The sets tried for a station serve the next one too, while set and time stay. */
let tried: { readonly key: string; readonly trials: Trials } | undefined;
function trialsFor(set: SetDescription, options: FieldOptions): Trials {
  const key = JSON.stringify([set, options.time]);
  if (tried?.key !== key) tried = { key, trials: trialsOf(set, options) };
  return tried.trials;
}

/** The set of the question before, where this one is about the same: what was made of it serves again. */
let latest: { readonly key: string; readonly set: SetDescription } | undefined;
function asBefore(set: SetDescription): SetDescription {
  const key = JSON.stringify(set);
  if (latest?.key !== key) latest = { key, set };
  return latest.set;
}

async function answer(question: EngineQuestion): Promise<EngineAnswer> {
  const { time } = question;
  const set = asBefore(question.set);
  const options = { time, memory, coast: await coastFor(set.place) };
  switch (question.about) {
    case 'curves':
      return curvesFor(set, question.station, question.covered, { ...options, figures: question.figures });
    case 'suggestions':
      return suggest(trialsFor(set, options), question.station);
    case 'wantValues':
      return wantValuesOnBands(trialsFor(set, options));
    case 'wantSuggestions':
      return suggestForWants(trialsFor(set, options));
    case 'uncertainty':
      return {
        stations: uncertaintyOf(setCircuit(set), { ...options, stations: question.stations }),
        dial: dialUncertaintyOf(setCircuit(set)),
      };
    case 'bands':
      return receiveBands(set, options);
    case 'reception':
      return receive(set, options);
  }
}

answerMessages(answer);
