/** Where a result about a place leaves the range it can be trusted in: each code with its figures, SI. */
export interface PlaceWarnings {
  readonly 'place.noise-extrapolated': Record<never, never>;
  readonly 'place.sky-wave-frequency-range': Record<never, never>;
  readonly 'place.sky-wave-near': Record<never, never>;
  readonly 'place.sky-wave-far': Record<never, never>;
  /** Distance in metres. */
  readonly 'place.distance-beyond-antipode': { readonly distance: number };
  readonly 'place.near-field': Record<never, never>;
  readonly 'place.beside-transmitter': Record<never, never>;
  readonly 'place.off-air': Record<never, never>;
  /** The refusal of a model, as a programmer reads it. */
  readonly 'place.not-computed': { readonly reason: string };
  readonly 'place.fading-deep': Record<never, never>;
  readonly 'place.fading-slow': Record<never, never>;
  /** Measured over calculated, dB. */
  readonly 'place.measured-field-differs': { readonly difference: number };
  readonly 'place.no-power': Record<never, never>;
  readonly 'place.strength-unknown': Record<never, never>;
  readonly 'place.long-wave-sky-by-day': Record<never, never>;
  readonly 'place.sky-wave-position-assumed': Record<never, never>;
  readonly 'place.ground-wave-frequency-range': Record<never, never>;
  readonly 'place.within-a-wavelength': Record<never, never>;
  readonly 'place.many-coasts': Record<never, never>;
}
