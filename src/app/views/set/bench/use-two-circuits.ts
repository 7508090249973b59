import { readValue, withValueAt } from '../../../../engine/index.ts';
import { errorText, twoCircuitsTexts as texts } from '../../../../outputs/words/index.ts';
import type { ChosenKind } from '../../../editing/PartEditor.tsx';
import { tell } from '../../../state/notices.ts';
import { useOpenSet } from '../../../state/set-context.ts';
import { askOnce } from '../../../workers/ask-once.ts';
import type { ReworkAnswer, ReworkQuestion } from './rework.worker.ts';

export const newReworkWorker = (): Worker =>
  new Worker(new URL('./rework.worker.ts', import.meta.url), { type: 'module', name: 'rework' });

/** Once two circuits are chosen, coils, distance and taps that work for the station follow, as one step with the choice. */
export function useTwoCircuits(): (chosen: ChosenKind) => void {
  const { id, chosen: station, time, written, amend, tellOfChange } = useOpenSet();
  return ({ kind, before }) => {
    const index = station.peek()?.index;
    if (kind !== 'two circuits' || index === undefined) return;
    // The figures may be of a set before it.
    const read = readValue(before);
    if (!read.ok) return;
    const after = written.peek();
    tell(texts.trying, { key: 'two-circuits', of: id, untilNextChange: true });
    askOnce<ReworkQuestion, ReworkAnswer>(newReworkWorker(), {
      set: read.set,
      written: before,
      station: index,
      time: time.peek(),
      what: 'two circuits',
    }).then(
      ({ sentences, changes }) => {
        // Something else was changed since: it is not taken back.
        if (written.peek() !== after) return;
        if (changes.length > 0)
          amend((base) => changes.reduce((made, { path, to }) => withValueAt(made, path, to), base), texts.undoLabel);
        tellOfChange(sentences.flat().join(' '), 'two-circuits');
      },
      (error: unknown) =>
        tell(texts.notFound(errorText(error)), { key: 'two-circuits', of: id, untilNextChange: true }),
    );
  };
}
