import { type Complex, complex, scale } from '../../numerics/complex.ts';
import {
  type Decibels,
  decibels,
  type Hertz,
  type Ohms,
  powerDecibels,
  type Ratio,
  type Volts,
  type Watts,
} from '../../units/quantities.ts';
import { type AudioDetection, audioDetection, type SeenFromDetector } from './audio.ts';
import { averaged } from './averaged.ts';
import { curvature, type Detector, slopeResistance } from './detector.ts';
import { steadyDetector } from './steady.ts';

/** The set without its detector: what stands at the top of the tuned circuit, and what the detector feeds. */
export interface CompareCircuit {
  /** At the top, for the station's unmodulated carrier. */
  readonly carrier: SeenFromDetector;
  /** At the sidebands of `audioFrequency`; left out: as at the carrier (a broad circuit). */
  readonly upper?: SeenFromDetector;
  readonly lower?: SeenFromDetector;
  /** Share of the turns the detector sits on, 1 = top (default). */
  readonly tap?: number;
  readonly loadAtCarrier?: Complex;
  /** Left out: `dcResistance` at every audio frequency. */
  readonly loadAt?: (frequency: Hertz) => Complex;
  readonly dcResistance: Ohms;
  /** Default 1000 Hz. */
  readonly audioFrequency?: Hertz;
  /** Default 0.3. */
  readonly depth?: number;
}

export interface Candidate {
  readonly detector: Detector;
  readonly bias?: Volts;
}

export interface DetectorComparison {
  readonly detector: Detector;
  readonly bias: Volts;
  /** With the tap and load as they are. */
  readonly asBuilt: AudioDetection;
  /** Swing of the voltage across the device, to draw on its curve. */
  readonly swing: readonly [low: Volts, high: Volts];
  /** What the detector takes off the voltage of the tuned circuit; at least 0. */
  readonly loading: Decibels;
  /** Audio power in the load, against the loudest of those compared; at most 0. */
  readonly loudness: Decibels;
  /** Second and third harmonic together, ratio to the tone. */
  readonly distortion: Ratio;
  /** Tap that makes the audio power greatest with this load, and what it gains over the tap as it is. */
  readonly bestTap: { readonly tap: number; readonly gain: Decibels };
  /** Plain load resistance that makes the audio power greatest at this tap, and that power. */
  readonly bestLoad: { readonly resistance: Ohms; readonly audioPower: Watts; readonly gain: Decibels };
  readonly merit: DetectorMerit;
  /** Carrier across the device at which the output grows as its power 1.5: square law below, linear above. */
  readonly squareLawEnds: Volts;
}

export interface DetectorMerit {
  /** Zero-signal resistance at the bias: what the tuned circuit must be matched to when faint. */
  readonly resistance: Ohms;
  /** Bend of the curve, per volt. */
  readonly curvature: number;
  /** Output over input power squared for faint signals, matched at both ends: curvature²·resistance/16, per watt. */
  readonly figure: number;
  readonly words: string;
}

/**
 * How good a device is for faint signals. Matched at both ends, P watts of carrier give figure·P² watts of direct power:
 * i'' V²/4 flows into a short circuit, V² = 2·P·R. Source: power series of the curve, textbook.
 */
export function detectorMerit(detector: Detector, bias: Volts = 0): DetectorMerit {
  const resistance = slopeResistance(detector, bias);
  const bend = curvature(detector, bias);
  const figure = Number.isFinite(resistance) ? (bend * bend * resistance) / 16 : 0;
  const loss = figure > 0 ? -powerDecibels(figure * 1e-9) : Number.POSITIVE_INFINITY;
  const words = Number.isFinite(loss)
    ? `From a faint carrier of 1 nW, matched at both ends, it makes ${formatPower(figure * 1e-18)} of output: ${Math.round(loss)} dB is lost in detecting. It must be matched to ${formatOhms(resistance)}.`
    : 'Its curve does not bend here: it detects nothing.';
  return { resistance, curvature: bend, figure, words };
}

const PREFIXES: readonly (readonly [number, string])[] = [
  [1e-9, 'n'],
  [1e-12, 'p'],
  [1e-15, 'f'],
  [1e-18, 'a'],
];
function formatPower(watts: number): string {
  const [unit, prefix] = PREFIXES.find(([size]) => watts >= size) ?? [1e-21, 'z'];
  return `${Number((watts / unit).toPrecision(2))} ${prefix}W`;
}
const formatOhms = (ohms: number): string =>
  ohms >= 1e6 ? `${Number((ohms / 1e6).toPrecision(2))} MΩ` : `${Number((ohms / 1e3).toPrecision(2))} kΩ`;

/**
 * The carrier across the device at which square law has half turned into linear detection: the direct voltage over
 * `dcResistance` grows as the 1.5th power of the carrier. @returns peak volts; for an ideal junction some 2 to 4 n·kT/e.
 */
export function squareLawEnds(detector: Detector, dcResistance: Ohms, bias: Volts = 0): Volts {
  const device = averaged(detector);
  const output = (openCircuit: number) =>
    steadyDetector({ averaged: device, openCircuit, sourceImpedance: complex(0), dcResistance, bias }).directVoltage;
  const standing = output(0);
  const exponent = (V: number) =>
    Math.log((output(V * 1.05) - standing) / (output(V / 1.05) - standing)) / (2 * Math.log(1.05));
  // The exponent falls from 2 to 1 as the carrier grows; search where it first passes 1.5.
  let low = detector.slopeVoltage / 10;
  let high = low;
  while (high < 100 && !(exponent(high) < 1.5)) {
    low = high;
    high *= 1.5;
  }
  for (let k = 0; k < 30; k++) {
    const mid = Math.sqrt(low * high);
    if (exponent(mid) > 1.5) low = mid;
    else high = mid;
  }
  return Math.sqrt(low * high);
}

/** Largest of a function of one hump over [low, high], by golden section on a logarithmic scale. */
export function greatest(low: number, high: number, f: (x: number) => number): number {
  const ratio = (Math.sqrt(5) - 1) / 2;
  let a = Math.log(low);
  let b = Math.log(high);
  let c = b - ratio * (b - a);
  let d = a + ratio * (b - a);
  let fc = f(Math.exp(c));
  let fd = f(Math.exp(d));
  for (let k = 0; k < 22; k++) {
    if (fc > fd) {
      b = d;
      d = c;
      fd = fc;
      c = b - ratio * (b - a);
      fc = f(Math.exp(c));
    } else {
      a = c;
      c = d;
      fc = fd;
      d = a + ratio * (b - a);
      fd = f(Math.exp(d));
    }
  }
  const inside = Math.exp((a + b) / 2);
  // The hump may lean against an end.
  return [low, inside, high].reduce((best, x) => (f(x) > f(best) ? x : best), inside);
}

const LEAST_TAP = 0.02;

/**
 * The same station through several detectors, side by side, in the order given. A tap is taken as ideal: the voltage
 * goes as the turns, the impedance as their square.
 * @throws RangeError when the circuit is outside its range.
 */
export function compareDetectors(candidates: readonly Candidate[], circuit: CompareCircuit): DetectorComparison[] {
  const { carrier, upper = carrier, lower = carrier, tap = 1, dcResistance, loadAtCarrier } = circuit;
  const { audioFrequency = 1000, depth = 0.3, loadAt = () => complex(dcResistance) } = circuit;
  if (!(tap > 0 && tap <= 1)) throw new RangeError(`tap must be above 0 and at most 1, got ${tap}`);
  const tapped = (at: SeenFromDetector, t: number): SeenFromDetector => ({
    openCircuit: scale(at.openCircuit, t),
    impedance: scale(at.impedance, t * t),
  });
  const listen = (device: ReturnType<typeof averaged>, bias: number, t: number, load?: number) =>
    audioDetection({
      averaged: device,
      audioFrequency,
      depth,
      carrier: tapped(carrier, t),
      upper: tapped(upper, t),
      lower: tapped(lower, t),
      loadAtCarrier,
      loadAt: load === undefined ? loadAt : () => complex(load),
      dcResistance: load ?? dcResistance,
      bias,
    });
  const rows = candidates.map(({ detector, bias = 0 }) => {
    const device = averaged(detector);
    const asBuilt = listen(device, bias, tap);
    const open = tap * Math.hypot(carrier.openCircuit.re, carrier.openCircuit.im);
    const best = greatest(LEAST_TAP, 1, (t) => listen(device, bias, t).audioPower);
    const resistance = greatest(100, 1e7, (R) => listen(device, bias, tap, R).audioPower);
    const bestPower = listen(device, bias, tap, resistance).audioPower;
    const middle = bias - asBuilt.directVoltage;
    return {
      detector,
      bias,
      asBuilt,
      swing: [middle - asBuilt.junctionVoltage, middle + asBuilt.junctionVoltage] as const,
      loading: Math.max(0, decibels(open / asBuilt.carrierVoltage)),
      distortion: Math.hypot(asBuilt.secondHarmonic, asBuilt.thirdHarmonic),
      bestTap: { tap: best, gain: powerDecibels(listen(device, bias, best).audioPower / asBuilt.audioPower) },
      bestLoad: { resistance, audioPower: bestPower, gain: powerDecibels(bestPower / asBuilt.audioPower) },
      merit: detectorMerit(detector, bias),
      squareLawEnds: squareLawEnds(detector, dcResistance, bias),
    };
  });
  const loudest = Math.max(...rows.map((row) => row.asBuilt.audioPower));
  return rows.map((row) => ({ ...row, loudness: powerDecibels(row.asBuilt.audioPower / loudest) }));
}
