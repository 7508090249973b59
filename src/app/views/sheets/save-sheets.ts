import regular from 'source-sans/TTF/SourceSans3-Regular.ttf?url';
import bold from 'source-sans/TTF/SourceSans3-Semibold.ttf?url';
import { type Page, pageSvg, type Sheet } from '../../../outputs/sheets/index.ts';
import { sheetsView as texts } from '../../../outputs/words/index.ts';
import { downloadFile } from '../../state/download.ts';
import { askOnce } from '../../workers/ask-once.ts';
import type { PdfQuestion } from './pdf.worker.ts';

const newPdfWorker = (): Worker =>
  new Worker(new URL('./pdf.worker.ts', import.meta.url), { type: 'module', name: 'pdf' });

/** Read by the page: in the page of one file the address of a worker that carried the fonts would be too long. */
const bytesOf = async (address: string): Promise<Uint8Array> => {
  const answer = await fetch(address);
  if (!answer.ok) throw new Error(texts.fontMissing(answer.status));
  return new Uint8Array(await answer.arrayBuffer());
};

/** Hand the sheets to the person as one PDF. @throws Error with what went wrong */
export async function savePdf(sheets: readonly Sheet[], title: string, file: string): Promise<void> {
  const fonts = { regular: await bytesOf(regular), bold: await bytesOf(bold) };
  const bytes = await askOnce<PdfQuestion, Uint8Array>(newPdfWorker(), { sheets, title, fonts });
  downloadFile(file, new Blob([bytes as BlobPart], { type: 'application/pdf' }));
}

export const saveSvg = (page: Page, file: string): void =>
  downloadFile(`${file}.svg`, new Blob([pageSvg(page)], { type: 'image/svg+xml' }));
