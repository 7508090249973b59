import { batch, computed, effect, type ReadonlySignal, signal } from '@preact/signals';
import { type BandsReceived, standingBand, turnSwitch } from '../../engine/index.ts';
import { bandNames, onBand, pathOnBand, withoutBand } from '../description/on-band.ts';
import type { BandsQuestion } from '../workers/engine.worker.ts';
import type { Latest } from '../workers/latest.ts';
import type { Document } from './document.ts';
import { forgetKept, type Keeps, keptWithSet } from './kept-with-set.ts';
import type { SetReading } from './set-reading.ts';
import type { SetView } from './set-view.ts';
import type { SetWorkers } from './set-workers.ts';

/** The band switch of one set. */
export interface SetBands {
  /** The description as it is kept; `written` is the same with the switch on the band that is looked at. */
  readonly whole: ReadonlySignal<unknown>;
  /** The band that is looked at, by its place in the list; undefined for a set without a band switch. */
  readonly band: ReadonlySignal<number | undefined>;
  readonly turnTo: (band: number) => void;
  /** The band that is looked at stays so, unless it is this one. */
  readonly removeBand: (band: number, label: string) => void;
  /** Every band with the stations it is best for; undefined until it is known. May be of the set before. */
  readonly bandsReceived: ReadonlySignal<BandsReceived | undefined>;
  /** Choose a station on the band that receives it best; `chooseStation` turns the switch only where it must. */
  readonly chooseOnBestBand: (station: number) => void;
}

/** The band that is looked at, no part of the description: a set is loaded again as it was left. */
const KEPT_BAND: Keeps<number | undefined> = {
  name: 'band',
  read: (stored) => (Number.isSafeInteger(stored) && (stored as number) >= 0 ? (stored as number) : undefined),
  worth: (band) => band,
};

/** Of a set that is gone for good. */
export const forgetBand = (id: string): void => forgetKept(KEPT_BAND, id);

/**
 * A document as it is with its switch on the band that is looked at: what is read is of that band, what is changed goes back
 * to where the description has it. The description itself stays on the band that it stands on.
 */
export function createBanded(
  document: Document,
  id: string,
): Pick<SetBands, 'whole' | 'band' | 'turnTo' | 'removeBand'> &
  Pick<Document, 'written' | 'valueChange' | 'edit' | 'change' | 'amend'> & {
    readonly standing: ReadonlySignal<number | undefined>;
    readonly dispose: () => void;
  } {
  const { value: chosen, dispose } = keptWithSet(KEPT_BAND, id);
  const standing = computed(() => standingBand(document.written.value));
  const band = computed(() => {
    const now = chosen.value;
    return standing.value === undefined || now === undefined || now >= bandNames(document.written.value).length
      ? standing.value
      : now;
  });
  const written = computed(() => {
    const now = band.value;
    return now === undefined ? document.written.value : turnSwitch(document.written.value, now);
  });
  const valueChange: Document['valueChange'] = (path, value, options) => {
    const change = document.valueChange(path, value, options);
    return { ...change, make: onBand(band.peek(), change.make) };
  };
  return {
    whole: document.written,
    standing,
    band,
    written,
    dispose,
    valueChange,
    turnTo: (to) => {
      chosen.value = to;
    },
    removeBand(index, label) {
      const shown = band.peek();
      batch(() => {
        document.change((base) => withoutBand(base, index), { label });
        if (shown !== undefined && shown > index) chosen.value = shown - 1;
      });
    },
    edit: (path, value, options) => document.apply(valueChange(path, value, options)),
    change: (make, options) => document.change(onBand(band.peek(), make), options),
    amend: (make, label) => document.amend(onBand(band.peek(), make), label),
  };
}

/** What is wrong with a description, at the places where the band that is looked at shows it. */
export function readingOnBand(
  reading: SetReading,
  { band, standing }: ReturnType<typeof createBanded>,
): Pick<SetReading, 'problems' | 'problemsAt' | 'standIns' | 'lastValidSet'> {
  const moved = <T extends { readonly path: string }>(all: readonly T[]): readonly T[] =>
    band.value === standing.value
      ? all
      : all.map((one) => ({ ...one, path: pathOnBand(one.path, band.value, standing.value) }));
  const problems = computed(() => moved(reading.problems.value));
  return {
    problems,
    problemsAt: (path) =>
      band.value === standing.value
        ? reading.problemsAt(path)
        : problems.value.filter((problem) => problem.path === path),
    standIns: computed(() => moved(reading.standIns.value)),
    lastValidSet: computed(() => {
      const valid = reading.lastValidSet.value;
      const now = band.value;
      return valid && now !== undefined ? { ...valid, set: turnSwitch(valid.set, now) } : valid;
    }),
  };
}

/** The bands follow the figures: they wait for them. */
const PAUSE_MS = 150;

/**
 * Every band is received beside the one that is looked at, and a station that is chosen turns the switch to a band that
 * covers it.
 * @param hasFocus only for the set in focus
 */
export function followBands(
  { lastValidSet }: Pick<SetReading, 'lastValidSet'>,
  { band, turnTo }: Pick<SetBands, 'band' | 'turnTo'>,
  view: Pick<SetView, 'time' | 'stationIndex' | 'chooseStation'>,
  { askBands }: Pick<SetWorkers, 'askBands'>,
  hasFocus: ReadonlySignal<boolean>,
): Pick<SetBands, 'bandsReceived' | 'turnTo' | 'chooseOnBestBand'> &
  Pick<SetView, 'chooseStation'> & { readonly dispose: () => void } {
  const bandsReceived = signal<BandsReceived | undefined>(undefined);
  const covers = (index: number, station: number): boolean => {
    const received = bandsReceived.peek()?.bands[index];
    const carrier = lastValidSet.peek()?.set.place.stations[station]?.frequency;
    return received !== undefined && carrier !== undefined && received.lowest <= carrier && carrier <= received.highest;
  };
  const turnToBestOf = (station: number): void => {
    const best = bandsReceived.peek()?.bestOf[station];
    if (best !== undefined && band.peek() !== undefined) turnTo(best);
  };
  const turnIfMissed = (station: number | undefined): void => {
    const shown = band.peek();
    if (station !== undefined && shown !== undefined && !covers(shown, station)) turnToBestOf(station);
  };
  let ask: Latest<BandsQuestion> | undefined;
  let pause: ReturnType<typeof setTimeout> | undefined;
  const stop = effect(() => {
    const set = lastValidSet.value?.set;
    const time = view.time.value;
    clearTimeout(pause);
    if (!set?.bands) bandsReceived.value = undefined;
    if (!set?.bands || !hasFocus.value) return;
    pause = setTimeout(() => {
      ask ??= askBands((_, reply) => {
        if (!('answer' in reply) || !lastValidSet.peek()?.set.bands) return;
        const isFirst = bandsReceived.peek() === undefined;
        batch(() => {
          bandsReceived.value = reply.answer;
          // A station that was chosen before the page was loaded again comes without its band.
          if (isFirst) turnIfMissed(view.stationIndex.peek());
        });
      });
      ask.ask({ about: 'bands', set, time });
    }, PAUSE_MS);
  });
  return {
    bandsReceived,
    chooseStation(index) {
      batch(() => {
        turnIfMissed(index);
        view.chooseStation(index);
      });
    },
    chooseOnBestBand(station) {
      batch(() => {
        turnToBestOf(station);
        view.chooseStation(station);
      });
    },
    // A station of another band has nothing to show on this one: the best of this band is looked at.
    turnTo(to) {
      const chosen = view.stationIndex.peek();
      batch(() => {
        turnTo(to);
        view.chooseStation(chosen !== undefined && covers(to, chosen) ? chosen : undefined);
      });
    },
    dispose() {
      clearTimeout(pause);
      stop();
      ask?.close();
    },
  };
}
