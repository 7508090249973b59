import { useRef, useState } from 'preact/hooks';
import type { SetDescription, WrittenDescription } from '../../../engine/index.ts';
import { measureView as texts } from '../../../outputs/words/index.ts';
import { useOpenSet } from '../../state/set-context.ts';
import { useWorker } from '../../workers/use-worker.ts';
import type { UseAnswer, UseQuestion } from './measure.worker.ts';
import { keptReadings, newMeasureWorker } from './measure-answers.ts';
import { problemLine } from './problem-lines.ts';

/** What becomes of the readings kept. */
type Next = (kept: readonly unknown[]) => readonly unknown[];

interface Step {
  readonly next: Next;
  /** Is called when it is done. */
  readonly done?: () => void;
}

/** What came of it, and the description that it came to: of another it says nothing. */
interface Outcome {
  readonly of: unknown;
  readonly text: string;
}

/**
 * Puts readings into the description as one step that can be undone, or takes them out, one request after the other.
 * @returns `add` of readings to those kept; `useThem` with what becomes of those kept; whether either is being worked
 *   out; what came of it in words
 */
export function useReadings(set: SetDescription) {
  const { written, change, time } = useOpenSet();
  const [outcome, setOutcome] = useState<Outcome | undefined>();
  const [isWorking, setWorking] = useState(false);
  const steps = useRef<Step[]>([]);
  const tell = (text: string): void => setOutcome({ of: written.peek(), text });
  const begin = (): void => {
    setWorking(steps.current.length > 0);
    if (steps.current.length === 0) return;
    const now = written.peek();
    ask({
      about: 'use',
      set,
      written: now as WrittenDescription,
      readings: steps.current[0].next(keptReadings(now)),
      time: time.peek(),
    });
  };
  const ask = useWorker<UseQuestion, UseAnswer>(newMeasureWorker, (question, reply) => {
    // Something else was changed meanwhile: what was worked out is of the description before.
    if (written.peek() !== question.written) {
      begin();
      return;
    }
    const step = steps.current.shift();
    if ('error' in reply) tell(texts.notUsed(reply.error));
    else if (!reply.answer.ok) tell(texts.notUsed(reply.answer.problems.map(problemLine).join(' ')));
    else {
      const { written: next, used } = reply.answer;
      change(() => next, { label: texts.useLabel });
      tell(question.readings.length < keptReadings(question.written).length ? texts.removed : texts.used(used.length));
      step?.done?.();
    }
    begin();
  });
  const useThem = (next: Next, done?: () => void): void => {
    steps.current.push({ next, done });
    if (steps.current.length === 1) begin();
  };
  /** Pressed again while it is worked out, it is the same request. */
  const add = (readings: readonly unknown[], done?: () => void): void => {
    if (steps.current.length === 0) useThem((kept) => [...kept, ...readings], done);
  };
  return { add, useThem, isWorking, outcome: outcome?.of === written.value ? (outcome?.text ?? '') : '' };
}
