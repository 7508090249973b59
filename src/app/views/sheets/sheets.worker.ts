import { builtBoard, sheetsFor } from '../../../outputs/sheets/index.ts';
import { answerMessages } from '../../workers/answer-messages.ts';
import { coastFor } from '../../workers/coast.ts';
import type { SheetsAnswer, SheetsQuestion } from './sheets-question.ts';

answerMessages(async ({ written, set, reception, paper, only }: SheetsQuestion): Promise<SheetsAnswer> => {
  const built = only.includes('board') ? builtBoard(set) : undefined;
  const coast = await coastFor(set.place);
  return { sheets: sheetsFor(written, set, reception, { paper, built, coast, only }), board: built?.layout };
});
