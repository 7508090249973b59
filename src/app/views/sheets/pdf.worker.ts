import regular from 'source-sans/TTF/SourceSans3-Regular.ttf?url';
import bold from 'source-sans/TTF/SourceSans3-Semibold.ttf?url';
import { type Sheet, sheetsPdf } from '../../../outputs/sheets/index.ts';
import { sheetsView as texts } from '../../../outputs/words/index.ts';
import { answerMessages } from '../../workers/answer-messages.ts';

export interface PdfQuestion {
  readonly sheets: readonly Sheet[];
  readonly title: string;
}

const bytesOf = async (address: string): Promise<Uint8Array> => {
  const answer = await fetch(address);
  if (!answer.ok) throw new Error(texts.fontMissing(answer.status));
  return new Uint8Array(await answer.arrayBuffer());
};

answerMessages(async ({ sheets, title }: PdfQuestion): Promise<Uint8Array> => {
  const fonts = { regular: await bytesOf(regular), bold: await bytesOf(bold) };
  return sheetsPdf(sheets, { title, fonts });
});
