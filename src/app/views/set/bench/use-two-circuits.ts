import { withValueAt } from '../../../../engine/index.ts';
import { errorText, twoCircuitsTexts as texts } from '../../../../outputs/words/index.ts';
import { readWithStandIns } from '../../../description/stand-ins.ts';
import type { ChosenKind } from '../../../editing/PartEditor.tsx';
import { tell } from '../../../state/notices.ts';
import { useOpenSet } from '../../../state/set-context.ts';
import { askOnce } from '../../../workers/ask-once.ts';
import type { ReworkAnswer, ReworkQuestion } from './rework.worker.ts';

export const newReworkWorker = (): Worker =>
  new Worker(new URL('./rework.worker.ts', import.meta.url), { type: 'module', name: 'rework' });

/** Once two circuits are chosen, coils, distance and taps that work for the station follow, as one step with the choice. */
export function useTwoCircuits(): (chosen: ChosenKind) => void {
  const { id, chosen: station, lastValidSet, time, written, amend, tellOfChange } = useOpenSet();
  return ({ kind, before }) => {
    const now = station.peek();
    if (kind !== 'two circuits' || !now) return;
    const say = (text: string) => tell(text, { key: 'two-circuits', of: id, untilNextChange: true });
    // The figures may be of a set before it, and of another list of stations.
    const set = readWithStandIns(before, lastValidSet.peek()?.written).usable?.set;
    if (set?.place.stations[now.index]?.name !== now.name) {
      say(texts.notNow);
      return;
    }
    const after = written.peek();
    say(texts.trying);
    askOnce<ReworkQuestion, ReworkAnswer>(newReworkWorker(), {
      set,
      written: before,
      station: now.index,
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
      (error: unknown) => say(texts.notFound(errorText(error))),
    );
  };
}
