import { batch, computed, effect, type ReadonlySignal, signal } from '@preact/signals';
import {
  type Reception,
  rangedReception,
  type SetDescription,
  type StationReception,
  type Suggestion,
  stationsWithRanges,
} from '../../engine/index.ts';
import type { When } from '../description/when.ts';
import type { SuggestionsQuestion, Uncertainties, UncertaintyQuestion } from '../workers/engine.worker.ts';
import type { Latest, OnReply } from '../workers/latest.ts';
import type { ValidSet } from './set-reading.ts';
import type { SetView } from './set-view.ts';
import type { SetWorkers } from './set-workers.ts';
import { hasWants } from './wanted.ts';

/** The figures of one set. */
export interface SetReception {
  /**
   * What sets built like this one do, as last worked out; the page shows this and nothing else. Medians and ranges come
   * after the figures and lie about them as they did for the set before until they are there.
   */
  readonly reception: ReadonlySignal<Reception | undefined>;
  /**
   * Of the chosen station no medians are there yet, but they will be: the first figures are those of the set exactly as
   * described.
   */
  readonly areFirstFigures: ReadonlySignal<boolean>;
  /** The set that reception is of. */
  readonly receptionSet: ReadonlySignal<SetDescription | undefined>;
  /** Why the set could not be worked out, when it could not. */
  readonly receptionError: ReadonlySignal<string | undefined>;
  /** The station the path is shown for. */
  readonly chosen: ReadonlySignal<StationReception | undefined>;
  /** Where the pointer stands, 0 open … 1 meshed; undefined where the set tunes nothing. */
  readonly pointerPosition: ReadonlySignal<number | undefined>;
  /** What would help the chosen station most, best first; undefined until it is known, or for another station. */
  readonly suggestionsFor: (station: StationReception) => readonly Suggestion[] | undefined;
  /** The suggestions shown are of the set before; the next are on their way. */
  readonly areSuggestionsBehind: ReadonlySignal<boolean>;
}

/** Where the pointer comes nearest to a station that the dial does not reach: at the low end for one below it. */
function nearestEnd({ dial: { points } }: Reception, frequency: number | undefined): number | undefined {
  const distance = (f: number): number => (frequency === undefined ? 0 : Math.abs(Math.log(f / frequency)));
  return points.reduce<Reception['dial']['points'][number] | undefined>(
    (best, point) => (best && distance(best.frequency) <= distance(point.frequency) ? best : point),
    undefined,
  )?.position;
}

/** Whether the answer to one question holds that to another. */
const holds = (answered: UncertaintyQuestion | undefined, asked: UncertaintyQuestion): boolean =>
  answered?.set === asked.set &&
  answered.time === asked.time &&
  asked.stations.every((station) => answered.stations.includes(station));

/** What would help a station, and what it is of: it comes after the figures and may be of the set before. */
interface Suggested {
  readonly set: SetDescription;
  readonly time: When;
  readonly station: number;
  readonly answer: readonly Suggestion[];
}

/** Medians and suggestions wait for a pause in the changes. */
const PAUSE_MS = 150;

/** Of more stations than this the first medians would keep the next figures waiting. */
const FEW_STATIONS = 12;

/** @param hasFocus only for the set in focus are suggestions and ranges worked out. */
export function createReception(
  lastValidSet: ReadonlySignal<ValidSet | undefined>,
  { stationIndex, pointer, time }: SetView,
  workers: SetWorkers,
  hasFocus: ReadonlySignal<boolean>,
): SetReception & { readonly dispose: () => void } {
  const received = signal<Reception | undefined>(undefined);
  const receptionSet = signal<SetDescription | undefined>(undefined);
  const receptionError = signal<string | undefined>(undefined);
  const suggested = signal<Suggested | undefined>(undefined);
  /** How sure the figures of stations are. */
  const sureness = signal<{ readonly set: SetDescription; readonly answer: Uncertainties } | undefined>(undefined);

  /** What medians were last asked for, once there was an answer, be it an error. */
  const answered = signal<UncertaintyQuestion | undefined>(undefined);

  const figures = workers.askReception((question, reply) => {
    if ('error' in reply) {
      receptionError.value = reply.error;
      return;
    }
    receptionError.value = undefined;
    receptionSet.value = question.set;
    received.value = reply.answer;
  });
  const stopFigures = effect(() => {
    if (!lastValidSet.value) return;
    figures.ask({ about: 'reception', set: lastValidSet.value.set, time: time.value });
  });

  /** Of which stations there are medians: those that still stand where they stood. */
  const rangedStations = computed(() => {
    const now = received.value;
    const known = sureness.value;
    if (!now || !known) return [];
    const isSame = (index: number): boolean => {
      const [a, b] = [known.set.place.stations[index], now.stations[index]];
      return a?.name === b?.name && a?.frequency === b?.frequency;
    };
    return known.answer.stations.filter((one) => one && isSame(one.index));
  });
  const reception = computed<Reception | undefined>(() => {
    const now = received.value;
    const known = sureness.value;
    return now && known ? rangedReception(now, rangedStations.value, known.answer.dial) : now;
  });

  const chosen = computed<StationReception | undefined>(() => {
    const now = reception.value;
    if (!now || now.stations.length === 0) return undefined;
    return now.stations[stationIndex.value ?? now.best[0] ?? 0] ?? now.stations[now.best[0] ?? 0];
  });

  const hearUncertainties: OnReply<UncertaintyQuestion, Uncertainties> = (question, reply) => {
    batch(() => {
      answered.value = question;
      if ('answer' in reply) sureness.value = { set: question.set, answer: reply.answer };
    });
  };
  let firstUncertainties: Latest<UncertaintyQuestion> | undefined;
  let uncertainties: Latest<UncertaintyQuestion> | undefined;
  const askUncertainties = (asked: UncertaintyQuestion): void => {
    if (!answered.peek() && asked.stations.length <= FEW_STATIONS) {
      firstUncertainties ??= workers.askFirstUncertainty(hearUncertainties);
      firstUncertainties.ask(asked);
      return;
    }
    firstUncertainties?.close();
    uncertainties ??= workers.askUncertainty(hearUncertainties);
    uncertainties.ask(asked);
  };
  let suggester: Latest<SuggestionsQuestion> | undefined;
  let pause: ReturnType<typeof setTimeout> | undefined;
  const askAboutStation = (now: Reception, set: SetDescription, station: number): void => {
    const stations = stationsWithRanges(now, [station]);
    const asked: UncertaintyQuestion = { about: 'uncertainty', set, stations, time: time.peek() };
    if (!holds(answered.peek(), asked)) askUncertainties(asked);
    if (hasWants(set)) return;
    suggester ??= workers.askSuggestions(({ set, time, station }, reply) => {
      if ('answer' in reply) suggested.value = { set, time, station, answer: reply.answer };
    });
    suggester.ask({ about: 'suggestions', set, station, time: time.peek() });
  };
  // Of the index alone, or the ranges that come in would ask for themselves again.
  const chosenIndex = computed(() => chosen.value?.index);
  // Only once the figures are there: the first answer shall not share its processor with a worker that starts.
  const stopPausing = effect(() => {
    const station = chosenIndex.value;
    const set = receptionSet.value;
    const now = received.value;
    clearTimeout(pause);
    if (station === undefined || set === undefined || !now || !hasFocus.value) return;
    pause = setTimeout(() => askAboutStation(now, set, station), answered.peek() ? PAUSE_MS : 0);
  });

  return {
    reception,
    areFirstFigures: computed(() => {
      const index = chosenIndex.value;
      if (index === undefined || !hasFocus.value || rangedStations.value.some((one) => one?.index === index))
        return false;
      const { set, stations } = answered.value ?? {};
      return !(set === receptionSet.value && stations?.includes(index));
    }),
    receptionSet,
    receptionError,
    chosen,
    pointerPosition: computed<number | undefined>(() => {
      const now = reception.value;
      if (!now) return undefined;
      return pointer.value ?? chosen.value?.dial?.position ?? nearestEnd(now, chosen.value?.frequency);
    }),
    suggestionsFor: (station) => (suggested.value?.station === station.index ? suggested.value.answer : undefined),
    areSuggestionsBehind: computed(
      () =>
        suggested.value !== undefined &&
        (suggested.value.set !== receptionSet.value || suggested.value.time !== time.value),
    ),
    dispose() {
      clearTimeout(pause);
      stopPausing();
      stopFigures();
      figures.close();
      firstUncertainties?.close();
      uncertainties?.close();
      suggester?.close();
    },
  };
}
