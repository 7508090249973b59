import { effect, signal } from '@preact/signals';
import type { Curves } from '../workers/curves.ts';
import type { CurvesQuestion } from '../workers/engine.worker.ts';
import { type Latest, latestWins } from '../workers/latest.ts';
import { newEngineWorker } from './engine-worker.ts';
import { chosen, reception, receptionSet } from './reception.ts';
import { stage, time } from './view.ts';

/** What the plots of the open workbench are drawn from; it follows the figures at a short distance. */
export const curves = signal<Curves | undefined>(undefined);

const DRAWN: ReadonlySet<string> = new Set(['tuned circuit', 'detector', 'audio']);
let latest: Latest<CurvesQuestion> | undefined;

effect(() => {
  const now = reception.value;
  const set = receptionSet.value;
  const station = chosen.value;
  if (!now || !set || !station || !DRAWN.has(stage.value)) return;
  // Begun only now, so that it does not compete with the first answer.
  latest ??= latestWins<CurvesQuestion, Curves | undefined>(newEngineWorker('curves'), (_, reply) => {
    if ('answer' in reply) curves.value = reply.answer;
  });
  latest.ask({
    about: 'curves',
    set,
    station: station.index,
    covered: [now.dial.lowest, now.dial.highest],
    time: time.value,
  });
});
