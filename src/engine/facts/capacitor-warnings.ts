/** Where a result about a capacitor leaves the range it can be trusted in: each code with its figures, SI. */
export interface CapacitorWarnings {
  readonly 'capacitor.paper-damp': Record<never, never>;
  readonly 'capacitor.card-lossy': Record<never, never>;
  readonly 'capacitor.phenolic-lossy': Record<never, never>;
  readonly 'capacitor.air-film': { readonly dielectric: string; readonly film: number; readonly share: number };
  readonly 'capacitor.fringe-estimated': Record<never, never>;
  readonly 'capacitor.residual': { readonly capacitance: number };
  readonly 'capacitor.tube-ends-estimated': Record<never, never>;
  readonly 'capacitor.book-tunes-late': Record<never, never>;
  /** Scale readings in degrees. */
  readonly 'capacitor.measured-turns-back': { readonly from: number; readonly to: number };
  readonly 'capacitor.measured-repeats': Record<never, never>;
  readonly 'capacitor.measured-few': { readonly count: number };
  readonly 'capacitor.minimum-typical': { readonly capacitance: number };
  readonly 'capacitor.gap-wide': Record<never, never>;
  readonly 'capacitor.vane-narrow': { readonly width: number };
  readonly 'capacitor.lossy-dielectric': { readonly dielectric: string };
}
