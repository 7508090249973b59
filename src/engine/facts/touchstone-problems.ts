import type { Coded, NoFigures } from '../units/coded.ts';

interface Given {
  /** The start of what stands there, without control characters. */
  readonly given: string;
}
interface Keyword {
  readonly keyword: string;
}

/** Why a Touchstone file cannot be read. */
export interface TouchstoneProblemFacts {
  readonly 'version-2-keyword': Keyword;
  readonly 'version-first': NoFigures;
  readonly version: Given;
  readonly 'one-port': Given;
  readonly 'frequency-count': Given;
  readonly 'keyword-missing-before-data': Keyword;
  readonly 'not-of-one-port': Keyword;
  readonly 'keyword-not-known': Keyword;
  readonly 'keyword-before-data': Given;
  readonly 'option-line-before-data': NoFigures;
  readonly 'option-line-before-reference': NoFigures;
  readonly 'information-not-ended': NoFigures;
  readonly 'keyword-missing': Keyword;
  readonly 'cut-short': NoFigures;
  readonly 'frequencies-counted': { readonly announced: number; readonly counted: number };
  readonly 'no-data': NoFigures;
  readonly 'reference-resistance': Given;
  readonly 'two-port-parameter': { readonly parameter: string };
  readonly 'option-resistance': Given;
  readonly 'option-not-known': Given;
  readonly numbers: Given;
  readonly 'decimal-comma': Given;
  readonly binary: NoFigures;
  readonly ports: Given;
  readonly 'nine-numbers': { readonly counted: number; readonly least: number };
  readonly 'three-or-nine-numbers': { readonly counted: number };
  readonly 'parameter-not-read': { readonly parameter: string };
  readonly 'references-differ': NoFigures;
  readonly 'no-scattering': NoFigures;
  readonly 'three-numbers': { readonly counted: number };
  readonly 'negative-frequency': { readonly value: number };
  readonly 'frequency-not-rising': { readonly value: number };
  /** Of a table with commas: no headings say clearly what its columns are. */
  readonly 'table-columns': NoFigures;
  readonly more: { readonly count: number };
}

/** @param line counted from 1. */
export type TouchstoneProblem = Coded<TouchstoneProblemFacts> & { readonly line: number };
