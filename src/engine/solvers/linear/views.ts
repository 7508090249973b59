import { type Complex, hypotenuse, magnitude } from '../../numerics/complex.ts';
import type { Farads, Hertz, Ratio } from '../../units/quantities.ts';
import type { PortRows } from './port-rows.ts';
import type { PortView } from './solve.ts';

/** What the detector sees of the set at one frequency and pointer position; peak volts. */
export interface CarrierView {
  /** Carrier at the detector's terminals with the detector taken out. */
  readonly open: Complex;
  /** Impedance there. */
  readonly z: Complex;
  /** Voltage across the tuned circuit with the detector out, and what a current into the detector's port adds there. */
  readonly tunedOpen: Complex;
  readonly tunedByDetector: Complex;
}

/** Capacitances of a tuning capacitor, F, and its loss tangent at each. */
export interface Capacitances {
  readonly capacitances: Float64Array;
  readonly lossTangents: Float64Array;
}

/** The set at one frequency, any pointer position: solved once, then closed form. */
export interface FrequencyView {
  readonly frequency: Hertz;
  at(position: Ratio, other?: Ratio): CarrierView;
  /** Voltage left at the detector when it loads the set with a conductance, of the circuit's own unit emf. */
  level(conductance: number, position: Ratio, other: Ratio): number;
  /**
   * The same at many tuning capacitances into as many places of `into`, one every `stride` from `at` on.
   * @returns whether they were found: not where a coil or a gang tunes.
   */
  levelsWith(
    conductance: number,
    other: Ratio,
    tunings: Capacitances,
    into: Float64Array,
    at: number,
    stride: number,
  ): boolean;
  /** Pointer position (and that of a separate aerial tuning) where the detector gets most, and whether it lies within the scale. */
  peak(detectorConductance: number): Peak;
}

export interface Peak {
  readonly position: Ratio;
  readonly other: Ratio;
  /** False when the peak lies beyond the end of the scale, at which `position` then is. */
  readonly within: boolean;
  /** Of a separate aerial tuning: false when its peak lies beyond its scale. */
  readonly otherWithin?: boolean;
  /** What the tuning capacitance would have to be. */
  readonly capacitance?: Farads;
}

export interface TunedNetwork {
  at(frequency: Hertz): FrequencyView;
  /**
   * Levels at frequencies about one whose neighbours `apart` to both sides are solved: by parabolas, and so wrong where a
   * wave trap or the aerial resonates close by. Undefined where a coil does the tuning.
   */
  about?(frequency: Hertz, apart: Hertz): (at: Hertz, conductance: number, position: Ratio, other: Ratio) => number;
}

/** The detector's port first, the tuned circuit's second. */
export const asCarrier = (view: PortView): CarrierView => ({
  open: view.open[0],
  z: view.z[0][0],
  tunedOpen: view.open[1],
  tunedByDetector: view.z[1][0],
});

/** What the detector sees; its port first of two, the tuned circuit's second. */
export const carrierFrom = (rows: PortRows): CarrierView => ({
  open: { re: rows[0], im: rows[1] },
  z: { re: rows[2], im: rows[3] },
  tunedOpen: { re: rows[6], im: rows[7] },
  tunedByDetector: { re: rows[8], im: rows[9] },
});

/**
 * Voltage left at the detector when it loads the set with a conductance.
 * @param options open voltage (V) and source impedance (Ω) at the detector
 * @param conductance of the load, S
 * @returns V
 */
export const loaded = ({ open, z }: CarrierView, conductance: number): number =>
  magnitude(open) / hypotenuse(1 + conductance * z.re, conductance * z.im);
