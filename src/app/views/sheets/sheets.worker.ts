import { boardFor, sheetsFor } from '../../../outputs/sheets/index.ts';
import { errorText } from '../../../outputs/words/index.ts';
import type { Reply } from '../../workers/latest.ts';
import type { SheetsAnswer, SheetsQuestion } from './sheets-question.ts';

// A thin shell: the sheets are drawn off the page's own thread, and handed back.
addEventListener('message', ({ data }: MessageEvent<SheetsQuestion>) => {
  const { written, set, reception, paper } = data;
  let reply: Reply<SheetsAnswer>;
  try {
    reply = { answer: { sheets: sheetsFor(written, set, reception, { paper }), board: boardFor(set) } };
  } catch (error) {
    reply = { error: errorText(error) };
  }
  postMessage(reply);
});
