import { type Warning, warning } from '../facts/warning.ts';
import { add, complex, divide, magnitude, multiply, ONE, subtract } from '../numerics/complex.ts';
import { type LeastSquaresFit, leastSquares } from '../numerics/levenberg-marquardt.ts';
import { normalQuantile, normalShare } from '../numerics/normal.ts';
import { type AnalysedPart, modelOf, type PartModel } from './analyser-models.ts';
import { type Fitted, fitted, reachOf } from './fitted.ts';
import { knownErrorsOf, varianceOf } from './known-errors.ts';
import type { ImpedanceReading } from './measurement.ts';
import { impedancesOf, parameterOf, type Sweep } from './sweep.ts';
import { UnfitReadings } from './unfit.ts';

export interface AnalyserFit {
  /** By name: what each part has is said at `fitAnalyser`. */
  readonly figures: Readonly<Record<string, Fitted>>;
  /** rms of what the model leaves, over the noise. */
  readonly scatter: number;
  /** Hz, where resistance and Q are for; left out of a part that has them at its resonance. */
  readonly at?: number;
  readonly sweep: readonly ImpedanceReading[];
  readonly warnings: readonly Warning[];
}

/** What remains of each error after a usual calibration. */
const USUAL_CALIBRATION = 0.003;
/** A model that leaves more than so many times the noise, and so much of the calibration's error, is the wrong one. */
const WRONG = { noise: 3, calibration: 0.3 };
/** Of a fit; its unknowns have the size of 1 and errors far above the tolerance. */
const MOST_STEPS = 60;
const TOLERANCE = 1e-7;
/** Left of a fit, in variances a row, where it needs no other start. */
const SETTLED = 1.5;
/** A reflection so many standard errors above 1 is that of no passive part. */
const IMPOSSIBLE = 4;
/** Rises of the resistance that are tried, in standard errors about the best one. */
const RISES = [-2.4, -1.6, -0.8, 0, 0.8, 1.6, 2.4];
/** Unknowns of the analyser: directivity, tracking and source match, each complex. */
const ERRORS = 6;

/** What the analyser shows of s with its errors, as multiples of the calibration's standard deviation. */
function shown(sweep: Sweep, model: PartModel, x: Float64Array, exponent: number, calibration: number) {
  const p = model.starts[0].length;
  const [directivity, tracking, match] = [0, 2, 4].map((i) =>
    complex(calibration * x[p + i], calibration * x[p + i + 1]),
  );
  return sweep.points.map(({ frequency }) => {
    const s = parameterOf(model.impedance(x, frequency, exponent), sweep.fixture, sweep.reference);
    const tracked = multiply(add(ONE, tracking), s);
    return add(directivity, divide(tracked, subtract(ONE, multiply(match, s))));
  });
}

/** One fit from the best of several starts; the rise of the resistance as given, or one more unknown, the last. */
function fitFrom(
  starts: readonly ArrayLike<number>[],
  rise: number | undefined,
  sweep: Sweep,
  model: PartModel,
  calibration: number,
): LeastSquaresFit {
  const p = model.starts[0].length;
  const rows = 2 * sweep.points.length;
  const usual = model.exponent;
  const residuals = (x: Float64Array) => {
    const exponent = rise ?? x[p + ERRORS];
    const predicted = shown(sweep, model, x, exponent, calibration);
    const residual = new Float64Array(rows + model.priors.length + ERRORS + (usual ? 1 : 0));
    sweep.points.forEach(({ s }, i) => {
      residual[2 * i] = (s.re - predicted[i].re) / sweep.noise;
      residual[2 * i + 1] = (s.im - predicted[i].im) / sweep.noise;
    });
    let row = rows;
    for (const { unknown, value, deviation } of model.priors) residual[row++] = (x[unknown] - value) / deviation;
    for (let i = 0; i < ERRORS; i++) residual[row++] = x[p + i];
    if (usual) residual[row] = (exponent - usual.value) / usual.deviation;
    return residual;
  };
  let best: LeastSquaresFit | undefined;
  for (const start of starts) {
    const fit = leastSquares(residuals, start, {
      scales: Array.from(start, () => 1),
      longestStep: 2,
      mostSteps: MOST_STEPS,
      tolerance: TOLERANCE,
    });
    if (!best || fit.sumOfSquares < best.sumOfSquares) best = fit;
    // Nothing but noise is left: no other start does better.
    if (best.sumOfSquares < SETTLED * rows) break;
  }
  return best as LeastSquaresFit;
}

/** A fit, and how likely its rise of the resistance is beside the others, relative. */
interface Likely {
  readonly fit: LeastSquaresFit;
  readonly weight: number;
}

/**
 * Fits for several rises of the resistance with frequency, about the best one. Where the losses are near nothing the rise
 * cannot be seen, and one fit of both would take itself for surer than it is.
 */
function likelyFits(
  first: LeastSquaresFit,
  usual: { readonly deviation: number },
  sweep: Sweep,
  model: PartModel,
  calibration: number,
): readonly Likely[] {
  let free = first;
  for (let turn = 0; ; turn++) {
    const n = free.x.length;
    const best = free;
    const spread = Math.min(Math.sqrt(best.gram[n * n - 1]), usual.deviation);
    const fits = RISES.map((k) =>
      fitFrom([best.x.slice(0, n - 1)], best.x[n - 1] + k * spread, sweep, model, calibration),
    );
    const lowest = fits.reduce((a, b) => (b.sumOfSquares < a.sumOfSquares ? b : a));
    const k = RISES[fits.indexOf(lowest)];
    if (turn < 2 && k !== 0 && lowest.sumOfSquares < best.sumOfSquares - 1) {
      // The first fit stopped in a minimum of its own.
      free = fitFrom([[...lowest.x, best.x[n - 1] + k * spread]], undefined, sweep, model, calibration);
      continue;
    }
    const excess = Math.max(1, lowest.sumOfSquares / lowest.degreesOfFreedom);
    return fits.map((fit) => ({
      fit,
      weight:
        Math.exp((lowest.sumOfSquares - fit.sumOfSquares) / (2 * excess)) * Math.sqrt(fit.gram[2 * fit.x.length + 2]),
    }));
  }
}

/** Value and standard error of one figure by each fit, together: the mixture's mean, deviation and 90 % range. */
function mixed(
  likely: readonly Likely[],
  of: (fit: LeastSquaresFit) => { readonly value: number; readonly error: number },
  isLogarithm: boolean,
): Fitted {
  const whole = likely.reduce((sum, { weight }) => sum + weight, 0);
  const parts = likely.map(({ fit, weight }) => ({ ...of(fit), share: weight / whole }));
  const mean = parts.reduce((sum, { share, value }) => sum + share * value, 0);
  const s = Math.sqrt(
    parts.reduce((sum, { share, value, error }) => sum + share * (error ** 2 + (value - mean) ** 2), 0),
  );
  const quantile = (p: number): number => {
    let [low, high] = [mean - 40 * s, mean + 40 * s];
    for (let i = 0; i < 60; i++) {
      const x = (low + high) / 2;
      const below = parts.reduce((sum, { share, value, error }) => sum + share * normalShare((x - value) / error), 0);
      if (below < p) low = x;
      else high = x;
    }
    return (low + high) / 2;
  };
  const [low, high] = [quantile(0.05), quantile(0.95)];
  if (!isLogarithm) return { value: mean, standardError: s, range: [low, high] };
  const value = Math.exp(mean);
  return { value, standardError: value * s, range: [Math.exp(low), Math.exp(high)] };
}

/** Where the reactance goes through 0, Hz, the first such. */
function resonanceOf(readings: readonly ImpedanceReading[]): Fitted | undefined {
  const at = readings.findIndex((b, i) => i > 0 && readings[i - 1].reactance * b.reactance < 0);
  if (at < 0) return undefined;
  const [a, b] = [readings[at - 1], readings[at]];
  const step = b.frequency - a.frequency;
  // In parallel resonance reactance jumps; it is the susceptance that goes through 0.
  const high = Math.abs(a.reactance) + Math.abs(b.reactance) > 2 * (Math.abs(a.resistance) + Math.abs(b.resistance));
  const share = high ? 0.5 : Math.abs(a.reactance) / (Math.abs(a.reactance) + Math.abs(b.reactance));
  return fitted(a.frequency + share * step, step / Math.sqrt(12), reachOf());
}

/** A dip of the reflection is this deep at least: share of what is reflected beside it. */
const DIP = 0.03;

/**
 * The resonance that an analyser shows without a calibration: where least is reflected, within the sweep. Lead and
 * tracking turn the phase and stretch the circle, so that the reactance says nothing then.
 */
function dipOf({ points, noise }: Sweep): Fitted | undefined {
  const sizes = points.map(({ s }) => magnitude(s));
  const at = sizes.indexOf(Math.min(...sizes));
  if (at < 2 || at > points.length - 3) return undefined;
  const beside = Math.min(Math.max(...sizes.slice(0, at)), Math.max(...sizes.slice(at + 1)));
  if (!(beside - sizes[at] > Math.max(DIP * beside, 6 * noise))) return undefined;
  const [a, b] = [points[at - 1].frequency, points[at + 1].frequency];
  return fitted(points[at].frequency, (b - a) / 2 / Math.sqrt(12), reachOf());
}

/**
 * Where 1/Q may be 0 the bound of Q is that of 99 in 100, further out by this than a range's end: a bound is given where 1/Q
 * came out low, so that among bounds the truth is beyond the usual end more than once in twenty.
 */
const BOUND = normalQuantile(0.99) / reachOf();

/** 1/Q and Q, which has no end above where 1/Q may be 0. */
function losses(dissipation: Fitted): { readonly figures: Record<string, Fitted>; readonly warnings: Warning[] } {
  const [low, usual] = dissipation.range;
  const high = low > 0 ? usual : dissipation.value + BOUND * (usual - dissipation.value);
  const q: Fitted = {
    value: dissipation.value > 0 ? 1 / dissipation.value : Number.POSITIVE_INFINITY,
    standardError:
      dissipation.value > 0 ? dissipation.standardError / dissipation.value ** 2 : Number.POSITIVE_INFINITY,
    range: [high > 0 ? 1 / high : 0, low > 0 ? 1 / low : Number.POSITIVE_INFINITY],
  };
  return {
    figures: { dissipation, q },
    warnings: low > 0 ? [] : [warning('measure.q-lower-bound', { least: q.range[0] })],
  };
}

/** Names of the first two unknowns of each part. */
const NAMES = {
  coil: ['inductance', 'selfCapacitance'],
  capacitor: ['capacitance', 'inductance'],
  aerial: ['capacitance', 'inductance'],
  'crystal earpiece': ['capacitance', 'resonance'],
} as const satisfies Readonly<Record<AnalysedPart, readonly [string, string]>>;

function figuresOf(part: AnalysedPart, { unit }: PartModel, likely: readonly Likely[], frequency: number) {
  const known = new Map(likely.map(({ fit }) => [fit, knownErrorsOf(fit)]));
  const errorOf = (fit: LeastSquaresFit, i: number): number => known.get(fit)?.errors[i] ?? Number.NaN;
  const unknown = (i: number, isLogarithm: boolean, scale = 1) =>
    mixed(likely, (fit) => ({ value: scale * fit.x[i], error: scale * errorOf(fit, i) }), isLogarithm);
  const [first, second] = NAMES[part];
  const both = { [first]: unknown(0, true), [second]: unknown(1, true) };
  const warnings = known.get(likely.reduce((a, b) => (b.weight > a.weight ? b : a)).fit)?.warnings ?? [];
  if (unit === undefined) return { figures: { ...both, q: unknown(3, true) }, warnings };
  if (part !== 'coil') return { figures: { ...both, resistance: unknown(2, false, unit) }, warnings };
  const dissipation = mixed(
    likely,
    (fit) => {
      const perUnit = unit / (2 * Math.PI * frequency * Math.exp(fit.x[0]));
      const value = perUnit * fit.x[2];
      const gradient = Array.from(fit.x, (_, i) => (i === 0 ? -value : i === 2 ? perUnit : 0));
      return { value, error: Math.sqrt(varianceOf(gradient, known.get(fit)?.covariance ?? [])) };
    },
    false,
  );
  const lost = losses(dissipation);
  return { figures: { ...both, ...lost.figures }, warnings: [...warnings, ...lost.warnings] };
}

/**
 * A part from a sweep of a network analyser. The parameter itself is fitted, not what follows from it: the part's
 * unknowns together with directivity, tracking and source match of the analyser, each within its calibration's error.
 * - coil: inductance (H), selfCapacitance (F); dissipation (1/Q) and q at `frequency`;
 * - capacitor, aerial: capacitance (F), inductance (H); resistance (Ω) at `frequency`;
 * - crystal earpiece: capacitance (F), resonance (Hz) and its q.
 * @param frequency that resistance and Q are for, Hz; default the geometric middle of the sweep
 * @param calibration standard deviation of what remains of each error; default 0.003
 * @throws UnfitReadings where the sweep is not of such a part, or the analyser was not calibrated and shows no resonance
 */
export function fitAnalyser(
  part: AnalysedPart,
  sweep: Sweep,
  { frequency, calibration = USUAL_CALIBRATION }: { readonly frequency?: number; readonly calibration?: number } = {},
): AnalyserFit {
  const error = Math.hypot(sweep.noise, calibration);
  const impedances = impedancesOf(sweep, error);
  const resonance = resonanceOf(impedances);
  const highest = Math.max(...sweep.points.map((p) => magnitude(p.s)));
  // Directivity, tracking and source match may add up.
  if (highest > 1 + IMPOSSIBLE * Math.hypot(Math.sqrt(3) * calibration, sweep.noise)) {
    const dip = dipOf(sweep);
    if (!dip) throw new UnfitReadings({ code: 'analyser.not-calibrated', highest });
    return {
      figures: { resonance: dip },
      scatter: 0,
      sweep: impedances,
      warnings: [warning('measure.analyser-not-calibrated', { highest })],
    };
  }
  const [low, high] = [sweep.points[0].frequency, sweep.points[sweep.points.length - 1].frequency];
  const at = frequency ?? Math.sqrt(low * high);
  const model = modelOf(part, impedances, at);
  const zeros = Array.from({ length: ERRORS }, () => 0);
  const rise = model.exponent ? [model.exponent.value] : [];
  const fit = fitFrom(
    model.starts.map((start) => [...start, ...zeros, ...rise]),
    model.exponent ? undefined : 0,
    sweep,
    model,
    calibration,
  );
  const rows = 2 * sweep.points.length;
  const sum = fit.residuals.slice(0, rows).reduce((s, r) => s + r * r, 0);
  const scatter = Math.sqrt(sum / Math.max(rows - fit.x.length, 1));
  if (scatter * sweep.noise > Math.max(WRONG.noise * sweep.noise, WRONG.calibration * calibration))
    throw new UnfitReadings({
      code: 'analyser.not-this-part',
      part,
      times: scatter,
      ...(resonance && { resonance: resonance.value }),
    });
  const likely = model.exponent ? likelyFits(fit, model.exponent, sweep, model, calibration) : [{ fit, weight: 1 }];
  const { figures, warnings } = figuresOf(part, model, likely, at);
  const isThick = sweep.disagreement > 3 * Math.SQRT2 * error;
  return {
    figures,
    scatter,
    ...(part !== 'crystal earpiece' && { at }),
    sweep: impedances,
    warnings: isThick
      ? [...warnings, warning('measure.fixture-not-thin', { disagreement: sweep.disagreement })]
      : warnings,
  };
}
