/** Where waveforms are not those of the set as described: each code with its figures, SI. */
export interface WavesWarnings {
  readonly 'waves.distant-stations-left-out': { readonly counted: number };
  readonly 'waves.unequal-carriers': Record<never, never>;
  /** Relative error of the network that stands for a part, at a frequency in Hz. */
  readonly 'waves.impedance-misfit': { readonly part: string; readonly misfit: number; readonly frequency: number };
  readonly 'waves.detector-stray': { readonly capacitance: number };
  readonly 'waves.coupling-reduced': Record<never, never>;
  readonly 'waves.recording-alone': Record<never, never>;
  readonly 'waves.over-modulation': Record<never, never>;
  /** After so many seconds. */
  readonly 'waves.not-settled': { readonly time: number };
}
