/** Where a result about an aerial leaves the range it can be trusted in: each code with its figures, SI. */
export interface AerialWarnings {
  readonly 'aerial.rod-short': Record<never, never>;
  readonly 'aerial.rod-coil-loose': Record<never, never>;
  readonly 'aerial.rod-loss-typical': Record<never, never>;
  readonly 'aerial.frame-deep': Record<never, never>;
  readonly 'aerial.frame-wire-long': Record<never, never>;
  readonly 'aerial.outside-measured-range': Record<never, never>;
  readonly 'aerial.touchstone-version': { readonly version: string };
  readonly 'aerial.touchstone-no-option-line': Record<never, never>;
  readonly 'aerial.touchstone-open-points': { readonly count: number };
  readonly 'aerial.measured-negative-resistance': Record<never, never>;
  readonly 'aerial.half-wave': Record<never, never>;
  readonly 'aerial.wire-near-ground': Record<never, never>;
  readonly 'aerial.wire-thick': Record<never, never>;
  readonly 'aerial.low': Record<never, never>;
}
