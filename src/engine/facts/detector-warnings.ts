/** Where a result about a detector leaves the range it can be trusted in: each code with its figures, SI. */
export interface DetectorWarnings {
  readonly 'detector.whisker-loose': Record<never, never>;
  readonly 'detector.whisker-crushing': Record<never, never>;
  /** K, and the saturation current, A. */
  readonly 'detector.cathode-cold': { readonly temperature: number; readonly emission: number };
  readonly 'detector.cathode-hot': { readonly temperature: number };
  readonly 'detector.measured-without-zero': Record<never, never>;
  /** Fewer points than a law of junction, resistance and leakage has figures. */
  readonly 'detector.measured-few': { readonly count: number };
  /** Neighbouring points were averaged where the current fell as the voltage rose. */
  readonly 'detector.measured-averaged': Record<never, never>;
  readonly 'detector.measured-no-current': Record<never, never>;
  /** Highest voltage measured. */
  readonly 'detector.measured-range-short': { readonly highest: number };
  readonly 'detector.measured-no-junction': Record<never, never>;
  /** Peak reverse voltage, and the rating. */
  readonly 'detector.reverse-voltage': { readonly reverse: number; readonly limit: number };
  /** Peak carrier, and the gap between the measured points about 0 V. */
  readonly 'detector.measured-points-apart': { readonly carrier: number; readonly gap: number };
  /** Voltages it works between, and those measured. */
  readonly 'detector.outside-measured-range': {
    readonly from: number;
    readonly to: number;
    readonly lowest: number;
    readonly highest: number;
  };
  readonly 'detector.audio-unsolved': Record<never, never>;
  readonly 'detector.negative-peak-clipping': Record<never, never>;
  readonly 'detector.loaded-q-low': { readonly loadedQ: number };
  /** K. */
  readonly 'detector.saturation-current-extrapolated': { readonly measuredAt: number; readonly temperature: number };
  readonly 'detector.harmonics-unsolved': Record<never, never>;
}
