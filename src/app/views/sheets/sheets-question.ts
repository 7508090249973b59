import type { Reception, SetDescription } from '../../../engine/index.ts';
import type { BoardLayout, PaperName, Sheet, SheetId } from '../../../outputs/sheets/index.ts';

/** What the worker that draws sheets is asked. */
export interface SheetsQuestion {
  /** The description as written, for the sheet that carries it. */
  readonly written: unknown;
  readonly set: SetDescription;
  readonly reception: Reception;
  readonly paper: PaperName;
  readonly only: readonly SheetId[];
}

export interface SheetsAnswer {
  readonly sheets: readonly Sheet[];
  /** Where sheets were asked for that need it. */
  readonly board?: BoardLayout;
}
