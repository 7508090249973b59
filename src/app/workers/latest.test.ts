import { expect, it } from 'vitest';
import { latestWins } from './latest.ts';

it('answers the first and the last of a flood of questions, and goes on after an error', () => {
  const sent: number[] = [];
  const heard: string[] = [];
  const worker = {
    postMessage: (question: number) => void sent.push(question),
    onmessage: null as ((event: MessageEvent) => void) | null,
    onerror: null as ((event: ErrorEvent) => void) | null,
  };
  const latest = latestWins<number, string>(worker, (question, reply) =>
    heard.push(`${question} ${'answer' in reply ? reply.answer : reply.error}`),
  );
  for (const question of [1, 2, 3, 4]) latest.ask(question);
  expect(sent).toEqual([1]);
  worker.onmessage!({ data: { answer: 'one' } } as MessageEvent);
  expect(sent).toEqual([1, 4]);
  worker.onerror!({ message: 'broke' } as ErrorEvent);
  latest.ask(5);
  worker.onmessage!({ data: { answer: 'five' } } as MessageEvent);
  expect(sent).toEqual([1, 4, 5]);
  expect(heard).toEqual(['1 one', '4 broke', '5 five']);
});
