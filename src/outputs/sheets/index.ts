export { type Block, PAPERS, type Page, type PaperName, type Sheet, type SheetId } from './paper/page.ts';
export { type PdfOptions, sheetsPdf } from './paper/pdf.ts';
export { pageSvg } from './paper/svg.ts';
export { SHEET_IDS, type SheetOptions, sheetsFor } from './sheets.ts';
