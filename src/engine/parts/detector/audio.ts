import { demandWithin } from '../../facts/impossible-values.ts';
import { type Warning, warning } from '../../facts/warning.ts';
import {
  add,
  type Complex,
  complex,
  divide,
  magnitude,
  multiply,
  reciprocal,
  scale,
  subtract,
} from '../../numerics/complex.ts';
import type { Amperes, Hertz, Ohms, Radians, Ratio, Volts, Watts } from '../../units/quantities.ts';
import { balance } from './audio-balance.ts';
import { type AveragedDetector, averagedCurrents } from './averaged.ts';
import type { Balance, BalanceState } from './balance-work.ts';
import { standingPoint } from './standing.ts';
import { type SteadyDetection, steadyDetector } from './steady.ts';

/** The receiver at one frequency, seen from where the device goes, the device taken out. */
export interface DetectorSource {
  /** Phasor of the voltage there for the station's unmodulated carrier amplitude at this frequency; peak volts. */
  readonly openCircuit: Complex;
  readonly impedance: Complex;
}

export interface AudioDetectionOptions {
  readonly averaged: AveragedDetector;
  /** Of the tone; above 0. */
  readonly audioFrequency: Hertz;
  /** 0 to 1 (up to 2 is solved, for fading carriers). */
  readonly depth: number;
  readonly carrier: DetectorSource;
  /** At the carrier's frequency plus and minus the tone's. */
  readonly upper: DetectorSource;
  readonly lower: DetectorSource;
  /** Impedance of the load at the carrier's frequency (its bypass capacitor), not contained in the above. Default 0. */
  readonly loadAtCarrier?: Complex;
  /** Load at audio frequencies, its capacitor included. Real part at least 0. */
  readonly loadAt: (frequency: Hertz) => Complex;
  readonly dcResistance: Ohms;
  readonly bias?: Volts;
  /** Of the carrier alone, where it is known already: saves a second solution. */
  readonly steady?: SteadyDetection;
  /** Share of the first that the next harmonic of the tone may have and still be left out; default 1 %. */
  readonly leaveOut?: Ratio;
  /** Of the carrier; with it the loaded Q is given, and a warning where it is too low for these figures. */
  readonly carrierFrequency?: Hertz;
}

export interface AudioDetection {
  readonly directVoltage: Volts;
  readonly directCurrent: Amperes;
  /** Peak volts of the tone across the load. */
  readonly audioVoltage: Volts;
  /** Against the modulation at the aerial. */
  readonly audioPhase: Radians;
  /** Peak amperes of the tone through the load. */
  readonly audioCurrent: Amperes;
  /** Into the load's resistance at the tone. */
  readonly audioPower: Watts;
  /** Ratios to the tone's voltage. */
  readonly secondHarmonic: number;
  readonly thirdHarmonic: number;
  /** Peak volts of the carrier across the device, and on the circuit it hangs on. */
  readonly junctionVoltage: Volts;
  readonly carrierVoltage: Volts;
  /** Depth of modulation left on that circuit: less than sent where the tuned circuit trims the sidebands. */
  readonly depthLeft: number;
  /** Offered to the circuit, over the whole audio cycle. */
  readonly inputResistance: Ohms;
  /** Of the circuit with the detector on it, from how its admittance changes between the sidebands. */
  readonly loadedQ?: number;
  /** The detector is cut off in the troughs: its load for audio is too far below its direct one for this depth. */
  readonly clipped: boolean;
  /** Whether the balance was struck. Where it was not, every figure here is NaN, and a warning says so. */
  readonly settled: boolean;
  readonly iterations: number;
  readonly warnings: readonly Warning[];
}

/** Harmonics of the tone tried in turn, until the next one no longer matters. */
const LEVELS = [2, 3, 6, 10];
const ENOUGH = 0.01;

/**
 * One station's tone through a detector: harmonic balance of the audio cycle between the averaged device, the loaded
 * tuned circuit on both sides of the carrier, and the audio load. Holds while the cycle of the tone is long against the
 * carrier's; leaves out the carrier's own harmonics (see `carrierWaveform`): within 0.02 dB for faint stations, 0.2 dB
 * and 0.25 percentage points of second harmonic for strong ones on circuits loaded to a Q of 8 and more.
 * @throws RangeError when an input is outside its range.
 */
export function audioDetection(options: AudioDetectionOptions): AudioDetection {
  const { averaged, audioFrequency, depth, carrier, upper, lower, dcResistance, bias = 0 } = options;
  const { loadAtCarrier = complex(0), loadAt } = options;
  demandWithin('detector.audio-frequency', audioFrequency, { above: 0 });
  demandWithin('detector.depth', depth, { min: 0, max: 2 });

  const sourceAt = sourceImpedances(carrier.impedance, upper.impedance, lower.impedance, loadAtCarrier);
  const steady =
    options.steady ??
    steadyDetector({
      averaged,
      openCircuit: magnitude(carrier.openCircuit),
      sourceImpedance: sourceAt(0),
      dcResistance,
      bias,
    });
  const problem = (K: number, m: number): Balance => {
    const emf: Complex[] = [];
    const source: Complex[] = [];
    for (let k = -K; k <= K; k++) {
      emf.push(openAt(options, k, m));
      source.push(sourceAt(k));
    }
    const load = [complex(dcResistance)];
    for (let k = 1; k <= K; k++) load.push(loadAt(k * audioFrequency));
    return { averaged, K, emf, source, load, bias };
  };

  let state: BalanceState | undefined;
  let iterations = 0;
  const { leaveOut = ENOUGH } = options;
  for (const K of LEVELS) {
    // Two harmonics are only worth trying where a few per cent may be left out.
    if (K === 2 && leaveOut < 0.03) continue;
    const full = problem(K, depth);
    let next = balance(full, state ?? firstGuess(full, steady));
    iterations += next.iterations;
    if (!next.converged) {
      next = bySoftening(full, steady);
      iterations += next.iterations;
    }
    // Rarely: walk up to the depth in steps.
    if (!next.converged) {
      next = byDepth(K, problem, depth, steady);
      iterations += next.iterations;
    }
    state = next;
    if (state.leftOut < leaveOut || !state.converged) break;
  }
  if (!state!.converged) return unsettled(iterations, steady.warnings);
  return report(options, state!, steady.warnings, sourceAt, iterations, loadAtCarrier);
}

/** What stands open at k audio frequencies from the carrier, modulated to a depth. */
function openAt(
  { carrier, upper, lower }: Pick<AudioDetectionOptions, 'carrier' | 'upper' | 'lower'>,
  k: number,
  depth: Ratio,
): Complex {
  if (k === 0) return carrier.openCircuit;
  return Math.abs(k) === 1 ? scale((k > 0 ? upper : lower).openCircuit, depth / 2) : complex(0);
}

/**
 * Impedance at k audio frequencies from the carrier: the circuit's admittance is a parabola through the three known
 * ones (exact for one tuned circuit, whose admittance is nearly straight), the load's share added in series.
 */
function sourceImpedances(at: Complex, above: Complex, below: Complex, load: Complex): (k: number) => Complex {
  if (!(magnitude(at) > 1e-6 && magnitude(above) > 1e-6 && magnitude(below) > 1e-6)) return () => add(at, load);
  const y = reciprocal(at);
  const up = reciprocal(above);
  const down = reciprocal(below);
  const slope = scale(subtract(up, down), 0.5);
  const bend = scale(subtract(add(up, down), scale(y, 2)), 0.5);
  return (k) => {
    if (k === 0) return add(at, load);
    if (k === 1) return add(above, load);
    if (k === -1) return add(below, load);
    const guess = add(y, add(scale(slope, k), scale(bend, k * k)));
    // A parabola run on too far must not turn the circuit into a generator.
    return add(reciprocal(complex(Math.max(guess.re, Math.min(y.re, up.re, down.re)), guess.im)), load);
  };
}

/** Resistance first put in series with a device, over what the carrier meets; each next one over the last, at first. */
const SOFTEST = 0.3;
const HARDER = 1 / 8;
/** Over the last at which no more is tried, and over what the carrier meets at which the device is as good as bare. */
const LEAST_HARDER = 0.85;
const SOFT_END = 1e-5;
/** Newton's steps for one resistance. */
const MOST_STEPS = 14;

/**
 * A bare junction under a strong signal is a switch, and no slope tells where the next instant stands. Resistance in
 * series makes it a soft one whose balance is soon struck, and that of the next smaller resistance is near.
 */
function bySoftening(full: Balance, steady: SteadyDetection): BalanceState {
  const { averaged, source, K } = full;
  const { withResistance } = averaged;
  let state: Pick<BalanceState, 'carrier' | 'direct'> = firstGuess(full, steady);
  let iterations = 0;
  const strike = (device: AveragedDetector): BalanceState => {
    const result = balance({ ...full, averaged: device }, state, MOST_STEPS);
    iterations += result.iterations;
    if (result.converged) state = result;
    return result;
  };
  if (withResistance) {
    let share = SOFTEST;
    let harder = HARDER;
    strike(withResistance(share * magnitude(source[K])));
    while (share > SOFT_END && harder < LEAST_HARDER) {
      if (strike(withResistance(harder * share * magnitude(source[K]))).converged) share *= harder;
      else harder = Math.sqrt(harder);
    }
  }
  return { ...strike(averaged), iterations };
}

/** Bound the work of following one tone, where the averages have a closed form and where each is a sum over the cycle. */
const MOST_ITERATIONS = 4000;
const MOST_SUMMED = 1000;
/** Least step of its depth over the whole. */
const LEAST_STEP = 1e-7;

/**
 * Follows the tone from no modulation, where the steady carrier is the answer, up to its depth, in steps as long as
 * Newton converges. Networks that take power and a current that rises with the voltage leave one answer at every depth, and
 * none of them far from the next.
 */
function byDepth(
  K: number,
  problem: (K: number, m: number) => Balance,
  depth: Ratio,
  steady: SteadyDetection,
): BalanceState {
  let before = 0;
  let at = 0;
  let last: BalanceState | undefined;
  let state: BalanceState | undefined;
  let step = depth / 4;
  let iterations = 0;
  const most = problem(K, 0).averaged.detector.law ? MOST_ITERATIONS : MOST_SUMMED;
  for (;;) {
    const to = Math.min(depth, at + step);
    const next = problem(K, to);
    const guess = state
      ? last
        ? extrapolated(last, state, (to - at) / (at - before))
        : state
      : firstGuess(next, steady);
    const result = balance(next, guess, 12);
    iterations += result.iterations;
    if (result.converged && to === depth) return { ...result, iterations };
    if (result.converged) {
      [last, state] = [state, result];
      [before, at] = [at, to];
      step *= 1.5;
    } else step /= 2;
    if (iterations > most || step < LEAST_STEP * depth) return { ...result, converged: false, iterations };
  }
}

/** The straight line through two answers, run on. */
function extrapolated(last: BalanceState, now: BalanceState, share: number): Pick<BalanceState, 'carrier' | 'direct'> {
  const on = (a: readonly Complex[], b: readonly Complex[]) =>
    b.map((z, k) => complex(z.re + share * (z.re - a[k].re), z.im + share * (z.im - a[k].im)));
  return { carrier: on(last.carrier, now.carrier), direct: on(last.direct, now.direct) };
}

function firstGuess(b: Balance, steady: SteadyDetection): Pick<BalanceState, 'carrier' | 'direct'> {
  const { averaged, K, emf, source, load } = b;
  const out = averagedCurrents();
  const V = steady.junctionVoltage;
  averaged.at(V, steady.deviceVoltage, out);
  const g = V > 0 ? out.fundamental / V : out.meanByDirect;
  const carrier = emf.map((e, i) => divide(e, add(complex(1), scale(source[i], g))));
  // The envelope's first harmonic moves the direct voltage along the load.
  const size = magnitude(carrier[K]);
  const turn = size > 0 ? scale(carrier[K], 1 / size) : complex(1);
  const conj = (z: Complex) => complex(z.re, -z.im);
  const envelope = add(multiply(conj(turn), carrier[K + 1]), multiply(turn, conj(carrier[K - 1])));
  const moved = divide(
    scale(multiply(load[1], envelope), -0.5 * out.meanByAmplitude),
    add(complex(1), scale(load[1], out.meanByDirect)),
  );
  return { carrier, direct: [complex(steady.deviceVoltage), moved] };
}

/** No figure is better than one that nothing vouches for. */
const unsettled = (iterations: number, warnings: readonly Warning[]): AudioDetection => ({
  directVoltage: Number.NaN,
  directCurrent: Number.NaN,
  audioVoltage: Number.NaN,
  audioPhase: Number.NaN,
  audioCurrent: Number.NaN,
  audioPower: Number.NaN,
  secondHarmonic: Number.NaN,
  thirdHarmonic: Number.NaN,
  junctionVoltage: Number.NaN,
  carrierVoltage: Number.NaN,
  depthLeft: Number.NaN,
  inputResistance: Number.NaN,
  clipped: false,
  settled: false,
  iterations,
  warnings: [...warnings, warning('detector.audio-unsolved')],
});

function report(
  options: AudioDetectionOptions,
  state: BalanceState,
  warnings: readonly Warning[],
  sourceAt: (k: number) => Complex,
  iterations: number,
  loadAtCarrier: Complex,
): AudioDetection {
  const { averaged, dcResistance, bias = 0, loadAt, audioFrequency, depth } = options;
  const K = state.direct.length - 1;
  const current = state.meanCurrent;
  const audio = (k: number) => (k <= K ? multiply(scale(current[k], 2), loadAt(k * audioFrequency)) : complex(0));
  const first = audio(1);
  const tone = magnitude(first);
  const ratio = (k: number) => (depth > 0 && tone > 0 ? magnitude(audio(k)) / tone : 0);

  // On the circuit: what stands open less what the current takes, the load's own drop left out.
  let squares = 0;
  let power = 0;
  const onCircuit: Complex[] = [];
  for (let k = -K; k <= K; k++) {
    const I = state.carrierCurrent[k + K];
    const v = subtract(openAt(options, k, depth), multiply(subtract(sourceAt(k), loadAtCarrier), I));
    onCircuit.push(v);
    squares += v.re * v.re + v.im * v.im;
    power += (v.re * I.re + v.im * I.im) / 2;
  }
  const size = magnitude(onCircuit[K]);
  const turn = size > 0 ? scale(onCircuit[K], 1 / size) : complex(1);
  const conj = (z: Complex) => complex(z.re, -z.im);
  const envelope = add(multiply(conj(turn), onCircuit[K + 1]), multiply(turn, conj(onCircuit[K - 1])));
  const clipped =
    state.leastCurrent < 0 && state.leastSlope < 0.7 * standingPoint(averaged, dcResistance, bias).directConductance;
  const more: Warning[] = [];
  if (clipped) {
    more.push(warning('detector.negative-peak-clipping'));
  }
  const inputResistance = power > 0 ? squares / (2 * power) : Number.POSITIVE_INFINITY;
  const loadedQ = qualityLoaded(options, inputResistance);
  if (loadedQ !== undefined && loadedQ < 15 && magnitude(state.carrier[K]) > 3 * averaged.detector.slopeVoltage) {
    more.push(warning('detector.loaded-q-low', { loadedQ }));
  }
  const resistance = loadAt(audioFrequency).re;
  const audioCurrent = 2 * magnitude(current[1]);
  return {
    directVoltage: current[0].re * dcResistance,
    directCurrent: current[0].re,
    audioVoltage: tone,
    audioPhase: Math.atan2(first.im, first.re),
    audioCurrent,
    audioPower: (audioCurrent * audioCurrent * resistance) / 2,
    secondHarmonic: ratio(2),
    thirdHarmonic: ratio(3),
    junctionVoltage: magnitude(state.carrier[K]),
    carrierVoltage: size,
    depthLeft: size > 0 ? magnitude(envelope) / size : 0,
    inputResistance,
    loadedQ,
    clipped,
    settled: true,
    iterations,
    warnings: [...warnings, ...more],
  };
}

/** ω·C over the conductances, C being half the change of susceptance per radian of frequency (2C for a tuned circuit). */
function qualityLoaded(options: AudioDetectionOptions, inputResistance: Ohms): number | undefined {
  const { carrierFrequency, audioFrequency, carrier, upper, lower } = options;
  if (carrierFrequency === undefined) return undefined;
  const change = reciprocal(upper.impedance).im - reciprocal(lower.impedance).im;
  const capacitance = change / (2 * 2 * 2 * Math.PI * audioFrequency);
  return (2 * Math.PI * carrierFrequency * capacitance) / (reciprocal(carrier.impedance).re + 1 / inputResistance);
}
