import { computed, effect, signal } from '@preact/signals';
import {
  listeningTime,
  type RangedStation,
  type Reception,
  rangedStation,
  type SetDescription,
  type StationReception,
  type StationUncertainty,
  type Suggestion,
} from '../../engine/index.ts';
import type { When } from '../description/when.ts';
import type { ReceptionQuestion, SuggestionsQuestion, UncertaintyQuestion } from '../workers/engine.worker.ts';
import { type Latest, latestWins } from '../workers/latest.ts';
import { newEngineWorker } from './engine-worker.ts';
import { understood } from './understanding.ts';
import { pointer, stationIndex, time } from './view.ts';

/** What the set would do, as last worked out; the page shows this and nothing else. */
export const reception = signal<Reception | undefined>(undefined);
/** The set that reception is of. */
export const receptionSet = signal<SetDescription | undefined>(undefined);
/** Why the set could not be worked out, when it could not. */
export const receptionError = signal<string | undefined>(undefined);

interface Suggested {
  readonly set: SetDescription;
  readonly time: When;
  readonly station: number;
  /** Best first. */
  readonly suggestions: readonly Suggestion[];
}
/** What would help the chosen station; it is worked out after the figures and may be of the set before. */
const suggested = signal<Suggested | undefined>(undefined);

const figures = latestWins<ReceptionQuestion, Reception>(newEngineWorker('reception'), (question, reply) => {
  if ('error' in reply) {
    receptionError.value = reply.error;
    return;
  }
  receptionError.value = undefined;
  receptionSet.value = question.set;
  reception.value = reply.answer;
});

/** The page begins with the time the description says, and goes there again when it says another. */
const listening = computed(() => JSON.stringify(understood.value?.set.place.listening));
effect(() => {
  const place = listening.value === undefined ? undefined : understood.peek()?.set.place;
  time.value = listeningTime(place ?? {});
});

effect(() => {
  if (!understood.value) return;
  figures.ask({ about: 'reception', set: understood.value.set, time: time.value });
});

/** The station the path is shown for. */
export const chosen = computed<StationReception | undefined>(() => {
  const now = reception.value;
  if (!now || now.stations.length === 0) return undefined;
  return now.stations[stationIndex.value ?? now.best[0] ?? 0] ?? now.stations[now.best[0] ?? 0];
});

interface Sureness {
  readonly set: SetDescription;
  readonly time: When;
  readonly station: number;
  readonly uncertainty: StationUncertainty | undefined;
}
/** How sure the figures of the chosen station are; worked out after them, and may be of the set before. */
const sureness = signal<Sureness | undefined>(undefined);

/** Suggestions try many changed sets, so they have a worker of their own and wait for a pause. */
const SUGGESTION_PAUSE_MS = 150;
const newUncertainties = () =>
  latestWins<UncertaintyQuestion, StationUncertainty | undefined>(newEngineWorker('uncertainty'), (question, reply) => {
    if ('answer' in reply) {
      const { set, time, station } = question;
      sureness.value = { set, time, station, uncertainty: reply.answer };
    }
  });
let uncertainties: Latest<UncertaintyQuestion> | undefined;
const newSuggester = () =>
  latestWins<SuggestionsQuestion, readonly Suggestion[]>(newEngineWorker('advice'), (question, reply) => {
    if ('answer' in reply)
      suggested.value = {
        set: question.set,
        time: question.time,
        station: question.station,
        suggestions: reply.answer,
      };
  });
let suggester: Latest<SuggestionsQuestion> | undefined;
let pause: ReturnType<typeof setTimeout> | undefined;

// Only once the figures are there: the first answer shall not share its processor with a worker that starts.
effect(() => {
  const station = chosen.value?.index;
  const set = receptionSet.value;
  if (station === undefined || set === undefined) return;
  clearTimeout(pause);
  pause = setTimeout(() => {
    uncertainties ??= newUncertainties();
    uncertainties.ask({ about: 'uncertainty', set, station, time: time.peek() });
    suggester ??= newSuggester();
    suggester.ask({ about: 'suggestions', set, station, time: time.peek() });
  }, SUGGESTION_PAUSE_MS);
});

/** A station with ranges, its figures as the usual such set has them; undefined until they are known for this very set. */
export function rangesFor(station: StationReception): RangedStation | undefined {
  const known = sureness.value;
  if (known?.uncertainty === undefined || known.station !== station.index) return undefined;
  if (known.set !== receptionSet.value || known.time !== time.value) return undefined;
  return rangedStation(station, known.uncertainty);
}

/** What would help the chosen station most, best first; undefined until it is known, or for another station. */
export const suggestionsFor = (station: StationReception): readonly Suggestion[] | undefined =>
  suggested.value?.station === station.index ? suggested.value.suggestions : undefined;
/** The suggestions shown are of the set before; the next are on their way. */
export const areSuggestionsBehind = computed(
  () =>
    suggested.value !== undefined &&
    (suggested.value.set !== receptionSet.value || suggested.value.time !== time.value),
);

/** Where the pointer stands, 0 open … 1 meshed; undefined where the set tunes nothing. */
export const pointerPosition = computed<number | undefined>(() => {
  const now = reception.value;
  if (!now) return undefined;
  return pointer.value ?? chosen.value?.dial?.position ?? now.dial.points[0]?.position;
});
