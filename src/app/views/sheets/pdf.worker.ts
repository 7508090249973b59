import { type Sheet, sheetsPdf } from '../../../outputs/sheets/index.ts';
import { answerMessages } from '../../workers/answer-messages.ts';

export interface PdfQuestion {
  readonly sheets: readonly Sheet[];
  readonly title: string;
  readonly fonts: Parameters<typeof sheetsPdf>[1]['fonts'];
}

answerMessages(({ sheets, title, fonts }: PdfQuestion): Promise<Uint8Array> => sheetsPdf(sheets, { title, fonts }));
