import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { PdfOptions } from '../outputs/sheets/index.ts';

/** The fonts that a PDF carries. */
export function pdfFonts(): PdfOptions['fonts'] {
  const at = createRequire(import.meta.url);
  const font = (name: string): Uint8Array => readFileSync(at.resolve(`source-sans/TTF/${name}.ttf`));
  return { regular: font('SourceSans3-Regular'), bold: font('SourceSans3-Semibold') };
}
