import { builtBoard, sheetsFor } from '../../../outputs/sheets/index.ts';
import { answerMessages } from '../../workers/answer-messages.ts';
import type { SheetsAnswer, SheetsQuestion } from './sheets-question.ts';

answerMessages(({ written, set, reception, paper }: SheetsQuestion): SheetsAnswer => {
  const built = builtBoard(set);
  return { sheets: sheetsFor(written, set, reception, { paper, built }), board: built.layout };
});
