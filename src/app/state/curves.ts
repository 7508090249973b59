import { effect, type ReadonlySignal, signal } from '@preact/signals';
import type { Curves } from '../workers/curves.ts';
import type { CurvesQuestion } from '../workers/engine.worker.ts';
import type { Latest } from '../workers/latest.ts';
import type { SetReception } from './reception.ts';
import type { SetView } from './set-view.ts';
import type { SetWorkers } from './set-workers.ts';

/** The plots of one set. */
export interface SetCurves {
  /** What the plots of the open workbench are drawn from; it follows the figures at a short distance. */
  readonly curves: ReadonlySignal<Curves | undefined>;
}

const DRAWN: ReadonlySet<string> = new Set(['tuned circuit', 'detector', 'audio']);

/** @param hasFocus only for the set in focus are the plots worked out. */
export function createCurves(
  { reception, receptionSet, chosen }: SetReception,
  { stage, time }: SetView,
  { askCurves }: Pick<SetWorkers, 'askCurves'>,
  hasFocus: ReadonlySignal<boolean>,
): SetCurves & { readonly dispose: () => void } {
  const curves = signal<Curves | undefined>(undefined);
  let latest: Latest<CurvesQuestion> | undefined;
  const stop = effect(() => {
    const now = reception.value;
    const set = receptionSet.value;
    const station = chosen.value;
    if (!hasFocus.value || !now || !set || !station || !DRAWN.has(stage.value)) return;
    // Begun only now, so that it does not compete with the first answer.
    latest ??= askCurves((_, reply) => {
      if ('answer' in reply) curves.value = reply.answer;
    });
    const { loadedQ, bandwidth, detectorVoltage, directVoltage } = station;
    latest.ask({
      about: 'curves',
      set,
      station: station.index,
      covered: [now.dial.lowest, now.dial.highest],
      figures: { loadedQ, bandwidth, detectorVoltage, directVoltage },
      time: time.value,
    });
  });
  return {
    curves,
    dispose() {
      stop();
      latest?.close();
    },
  };
}
