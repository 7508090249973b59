/** Where an arrangement is not what a set needs: each code with its figures, SI. */
export interface ArrangementWarnings {
  /** Trap by its place in the list; the set has no aerial lead, and leaves it out. */
  readonly 'arrangement.trap-without-lead': { readonly trap: number };
  /** The station that a trap is for lies beyond what its parts tune, Hz. */
  readonly 'arrangement.trap-beside-station': {
    readonly trap: number;
    readonly stops: number;
    readonly reach: readonly [lowest: number, highest: number];
  };
  /** A trap takes so much off a station, dB. */
  readonly 'arrangement.trap-takes': { readonly trap: number; readonly frequency: number; readonly toll: number };
  /** Two tuned circuits: the aerial's stands at an end of its scale for a station, and is not in tune. */
  readonly 'arrangement.aerial-circuit-out-of-reach': { readonly isMeshed: boolean };
  readonly 'arrangement.several-tuning-capacitors': Record<never, never>;
  readonly 'arrangement.several-detectors': Record<never, never>;
  readonly 'arrangement.no-detector': Record<never, never>;
  readonly 'arrangement.no-tuning-capacitor': Record<never, never>;
  /** A node of a list of elements, by the builder's own name for it. */
  readonly 'arrangement.loose-end': { readonly node: string };
  readonly 'arrangement.aerial-unconnected': Record<never, never>;
  readonly 'arrangement.doubler-node-unused': { readonly node: string };
  /** A coil of another band, by name: what it does while it is switched out is not calculated. */
  readonly 'arrangement.coil-switched-out': { readonly coil: string };
  readonly 'arrangement.coupling-unknown': Record<never, never>;
  readonly 'arrangement.full-wave-tap-unused': Record<never, never>;
}
