export { type Block, PAPERS, type Page, type PaperName, type Sheet, type SheetId } from './page.ts';
export { type PdfOptions, sheetsPdf } from './pdf.ts';
export { SHEET_IDS, SHEET_WORDS, type SheetOptions, sheetsFor } from './sheets.ts';
export { pageSvg } from './svg.ts';
