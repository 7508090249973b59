/** Where a reception is at a limit: each code with its figures, SI. */
export interface ReceptionWarnings {
  readonly 'reception.near-noise': Record<never, never>;
  readonly 'reception.pointer-at-end': Record<never, never>;
  readonly 'reception.harmful-level': Record<never, never>;
  /** Where the dial is broadest, Hz. */
  readonly 'reception.dial-broad': { readonly frequency: number; readonly bandwidth: number };
  /** Between these, Hz, a place of the scale is that of several frequencies. */
  readonly 'reception.dial-runs-back': { readonly lowest: number; readonly highest: number };
}
