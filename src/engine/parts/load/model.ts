import type { CautionCode } from '../../facts/cautions.ts';
import type { Warning } from '../../facts/warning.ts';
import type { Element } from '../../network/elements.ts';
import type { Port } from '../../network/port.ts';
import { type Complex, magnitude, reciprocal } from '../../numerics/complex.ts';
import type { Decibels, Hertz, Ohms, Volts, Watts } from '../../units/quantities.ts';

/** A load as elements between two nodes of a circuit, and where its sound comes from. */
export interface LoadNetwork {
  readonly elements: readonly Element[];
  /** The voltage that makes the sound: of `from` over `to`. */
  readonly output: Port;
}

/** What makes the sound. */
export interface LoadSort {
  readonly kind:
    | 'magnetic phones'
    | 'balanced-armature phones'
    | 'crystal earpiece'
    | 'moving-coil phones'
    | 'amplifier';
  /** Fed through a transformer. */
  readonly transformer?: boolean;
}

/** Anything the detector's output is heard in, as the rest of the engine sees it. */
export interface Load {
  readonly sort: LoadSort;
  /** Elements between two nodes; its inner nodes begin with "load ". */
  elements(from: string, to: string): LoadNetwork;
  /** What a direct current from `from` to `to` meets; infinite when nothing lets it through. */
  readonly directResistance: Ohms;
  /** At its terminals. */
  impedanceAt(frequency: Hertz): Complex;
  /** Voltage across the transducer over the voltage at the terminals. */
  transferAt(frequency: Hertz): Complex;
  /** Impedance of the transducer alone. */
  transducerImpedanceAt(frequency: Hertz): Complex;
  /** Power the transducer takes at this rms voltage across it. */
  powerAt(frequency: Hertz, volts: Volts): Watts;
  /** dB SPL (re 20 µPa) of a tone with this rms voltage across the transducer; −∞ for none. */
  soundPressureAt(frequency: Hertz, volts: Volts): Decibels;
  /** How it was rated: dB SPL for one milliwatt, or for so many volts, at 1 kHz. */
  readonly sensitivity: { readonly level: Decibels; readonly per: 'mW' | 'V' | '10 mV'; readonly assumed: boolean };
  /** ± on the sound level from what is not known of it. */
  readonly spread: Decibels;
  /** Worn on the ears, or heard across the room. */
  readonly listening: 'phones' | 'loudspeaker';
  readonly ears: 1 | 2;
  readonly warnings: readonly Warning[];
  /** Cautions about safety, to be shown wherever this load is. */
  readonly cautions: readonly CautionCode[];
}

/** A load before `powerAt` and other things that follow are worked out. */
export type Transducer = Omit<Load, 'powerAt' | 'transferAt' | 'transducerImpedanceAt'> &
  Partial<Pick<Load, 'transferAt' | 'transducerImpedanceAt'>>;

export function loadOf(parts: Transducer): Load {
  const transducerImpedanceAt = parts.transducerImpedanceAt ?? parts.impedanceAt;
  return {
    ...parts,
    transferAt: parts.transferAt ?? (() => ({ re: 1, im: 0 })),
    transducerImpedanceAt,
    powerAt: (f, V) => V * V * reciprocal(transducerImpedanceAt(f)).re,
  };
}

/**
 * Mean of |Z| over a band, by frequency: what "about six times the direct resistance" is said of.
 * @param band default 300 to 3300 Hz.
 */
export function meanImpedance(
  impedanceAt: (frequency: Hertz) => Complex,
  band: readonly [Hertz, Hertz] = [300, 3300],
): Ohms {
  const n = 61;
  let sum = 0;
  for (let i = 0; i < n; i++) sum += magnitude(impedanceAt(band[0] + ((band[1] - band[0]) * (i + 0.5)) / n));
  return sum / n;
}
