import type { Warning } from '../../facts/warning.ts';
import type { Circuit } from '../../network/elements.ts';
import type { Hertz, Volts } from '../../units/quantities.ts';
import type { Device } from '../transient/devices.ts';
import type { Sound } from './drive.ts';
import type { EnvelopeNetwork, EnvelopeOutput } from './network.ts';

/** A station as a carrier; what it says comes with every block. */
export interface HeardStation {
  readonly frequency: Hertz;
  /** Peak of the unmodulated carrier at the source, V. */
  readonly emf: Volts;
  /** Phase at the start, rad. Default 0. */
  readonly phase?: number;
}

export interface ListenerOptions {
  /** The detector; of a pair, both. */
  readonly device: Device;
  readonly stations: readonly HeardStation[];
  /** Where the set is tuned: the middle of the coherent window. */
  readonly pointer: Hertz;
  /** Steps a second. Default 192000. */
  readonly rate?: number;
  /** Steps to one sample of sound and of the stations' envelopes. Default 4: 48 kHz. */
  readonly decimation?: number;
  /** What is put out, at the sound's rate. */
  readonly outputs: readonly EnvelopeOutput[];
  /**
   * Stations within this of the pointer beat with one another; others only weigh on the detector. Default 0.16 of the
   * rate, 31 kHz at 192 kHz: beyond that currents running straight between steps cost more than the beats are worth.
   */
  readonly window?: Hertz;
  /** Most samples of sound in one block. Default 128. */
  readonly largestBlock?: number;
  /**
   * Allow for the carrier's harmonics on the circuit: for strong signals on circuits with a loaded Q below about 15.
   * Costs a tenth of a second when made and a third more time. Default false.
   */
  readonly harmonics?: boolean;
  /** Largest carrier across the detector the tables are made for, V. Default: what the stations could give. */
  readonly strongest?: Volts;
  /** Radio-frequency voltages written at every step into `trace`, in the frame. */
  readonly radioOutputs?: readonly EnvelopeOutput[];
}

/** A wide-band wave at the source, V, at the engine's rate: noise, or a recorded band around `frequency`. */
export interface BandWave {
  readonly frequency: Hertz;
  readonly re: Sound;
  readonly im: Sound;
}

export interface Listener {
  /** Samples of sound a second. */
  readonly soundRate: number;
  /**
   * Go on by `frames` samples of sound. Allocates nothing and depends on nothing but what it was given.
   * @param envelopes amplitude of each station's carrier as a multiple of its emf (1 + modulation), one per station.
   * @param out one buffer per output. @param quadrature imaginary parts, for fading that turns the sidebands.
   */
  process(
    frames: number,
    envelopes: readonly Sound[],
    out: readonly Sound[],
    quadrature?: readonly (Sound | undefined)[],
    wave?: BandWave,
  ): void;
  /** Take apart a circuit for `retune`; plain data that another thread may make. */
  network(circuit: Circuit, frequency: Hertz): EnvelopeNetwork;
  /** Be at this circuit and pointer by the end of the next block, every value gliding there. */
  retune(network: EnvelopeNetwork, pointer: Hertz): void;
  /**
   * Another whisker spot, a warmer cathode: takes effect at the next block, what was stored stays.
   * @param rough tables made quickly, good to a decibel: for a curve that another soon replaces.
   */
  setDevice(device: Device, rough?: boolean): void;
  /** Level and frequency of a station, from the next block on, the level gliding. */
  setStation(index: number, station: HeardStation): void;
  /** Written in by every block when `radioOutputs` were asked for: step by step, in the frame of the pointer. */
  readonly trace: readonly { readonly re: Float64Array; readonly im: Float64Array }[];
  /** The carrier's current through the detector, with `trace`. */
  readonly traceCurrent: { readonly re: Float64Array; readonly im: Float64Array };
  readonly meters: Meters;
  readonly warnings: readonly Warning[];
}

/** As at the end of the last block. */
export interface Meters {
  /** Peak carrier across the detector, V. */
  carrier: Volts;
  /** Mean current through it, A. */
  meanCurrent: number;
  /** Mean iterations a step so far. */
  iterations: number;
  /** Blocks whose numbers had to be given up. Above 0 something is wrong with what was put in. */
  lost: number;
}
