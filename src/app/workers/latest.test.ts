import { expect, it } from 'vitest';
import { latestWins, shareWorker } from './latest.ts';

function silentWorker() {
  const sent: number[] = [];
  const worker = {
    postMessage: (question: number) => void sent.push(question),
    onmessage: null as ((event: MessageEvent) => void) | null,
    onerror: null as ((event: ErrorEvent) => void) | null,
  };
  const answer = (text: string) => worker.onmessage!({ data: { answer: text } } as MessageEvent);
  const fail = (message: string) => worker.onerror!({ message } as ErrorEvent);
  return { sent, worker, answer, fail };
}

it('answers the first and the last of a flood of questions, and goes on after an error', () => {
  const { sent, worker, answer, fail } = silentWorker();
  const heard: string[] = [];
  const latest = latestWins<number, string>(worker, (question, reply) =>
    heard.push(`${question} ${'answer' in reply ? reply.answer : reply.error}`),
  );
  for (const question of [1, 2, 3, 4]) latest.ask(question);
  expect(sent).toEqual([1]);
  answer('one');
  expect(sent).toEqual([1, 4]);
  fail('broke');
  latest.ask(5);
  answer('five');
  expect(sent).toEqual([1, 4, 5]);
  expect(heard).toEqual(['1 one', '4 broke', '5 five']);
});

it('a shared worker gives each asker the answers to its own questions, each its latest, none starved', () => {
  const { sent, worker, answer, fail } = silentWorker();
  const share = shareWorker<number, string>(worker);
  const heard: string[] = [];
  const [a, b] = ['a', 'b'].map((name) =>
    share((question, reply) => heard.push(`${name}${question} ${'answer' in reply ? reply.answer : reply.error}`)),
  );
  a.ask(1);
  a.ask(2);
  b.ask(10);
  a.ask(3);
  answer('one');
  a.ask(4);
  answer('three');
  fail('broke');
  answer('four');
  expect(sent).toEqual([1, 3, 10, 4]);
  expect(heard).toEqual(['a1 one', 'a3 three', 'b10 broke', 'a4 four']);
});

it('whoever closed hears nothing more and is not asked for; the others go on', () => {
  const { sent, worker, answer } = silentWorker();
  const share = shareWorker<number, string>(worker);
  const heard: string[] = [];
  const [a, b] = ['a', 'b'].map((name) => share((question) => heard.push(`${name}${question}`)));
  a.ask(1);
  a.ask(2);
  b.ask(10);
  a.close();
  a.ask(3);
  answer('one');
  answer('ten');
  expect(sent).toEqual([1, 10]);
  expect(heard).toEqual(['b10']);
});
