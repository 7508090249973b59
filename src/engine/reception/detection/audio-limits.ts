import { type ByKind, byKind } from '../../kinds/by-kind.ts';
import type { LoadDescription } from '../../kinds/loads/load-schema.ts';
import { magnitude } from '../../numerics/complex.ts';
import { boundary, firstWhole } from '../../numerics/roots.ts';
import type { Farads, Hertz, Ohms, Ratio } from '../../units/quantities.ts';
import { type Receiver, TEST_TONE, type TunedStation, toneSource, toneThrough } from '../path/receive-station.ts';

/** What comes out of the detector undistorted and unmuffled, and what does not. */
export interface AudioLimits {
  /** Notes above it are more than 3 dB down by the treble loss of the tuned circuit; undefined above 20 kHz. */
  readonly throughTunedCircuit?: Hertz;
  /** Half the bandwidth of the tuned circuit for steady signals: where its treble loss begins if the detector damps all notes alike. */
  readonly halfBandwidth: Hertz;
  /** The same because of what stands across the load; undefined where nothing up to 20 kHz is. */
  readonly throughLoad?: Hertz;
  readonly directLoad: Ohms;
  /** Size of the load at 1 kHz. */
  readonly audioLoad: Ohms;
  /** Deeper modulation is cut off in its troughs, in this set on this station; undefined where no depth up to 100 % is. */
  readonly clipsFrom?: Ratio;
  /** Harmonics over the tone at the station's own depth, in this set. */
  readonly distortion: Ratio;
  /** A tone of the station's own depth above this falls faster than the load capacitor can discharge; undefined above 20 kHz. */
  readonly followsTo?: Hertz;
  /** Of the station's loud passages, at which `followsTo` holds. */
  readonly depth: Ratio;
  /** Of the load with what stands across it. */
  readonly loadCapacitance: Farads;
}

const HIGHEST: Hertz = 20e3;
const LOW_NOTE: Hertz = 300;
/** What a station's loudest moments come to; common practice, no source. */
const DEEP: Ratio = 0.9;
const STEPS = 48;
/** Output grows with the field to more than this power: the detector never shuts. */
const SQUARE_LAW = 1.5;

/** What a load itself has across its terminals, without the load capacitor, F. */
const OWN_CAPACITANCE: ByKind<LoadDescription, Farads> = {
  phones: () => 0,
  'crystal earpiece': ({ capacitance }) => capacitance,
  'moving-coil phones': () => 0,
  amplifier: ({ inputCapacitance }) => inputCapacitance,
};

/**
 * Limits of the programme behind the detector of a tuned set. The tuned circuit: where the depth left on it,
 * detector and load on it, has fallen by 3 dB (half the bandwidth f/2Q only while the detector damps all notes alike). The load:
 * where its share of the detector's output has fallen by 3 dB. Clipping: by the harmonic balance of the audio cycle at
 * growing depth. Following: 2πf·RC ≤ √(1 − m²)/m, R∥C what the capacitor discharges through (textbook condition).
 * @param set ready to receive
 * @param s the station, tuned in
 * @returns frequencies (Hz), resistances (Ω) and a depth (0 to 1), with sentences
 */
export function audioLimits(set: Receiver, s: TunedStation): AudioLimits {
  const throughTunedCircuit = trimmedFrom(set, s);
  const source = s.work.outputResistance;
  const share = (f: Hertz): number => {
    const Z = set.audioLoadAt(f);
    return magnitude(Z) / Math.hypot(source + Z.re, Z.im);
  };
  const reference = share(TEST_TONE);
  let throughLoad: Hertz | undefined;
  for (let k = 1; k <= STEPS && throughLoad === undefined; k++) {
    const f = TEST_TONE * (HIGHEST / TEST_TONE) ** (k / STEPS);
    if (share(f) < reference * Math.SQRT1_2) throughLoad = f;
  }
  const directLoad = set.dcResistance;
  const Z = set.audioLoadAt(TEST_TONE);
  const audioLoad = magnitude(Z);
  const clipsFrom = clippingDepth(set, s);
  const depth = Math.min(Math.max(s.station.modulation, 0.05), DEEP);
  const { load } = set.circuit.set;
  const capacitance = load.bypass + byKind(OWN_CAPACITANCE, load);
  const conductance = Math.max(1 / Math.max(directLoad, 1e-3), Z.re / (Z.re * Z.re + Z.im * Z.im));
  // While a faint signal never shuts the detector, the capacitor empties through it too.
  const R = 1 / (conductance + (s.work.fieldExponent > SQUARE_LAW ? 1 / source : 0));
  const reach = capacitance > 0 ? Math.sqrt(1 - depth * depth) / (depth * 2 * Math.PI * R * capacitance) : Infinity;
  const followsTo = reach < HIGHEST ? reach : undefined;
  return {
    throughTunedCircuit,
    halfBandwidth: s.station.frequency / (2 * s.loadedQ),
    throughLoad,
    directLoad,
    audioLoad,
    clipsFrom,
    distortion: s.distortion,
    followsTo,
    depth,
    loadCapacitance: capacitance,
  };
}

/** The note whose depth of modulation on the tuned circuit is 3 dB under that of low ones. */
function trimmedFrom(set: Receiver, s: TunedStation): Hertz | undefined {
  const depthAt = (f: Hertz): number =>
    toneThrough(set, toneSource(set, s, f), { tone: f, depth: 0.2, steady: s.steady }).depthLeft;
  const threshold = depthAt(LOW_NOTE) * Math.SQRT1_2;
  let low = LOW_NOTE;
  for (let f = 600; f < HIGHEST * 1.2; f *= 1.3) {
    const high = Math.min(f, HIGHEST);
    if (depthAt(high) < threshold) {
      const [through, trimmed] = boundary((note) => depthAt(note) >= threshold, low, high, (high - low) / 16);
      return (through + trimmed) / 2;
    }
    low = high;
  }
  return undefined;
}

/** The least depth, in steps of 5 %, at which the detector is cut off in the troughs of the tone. */
function clippingDepth(set: Receiver, s: TunedStation): Ratio | undefined {
  const source = toneSource(set, s);
  const at = (depth: Ratio): boolean => toneThrough(set, source, { tone: TEST_TONE, depth, steady: s.steady }).clipped;
  if (!at(1)) return undefined;
  return firstWhole((n) => at(n / 20), 0, 20) / 20;
}
