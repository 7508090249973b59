import type { Reading } from '../description/stand-ins.ts';
import type { Reply } from './latest.ts';
import { type ReadingQuestion, readDescription } from './reading.ts';

// A thin shell: the engine reads, this hands the result back.
addEventListener('message', async ({ data }: MessageEvent<ReadingQuestion>) => {
  let reply: Reply<Reading>;
  try {
    reply = { answer: await readDescription(data) };
  } catch (error) {
    reply = { error: (error as Error).message };
  }
  postMessage(reply);
});
