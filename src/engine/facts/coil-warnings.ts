/** Where a coil's figures leave the range they can be trusted in. Lengths in metres. */
export interface CoilWarnings {
  /** Turns nearer than the bare wire is thick. */
  readonly 'coil.turns-overlap': { readonly spacing: number; readonly wire: number };
  /** Turns nearer than the covered wire is thick. */
  readonly 'coil.turns-do-not-fit': { readonly spacing: number; readonly covered: number };
  readonly 'coil.layers-do-not-fit': { readonly spacing: number; readonly covered: number };
  readonly 'coil.damp-former': Record<never, never>;
  /** Two coils so near that their turns would overlap. */
  readonly 'coil.windings-overlap': Record<never, never>;
  /** The former's dielectric loss differs from sample to sample. */
  readonly 'coil.former-loss-varies': { readonly former: string };
  /** Length over diameter, and the range of the measurements. */
  readonly 'coil.self-capacitance-range': { readonly ratio: number; readonly low: number; readonly high: number };
  readonly 'coil.core-inductance-varies': { readonly core: string };
  readonly 'coil.core-turns-resistance': Record<never, never>;
  readonly 'coil.above-third-of-self-resonance': Record<never, never>;
  readonly 'coil.measured-taps': Record<never, never>;
}
