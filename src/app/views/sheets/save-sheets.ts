import { type Page, pageSvg, type Sheet } from '../../../outputs/sheets/index.ts';
import { downloadFile } from '../../state/download.ts';
import { askOnce } from '../../workers/ask-once.ts';
import type { PdfQuestion } from './pdf.worker.ts';

const newPdfWorker = (): Worker =>
  new Worker(new URL('./pdf.worker.ts', import.meta.url), { type: 'module', name: 'pdf' });

/** Hand the sheets to the person as one PDF. @throws Error with what went wrong */
export async function savePdf(sheets: readonly Sheet[], title: string, file: string): Promise<void> {
  const bytes = await askOnce<PdfQuestion, Uint8Array>(newPdfWorker(), { sheets, title });
  downloadFile(file, new Blob([bytes as BlobPart], { type: 'application/pdf' }));
}

export const saveSvg = (page: Page, file: string): void =>
  downloadFile(`${file}.svg`, new Blob([pageSvg(page)], { type: 'image/svg+xml' }));
