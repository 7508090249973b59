import { computed, effect, signal } from '@preact/signals';
import type { Help, Reception, StationReception } from '../../engine/reception/path/types.ts';
import type { SetDescription } from '../../engine/set/description.ts';
import type { When } from '../description/when.ts';
import type { ReceptionQuestion } from '../workers/engine.worker.ts';
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

interface Advice {
  readonly set: SetDescription;
  readonly time: When;
  /** For every station, best first. */
  readonly help: readonly (readonly Help[])[];
}
/** What would help; it is worked out after the figures and may be of the set before. */
const advice = signal<Advice | undefined>(undefined);

const figures = latestWins<ReceptionQuestion, Reception>(newEngineWorker('reception'), (question, reply) => {
  if ('error' in reply) {
    receptionError.value = reply.error;
    return;
  }
  receptionError.value = undefined;
  receptionSet.value = question.set;
  reception.value = reply.answer;
  advise(question);
});

/** Advice tries some thirty changed sets, so it has a worker of its own and waits for a pause. */
const ADVICE_PAUSE_MS = 150;
const newAdviser = () =>
  latestWins<ReceptionQuestion, Reception>(newEngineWorker('advice'), (question, reply) => {
    if ('answer' in reply)
      advice.value = { set: question.set, time: question.time, help: reply.answer.stations.map((one) => one.help) };
  });
let adviser: Latest<ReceptionQuestion> | undefined;
let pause: ReturnType<typeof setTimeout> | undefined;

/** Only once the figures are there: the first answer shall not share its processor with a worker that starts. */
function advise(question: ReceptionQuestion): void {
  clearTimeout(pause);
  pause = setTimeout(() => {
    adviser ??= newAdviser();
    adviser.ask({ ...question, helpFor: 'all' });
  }, ADVICE_PAUSE_MS);
}

effect(() => {
  if (!understood.value) return;
  figures.ask({ about: 'reception', set: understood.value.set, time: time.value });
});

/** What would help a station most, best first; undefined until it is known. */
export const helpOf = (station: StationReception): readonly Help[] | undefined => advice.value?.help[station.index];
/** The advice shown is of the set before; the next is on its way. */
export const isAdviceBehind = computed(
  () => advice.value !== undefined && (advice.value.set !== receptionSet.value || advice.value.time !== time.value),
);

/** The station the path is shown for. */
export const chosen = computed<StationReception | undefined>(() => {
  const now = reception.value;
  if (!now || now.stations.length === 0) return undefined;
  return now.stations[stationIndex.value ?? now.best[0] ?? 0] ?? now.stations[now.best[0] ?? 0];
});

/** Where the pointer stands, 0 open … 1 meshed; undefined where the set tunes nothing. */
export const pointerPosition = computed<number | undefined>(() => {
  const now = reception.value;
  if (!now) return undefined;
  return pointer.value ?? chosen.value?.dial?.position ?? now.dial.points[0]?.position;
});
