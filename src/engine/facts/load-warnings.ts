/** Where a result about a load leaves the range it can be trusted in: each code with its figures, SI. */
export interface LoadWarnings {
  readonly 'load.coupling-capacitor-blocks-direct-current': Record<never, never>;
  readonly 'load.mains-hum': Record<never, never>;
  readonly 'load.earpiece-without-resistor': Record<never, never>;
  readonly 'load.earpiece-resistor-small': Record<never, never>;
  readonly 'load.earpiece-resistor-large': Record<never, never>;
  /** dB SPL at 1 V, and ± dB. */
  readonly 'load.earpiece-sensitivity-typical': { readonly level: number; readonly spread: number };
  readonly 'load.moving-coil-without-transformer': { readonly impedance: number };
  /** dB SPL at 1 mW, and ± dB. */
  readonly 'load.phones-sensitivity-typical': { readonly level: number; readonly spread: number };
  readonly 'load.phones-low-resistance': { readonly resistance: number };
  readonly 'load.transformer-primary-small': Record<never, never>;
}
