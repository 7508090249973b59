import { besselTable, lookUpBessel } from '../../numerics/bessel-table.ts';
import { type AveragedCurrents, type AveragedDetector, averagedCurrents } from '../../parts/detector/averaged.ts';
import type { ExponentialLaw } from '../../parts/detector/detector.ts';
import { boundedExp } from '../../parts/detector/exponential.ts';
import { pairAveraged } from '../../parts/detector/pair.ts';
import type { Ohms } from '../../units/quantities.ts';

/** A device's averages, quick enough to be asked for thousands of times. */
export interface CarrierLaw {
  readonly averaged: AveragedDetector;
  /** Resistance of the device that these leave out: what the carrier meets, and what direct current meets. */
  readonly carrierResistance: Ohms;
  readonly directResistance: Ohms;
}

export type CarrierWiring = 'single' | 'full-wave' | 'doubler';

const known = new WeakMap<AveragedDetector, CarrierLaw>();

/**
 * The averages of a detector for many pairs of carriers. A junction's have a closed form once its series resistance is
 * counted to the circuit, which leaves out that the resistance also flattens each pulse; a curve's are tabulated where
 * they are asked for.
 */
export function carrierLaw(averaged: AveragedDetector, wiring: CarrierWiring): CarrierLaw {
  let law = known.get(averaged);
  if (!law) known.set(averaged, (law = quick(averaged, wiring)));
  return law;
}

function quick(averaged: AveragedDetector, wiring: CarrierWiring): CarrierLaw {
  const { detector, at } = averaged;
  const { law, slopeVoltage } = detector;
  if (!law)
    return {
      averaged: { ...averaged, at: tabulated(at, slopeVoltage / 2) },
      carrierResistance: 0,
      directResistance: 0,
    };
  const single: AveragedDetector = { detector, at: junctionAverages(law) };
  // Each of two devices carries half the carrier's current; direct current passes both of a doubler.
  const ohms = law.seriesResistance;
  return wiring === 'single'
    ? { averaged: single, carrierResistance: ohms, directResistance: ohms }
    : {
        averaged: pairAveraged(single, wiring),
        carrierResistance: ohms / 2,
        directResistance: wiring === 'doubler' ? 2 * ohms : ohms / 2,
      };
}

/** Carrier over the slope voltage below which the table's own error of 2e-9 would count; the series leaves out 1e-12. */
const FAINT = 0.03;

function junctionAverages({
  saturationCurrent: Is,
  slopeVoltage: s,
  leakage: G,
}: ExponentialLaw): AveragedDetector['at'] {
  const table = besselTable();
  const bessel = new Float64Array(2);
  return (V, v0, out) => {
    const x = V / s;
    if (x < FAINT) {
      bessel[0] = (x * x) / 4 - (x * x * x * x) / 64;
      bessel[1] = x / 2 - (x * x * x) / 16;
    } else lookUpBessel(x, table, bessel);
    const r = bessel[1];
    const z = Math.min(bessel[0] + v0 / s, 200);
    const w = boundedExp(z);
    const g = (Is / s) * w;
    out.mean = Is * (z < 1 ? Math.expm1(z) : w - 1) + G * v0;
    out.fundamental = 2 * Is * w * r + G * V;
    out.meanByAmplitude = g * r;
    out.meanByDirect = g + G;
    out.fundamentalByAmplitude = 2 * g * (1 - (x > 1e-6 ? r / x : 0.5)) + G;
    out.fundamentalByDirect = 2 * g * r;
  };
}

/** So many places kept; at one more the cache is cleared. */
const MOST_KEPT = 50_000;
const KEYS = 4096;

/**
 * Averages between places of a grid by cubic Hermite surfaces from values and slopes at its corners, each corner found
 * when it is first needed.
 */
function tabulated(at: AveragedDetector['at'], step: number): AveragedDetector['at'] {
  const corners = new Map<number, AveragedCurrents>();
  const corner = (i: number, j: number): AveragedCurrents => {
    const key = i * KEYS + j;
    let currents = corners.get(key);
    if (!currents) {
      if (corners.size >= MOST_KEPT) corners.clear();
      currents = averagedCurrents();
      at(i * step, j * step, currents);
      corners.set(key, currents);
    }
    return currents;
  };
  return (V, v0, out) => {
    const x = V / step;
    const y = v0 / step;
    const i = Math.floor(x);
    const j = Math.floor(y);
    if (!(Math.abs(j) < KEYS / 2 - 1 && i < 1e6)) {
      at(V, v0, out);
      return;
    }
    const t = x - i;
    const u = y - j;
    const [a, b, c, d] = [corner(i, j), corner(i + 1, j), corner(i, j + 1), corner(i + 1, j + 1)];
    const [p0, p1, q0, q1] = hermite(t);
    const [r0, r1, s0, s1] = hermite(u);
    out.mean =
      r0 * (p0 * a.mean + p1 * b.mean + step * (q0 * a.meanByAmplitude + q1 * b.meanByAmplitude)) +
      r1 * (p0 * c.mean + p1 * d.mean + step * (q0 * c.meanByAmplitude + q1 * d.meanByAmplitude)) +
      step * s0 * (p0 * a.meanByDirect + p1 * b.meanByDirect) +
      step * s1 * (p0 * c.meanByDirect + p1 * d.meanByDirect);
    out.fundamental =
      r0 *
        (p0 * a.fundamental +
          p1 * b.fundamental +
          step * (q0 * a.fundamentalByAmplitude + q1 * b.fundamentalByAmplitude)) +
      r1 *
        (p0 * c.fundamental +
          p1 * d.fundamental +
          step * (q0 * c.fundamentalByAmplitude + q1 * d.fundamentalByAmplitude)) +
      step * s0 * (p0 * a.fundamentalByDirect + p1 * b.fundamentalByDirect) +
      step * s1 * (p0 * c.fundamentalByDirect + p1 * d.fundamentalByDirect);
    const between = (key: keyof AveragedCurrents) =>
      (1 - u) * ((1 - t) * a[key] + t * b[key]) + u * ((1 - t) * c[key] + t * d[key]);
    out.meanByAmplitude = between('meanByAmplitude');
    out.meanByDirect = between('meanByDirect');
    out.fundamentalByAmplitude = between('fundamentalByAmplitude');
    out.fundamentalByDirect = between('fundamentalByDirect');
  };
}

/** Weights of the values at 0 and 1 and of the slopes there. */
function hermite(t: number): readonly [number, number, number, number] {
  const s = 1 - t;
  return [s * s * (1 + 2 * t), t * t * (3 - 2 * t), t * s * s, -t * t * s];
}
