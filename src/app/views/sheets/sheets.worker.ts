import { builtBoard, sheetsFor } from '../../../outputs/sheets/index.ts';
import { answerMessages } from '../../workers/answer-messages.ts';
import { coastFor } from '../../workers/coast.ts';
import type { SheetsAnswer, SheetsQuestion } from './sheets-question.ts';

answerMessages(async ({ written, set, reception, paper }: SheetsQuestion): Promise<SheetsAnswer> => {
  const built = builtBoard(set);
  const coast = set.bands && (await coastFor(set.place));
  return { sheets: sheetsFor(written, set, reception, { paper, built, coast }), board: built.layout };
});
