import { batch, computed, effect, type ReadonlySignal, type Signal, signal } from '@preact/signals';
import { listeningTime, type StageId } from '../../engine/index.ts';
import type { When } from '../description/when.ts';
import type { ValidSet } from './set-reading.ts';

/** What of one set is looked at, and when. */
export interface SetView {
  /** The stage whose workbench is open. */
  readonly stage: Signal<StageId>;
  /** The chosen station's place in the list; undefined: the one heard best. */
  readonly stationIndex: ReadonlySignal<number | undefined>;
  /** Where the dial's pointer stands between stations, 0 open … 1 meshed; undefined: on the chosen station. */
  readonly pointer: Signal<number | undefined>;
  /** Day or night everywhere, or a moment. */
  readonly time: Signal<When>;
  /** Choose a station, and with it where the pointer stands. */
  readonly chooseStation: (index: number | undefined) => void;
  /** Put the pointer off the stations' own places; what is shown is the station heard there, if any. */
  readonly pointBeside: (position: number, index: number | undefined) => void;
  /** The station that is open stays so, whichever is heard best from now on; the pointer stays where it is. */
  readonly keepStation: (index: number) => void;
}

/** It begins with the time the description says, and goes there again when it says another. */
export function createSetView(
  lastValidSet: ReadonlySignal<ValidSet | undefined>,
): SetView & { readonly dispose: () => void } {
  const stationIndex = signal<number | undefined>(undefined);
  const pointer = signal<number | undefined>(undefined);
  const time = signal<When>('day');
  const listening = computed(() => JSON.stringify(lastValidSet.value?.set.place.listening));
  const dispose = effect(() => {
    const place = listening.value === undefined ? undefined : lastValidSet.peek()?.set.place;
    time.value = listeningTime(place ?? {});
  });
  return {
    stage: signal<StageId>('tuned circuit'),
    stationIndex,
    pointer,
    time,
    chooseStation(index) {
      stationIndex.value = index;
      pointer.value = undefined;
    },
    pointBeside(position, index) {
      batch(() => {
        pointer.value = position;
        if (index !== undefined) stationIndex.value = index;
      });
    },
    keepStation(index) {
      stationIndex.value ??= index;
    },
    dispose,
  };
}
