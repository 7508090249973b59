import { errorText } from '../../outputs/words/index.ts';
import type { Reply } from './latest.ts';

/**
 * In a worker: each message is a question, and its answer or what went wrong is posted back.
 * @param answer to a question; what it throws becomes the error of the reply
 */
export function answerMessages<Question, Answer>(answer: (question: Question) => Answer | Promise<Answer>): void {
  addEventListener('message', async ({ data }: MessageEvent<Question>) => {
    let reply: Reply<Answer>;
    try {
      reply = { answer: await answer(data) };
    } catch (error) {
      reply = { error: errorText(error) };
    }
    postMessage(reply);
  });
}
