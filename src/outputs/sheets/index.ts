export { PAPERS, type Page, type PaperName, type Sheet } from './paper/page.ts';
export { type PdfOptions, sheetsPdf } from './paper/pdf.ts';
export { SHEET_IDS, type SheetId } from './paper/sheet-ids.ts';
export { pageSvg } from './paper/svg.ts';
export { type SheetOptions, sheetsFor } from './sheets.ts';
