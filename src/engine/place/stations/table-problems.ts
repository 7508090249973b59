import type { Coded, NoFigures } from '../../units/coded.ts';
import type { QuantityKind } from '../../units/parse.ts';
import type { QuantityHint } from '../../units/refusal.ts';

interface Cell {
  /** The beginning of the cell. */
  readonly given: string;
}

/** What stops a cell or a row of a table of stations from being read. Figures SI. */
export interface TableProblemFacts {
  readonly 'no-frequency-column': NoFigures;
  readonly 'no-frequency': NoFigures;
  readonly 'frequency-range': { readonly min: number; readonly max: number };
  /** The column holds no numbers. */
  readonly 'no-numbers': NoFigures;
  /** A point before three digits where other numbers have decimal commas. */
  readonly 'thousand-or-fraction': Cell;
  readonly 'not-a-quantity': Cell & { readonly kind: QuantityKind; readonly hint: QuantityHint };
  readonly 'below-zero': Cell;
  readonly 'not-a-position': Cell;
  readonly 'not-a-latitude': Cell;
  readonly 'not-a-longitude': Cell;
  readonly 'half-a-position': NoFigures;
}

/** What stopped a cell or a row from being read. */
export interface TableProblem {
  /** Row of the table as written, from 1, heading counted. */
  readonly row: number;
  /** Of the column, if one cell is to blame. */
  readonly column?: { readonly index: number; readonly header: string };
  /** What it is about: problems of one kind differ only in their rows. */
  readonly kind: string;
  readonly fact: Coded<TableProblemFacts>;
  /** The whole row is left out for it. */
  readonly isLeftOut?: boolean;
}

/** Why a text is not cut into rows at all. */
export type TableTooLarge = Coded<{
  readonly 'too-many-characters': { readonly most: number };
  readonly 'too-many-rows': { readonly most: number };
}>;

/** A text too large for a table of stations. */
export class TableTooLargeError extends RangeError {
  readonly fact: TableTooLarge;
  constructor(fact: TableTooLarge) {
    super(`${fact.code}: at most ${fact.most}`);
    this.fact = fact;
  }
}
