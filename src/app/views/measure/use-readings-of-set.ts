import { useState } from 'preact/hooks';
import type { SetDescription, WrittenDescription } from '../../../engine/index.ts';
import { measureView as texts } from '../../../outputs/words/index.ts';
import { useOpenSet } from '../../state/set-context.ts';
import { useWorker } from '../../workers/use-worker.ts';
import type { UseAnswer, UseQuestion } from './measure.worker.ts';
import { keptReadings, newMeasureWorker } from './measure-answers.ts';
import { problemLine } from './problem-lines.ts';

/**
 * Puts readings into the description as one step that can be undone, or takes them out.
 * @returns `useThem` with what becomes of the readings kept, and what came of it in words
 */
export function useReadings(set: SetDescription) {
  const { written, change } = useOpenSet();
  const [outcome, setOutcome] = useState('');
  const ask = useWorker<UseQuestion, UseAnswer>(newMeasureWorker, (question, reply) => {
    if ('error' in reply) setOutcome(texts.notUsed(reply.error));
    else if (!reply.answer.ok) setOutcome(texts.notUsed(reply.answer.problems.map(problemLine).join(' ')));
    // Something else was changed meanwhile: what was worked out is of the description before.
    else if (written.peek() !== question.written) ask({ ...question, written: written.peek() as WrittenDescription });
    else {
      const { written: next, used } = reply.answer;
      change(() => next, { label: texts.useLabel });
      setOutcome(
        question.readings.length < keptReadings(question.written).length ? texts.removed : texts.used(used.length),
      );
    }
  });
  const useThem = (next: (kept: readonly unknown[]) => readonly unknown[]): void => {
    const now = written.peek();
    ask({ about: 'use', set, written: now as WrittenDescription, readings: next(keptReadings(now)) });
  };
  return { useThem, outcome };
}
