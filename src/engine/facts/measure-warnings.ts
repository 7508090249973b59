/** What readings of a bench measurement cannot show: each code with its figures, SI. */
export interface MeasureWarnings {
  /** Index from 0, the frequency given, and the range of what its position belongs to (infinite: none). */
  readonly 'measure.reading-misread': {
    readonly index: number;
    readonly frequency: number;
    readonly there: number;
    readonly from: number;
    readonly to: number;
  };
  /** Readings given, and how many it takes. */
  readonly 'measure.too-few-to-suspect': { readonly given: number; readonly least: number };
  readonly 'measure.series-resistance-unseen': Record<never, never>;
}
