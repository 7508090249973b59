import type { Reception, SetDescription } from '../../../engine/index.ts';
import type { BoardLayout, PaperName, Sheet } from '../../../outputs/sheets/index.ts';

/** What the worker that draws sheets is asked. */
export interface SheetsQuestion {
  /** The description as written, for the sheet that carries it. */
  readonly written: unknown;
  readonly set: SetDescription;
  readonly reception: Reception;
  readonly paper: PaperName;
}

export interface SheetsAnswer {
  readonly sheets: readonly Sheet[];
  readonly board: BoardLayout;
}
