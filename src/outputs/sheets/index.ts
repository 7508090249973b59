export type { BoardLayout } from './board/layout.ts';
export { comparisonSheet } from './pages/comparison-sheet.ts';
export { faultSheet } from './pages/fault-sheet.ts';
export { PAPERS, type Page, type PaperName, type Sheet } from './paper/page.ts';
export { type PdfOptions, sheetsPdf } from './paper/pdf.ts';
export { SHEET_IDS, SHEET_JOBS, type SheetId, type SheetJob } from './paper/sheet-ids.ts';
export { pageSvg, sheetSvg } from './paper/svg.ts';
export { builtBoard, type SheetOptions, sheetsFor } from './sheets.ts';
export { setView, standpointFor } from './view/whole-set.ts';
