import { type Warning, warning } from '../facts/warning.ts';
import { add, type Complex, complex, magnitude, ONE, phase, polar, reciprocal } from '../numerics/complex.ts';
import { type Fitted, fitted, fittedLogarithm, reachOf } from './fitted.ts';
import { threeStateImpedance } from './sound-card/impedance-sweep.ts';
import { UnfitReadings } from './unfit.ts';

export interface ResistanceReading {
  /** By an ohmmeter, Ω. */
  readonly reading: number;
  /** The same with the leads held together, Ω. Default 0. */
  readonly leads?: number;
  /** Standard error: a share of the reading, default 1 %, and so much of both, Ω, default 0.1. */
  readonly error?: number;
  readonly floor?: number;
}

const OHMMETER = { error: 0.01, floor: 0.1 };

/**
 * Direct resistance by an ohmmeter.
 * @returns resistance (Ω) with its standard error and range by the errors given
 * @throws UnfitReadings where the leads have as much
 */
export function fitResistance({
  reading,
  leads = 0,
  error = OHMMETER.error,
  floor = OHMMETER.floor,
}: ResistanceReading): Fitted {
  if (!(reading > leads)) throw new UnfitReadings({ code: 'resistance-of-leads' });
  return fitted(reading - leads, Math.hypot(error * (reading - leads), Math.SQRT2 * floor), reachOf());
}

export interface VoltageComparison {
  /** In series with the phones, Ω. */
  readonly resistor: number;
  /** Across the resistor, across the phones and across both, V. */
  readonly resistorVoltage: number;
  readonly voltage: number;
  readonly wholeVoltage?: number;
  /** Standard error of each voltage as a share of it. Default 1 %. */
  readonly voltageError?: number;
  /** Standard error of the resistor as a share of it. Default 1 %. */
  readonly resistorError?: number;
}

export interface ImpedanceFit {
  /** Magnitude, Ω. */
  readonly impedance: Fitted;
  /** Degrees, current behind voltage; the method does not show the sign, so 0 to 180. */
  readonly phase?: Fitted;
  readonly warnings: readonly Warning[];
}

const SHARE = 0.01;
const degrees = (radians: number): number => (radians * 180) / Math.PI;

/**
 * Impedance by comparison with a resistor that carries the same current: |Z| = R·Vz/Vr; with the voltage across both,
 * cos φ = (V² − Vr² − Vz²)/(2VrVz).
 * @returns magnitude (Ω) and phase (°), each with its standard error and range by the errors given
 * @throws UnfitReadings where three voltages make no triangle
 */
export function fitImpedance({
  resistor,
  resistorVoltage: Vr,
  voltage: Vz,
  wholeVoltage: V,
  voltageError = SHARE,
  resistorError = SHARE,
}: VoltageComparison): ImpedanceFit {
  const impedance = fittedLogarithm(
    Math.log((resistor * Vz) / Vr),
    Math.hypot(Math.SQRT2 * voltageError, resistorError),
    reachOf(),
  );
  if (V === undefined) return { impedance, warnings: [] };
  const cosine = (V ** 2 - Vr ** 2 - Vz ** 2) / (2 * Vr * Vz);
  const s = voltageError * Math.hypot(V ** 2 / (Vr * Vz), Vr / Vz + cosine, Vz / Vr + cosine);
  const [low, high] = [cosine - reachOf() * s, cosine + reachOf() * s];
  if (!(low < 1 && high > -1)) throw new UnfitReadings({ code: 'no-triangle' });
  const angleOf = (c: number) => degrees(Math.acos(Math.max(-1, Math.min(1, c))));
  const value = angleOf(cosine);
  return {
    impedance,
    phase: {
      value,
      standardError: Math.min(degrees(s) / Math.max(Math.sin((value * Math.PI) / 180), 1e-9), 180),
      range: [angleOf(high), angleOf(low)],
    },
    warnings: high < 1 && low > -1 ? [] : [warning('measure.phase-unseen')],
  };
}

/** Level of the input beside that of the source, and how far behind it, degrees. */
export interface Transfer {
  readonly level: number;
  readonly phase: number;
}

/** As a sound card reads them through one resistor: nothing, a known resistor and the phones at its input. */
export interface SoundCardReadings {
  readonly open: Transfer;
  readonly known: Transfer;
  readonly phones: Transfer;
  /** The known resistor, Ω, and its standard error as a share. Default 1 %. */
  readonly resistor: number;
  readonly resistorError?: number;
  /** Standard error of each part of a transfer as a share of the open one. Default 0.001. */
  readonly noise?: number;
}

const NOISE = 1e-3;

/**
 * Impedance by a sound card: Z = Rc·(m/mc)·(mo − mc)/(mo − m). Gains, delay, the resistor in the lead and the card's own
 * input impedance cancel.
 * @returns magnitude (Ω) and phase (°), each with its standard error and range by the errors given
 * @throws UnfitReadings where a reading is as the open one
 */
export function fitSoundCard({
  open,
  known,
  phones,
  resistor,
  resistorError = SHARE,
  noise = NOISE,
}: SoundCardReadings): ImpedanceFit {
  const [mo, mc, m] = [open, known, phones].map(({ level, phase: angle }) => polar(level, (angle * Math.PI) / 180));
  const standardError = noise * magnitude(mo);
  const certain = (transfer: Complex) => ({ transfer, standardError });
  const found = threeStateImpedance({ open: certain(mo), known: certain(mc), device: certain(m) }, resistor);
  if (!found) throw new UnfitReadings({ code: 'as-open' });
  const { impedance: z, standardError: s } = found;
  return {
    impedance: fittedLogarithm(Math.log(magnitude(z)), Math.hypot(s, resistorError), reachOf()),
    phase: fitted(degrees(phase(z)), degrees(s), reachOf()),
    warnings: [],
  };
}

export interface AudibilityReadings {
  /** Across the phones when the sound is just heard, Ω; one a trial. */
  readonly shunts: readonly number[];
  /** Of the phones at the tone's frequency: magnitude, Ω, its standard error as a share, and phase, degrees. */
  readonly impedance: number;
  readonly impedanceError: number;
  readonly phase: number;
  /** Standard error of the phase, degrees. */
  readonly phaseError: number;
  /** Of what feeds the phones, Ω; left out where it is far above theirs. */
  readonly sourceResistance?: number;
}

export interface AudibilityFit {
  /** Above the threshold, dB. */
  readonly levelAboveThreshold: Fitted;
  /** The ratio that the level is of. */
  readonly audibilityFactor: Fitted;
  readonly warnings: readonly Warning[];
}

/** One trial's standard deviation where too few were made to see it, dB. */
const ONE_TRIAL = 2;
const NEPER = 20 / Math.LN10;

const mean = (values: readonly number[]): number => values.reduce((s, x) => s + x, 0) / values.length;

/**
 * Level above the threshold by each trial.
 * @returns dB, in the order of the shunts
 */
export function audibilityLevels({
  shunts,
  impedance,
  phase: angle,
  sourceResistance,
}: Pick<AudibilityReadings, 'shunts' | 'impedance' | 'phase' | 'sourceResistance'>): readonly number[] {
  const Z = polar(impedance, (angle * Math.PI) / 180);
  const Zq: Complex =
    sourceResistance === undefined ? Z : reciprocal(add(reciprocal(Z), complex(1 / sourceResistance)));
  return shunts.map((S) => NEPER * Math.log(magnitude(add(ONE, { re: Zq.re / S, im: Zq.im / S }))));
}

/**
 * Standard deviation of one trial, from their scatter where there is more than one.
 * @param levels of the trials, dB
 * @returns dB
 */
export function deviationOfTrial(levels: readonly number[]): number {
  const n = levels.length;
  const level = mean(levels);
  return n > 1 ? Math.sqrt(levels.reduce((s, x) => s + (x - level) ** 2, 0) / (n - 1)) : ONE_TRIAL;
}

/**
 * How far above the threshold phones sound, from the shunt that makes them just audible: 20·lg|1 + Zq/S|, Zq the phones'
 * impedance beside the source's, complex. The mean over trials; the scatter by Student's t, the impedance's error besides.
 * @returns level (dB) and ratio, each with its standard error and range
 */
export function fitAudibility(readings: AudibilityReadings): AudibilityFit {
  const { impedance, impedanceError, phase: angle, phaseError } = readings;
  const levelsFor = (lnZ: number, behind: number) =>
    audibilityLevels({ ...readings, impedance: Math.exp(lnZ), phase: behind });
  const lnZ = Math.log(impedance);
  const levels = levelsFor(lnZ, angle);
  const level = mean(levels);
  const n = levels.length;
  const scatter = deviationOfTrial(levels);
  const change = (moved: readonly number[], back: readonly number[]) => (mean(moved) - mean(back)) / 2;
  const sTrials = scatter / Math.sqrt(n);
  const sImpedance = Math.hypot(
    change(levelsFor(lnZ + impedanceError, angle), levelsFor(lnZ - impedanceError, angle)),
    change(levelsFor(lnZ, angle + phaseError), levelsFor(lnZ, angle - phaseError)),
  );
  const s = Math.hypot(sTrials, sImpedance);
  // Welch and Satterthwaite's degrees of freedom: only the scatter is estimated.
  const degreesOfFreedom = Math.floor((n - 1) * (s / sTrials) ** 4);
  const reach = n > 1 && Number.isFinite(degreesOfFreedom) ? reachOf(degreesOfFreedom) : reachOf();
  return {
    levelAboveThreshold: fitted(level, s, reach),
    audibilityFactor: fittedLogarithm(level / NEPER, s / NEPER, reach),
    warnings: n > 1 ? [] : [warning('measure.one-trial', { deviation: ONE_TRIAL })],
  };
}
