import type { PdfOptions } from '../outputs/sheets/index.ts';
import { typefaceFiles } from './typeface.ts';

/** The fonts that a PDF carries. */
export function pdfFonts(): PdfOptions['fonts'] {
  const { regular, bold } = typefaceFiles();
  return { regular, bold };
}
