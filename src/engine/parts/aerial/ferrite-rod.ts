import { demandWithin } from '../../facts/impossible-values.ts';
import { type Warning, warning } from '../../facts/warning.ts';
import { solveInPlace } from '../../numerics/linear-solve.ts';
import {
  type Henries,
  type Hertz,
  LIGHT_SPEED,
  type Metres,
  MU_0,
  type Ohms,
  type Ratio,
} from '../../units/quantities.ts';
import { ringMutual } from '../coil/ring.ts';
import { currentSheet, meanInverseOfCircles } from './circles.ts';

export interface FerriteRodSpec {
  /** 10 mm to 1 m, at least twice the diameter. */
  readonly length: Metres;
  readonly diameter: Metres;
  /** Of the material, relative; above 1. */
  readonly permeability: number;
  readonly turns: number;
  /** Length of the winding along the rod. */
  readonly winding: Metres;
  /** Of the winding, wire centre to wire centre; default the rod and 1 mm. */
  readonly coilDiameter?: Metres;
  /** 0 in the middle of the rod (default), ±1 flush with an end. */
  readonly position?: number;
  /** tan δ / µ of the material at the frequency of use; default 4·10⁻⁵, a medium-wave grade (from memory, see docs). */
  readonly lossFactor?: number;
}

export interface FerriteRodModel {
  readonly inductance: Henries;
  /** Of the same coil without the rod. */
  readonly airInductance: Henries;
  /** inductance / airInductance: what the coil gains. */
  readonly coilPermeability: number;
  /** Flux through the rod's middle in a uniform field, over what air would carry: by the fluxmetric demagnetising factor. */
  readonly rodPermeability: number;
  /** Mean over the whole rod, less than at the middle: by the magnetometric factor. */
  readonly meanPermeability: number;
  /** Flux linked in a uniform field over µ₀H, m². */
  readonly linkedArea: number;
  /** Towards a station broadside to the rod. */
  readonly effectiveHeightAt: (frequency: Hertz) => Metres;
  /** In series with the coil, from loss in the rod alone; the true figure lies within its range for most grades. */
  readonly lossResistanceAt: (frequency: Hertz) => { readonly resistance: Ohms; readonly range: readonly [Ohms, Ohms] };
  /** Q if the wire had no loss: rod only. */
  readonly rodQ: Ratio;
  readonly warnings: readonly Warning[];
}

/** Bands round the rod, an even number so that one step spans the middle, and rings on each end face. */
const BANDS = 40;
const RINGS = 4;
/** Either way on the material's loss: grades and batches differ, and a grade's loss rises steeply near its upper frequency. */
const LOSS_SPREAD = 2.5;

/**
 * Coil on a ferrite rod. The flux of magnetisation along the rod, even over its section, ends in magnetic charge on bands of
 * its side and rings of its end faces; their potential and the drop along the rod (M = χH) close the equations.
 * Demagnetisation is thereby computed, fluxmetric and magnetometric, for any permeability, and by reciprocity the inductance
 * and the received flux. Within 3 % of finite elements for rods of 5 to 20 diameters (reference/ferrite-rods.json).
 * @param spec rod and winding, m; permeability of the material
 * @returns inductance (H), effective height by frequency (m), losses (Ω)
 * @throws RangeError for sizes that cannot be.
 */
export function ferriteRod(spec: FerriteRodSpec): FerriteRodModel {
  const { length, diameter, permeability, turns, winding, position = 0, lossFactor = 4e-5 } = spec;
  const { coilDiameter = diameter + 0.001 } = spec;
  demandWithin('rod.diameter', diameter, { above: 0, max: 0.2 });
  demandWithin('rod.length', length, { min: 2 * diameter, max: 2 });
  demandWithin('rod.permeability', permeability, { above: 1, max: 1e5 });
  demandWithin('rod.turns', turns, { above: 0, max: 5000 });
  demandWithin('rod.winding', winding, { above: 0, max: length });
  demandWithin('rod.coil-diameter', coilDiameter, { min: diameter, max: 5 * diameter });
  demandWithin('rod.position', position, { min: -1, max: 1 });
  demandWithin('rod.loss-factor', lossFactor, { min: 0, below: 0.1 });

  const a = diameter / 2;
  const b = coilDiameter / 2;
  const A = Math.PI * a * a;
  const chi = permeability - 1;
  const { matrix, steps } = magnetisable(a, length, chi);
  const n = steps.length;
  const unknowns = Math.round(Math.sqrt(matrix.length));

  // Field of one ampere in the coil, mean over the rod's section and the step: turns gathered into rings.
  const rings = Math.max(1, Math.min(24, Math.round(turns)));
  const centre = (position * (length - winding)) / 2;
  const coil = steps.map(([from, to]) => {
    let field = 0;
    for (let k = 0; k < rings; k++) {
      const ring = centre + winding * ((k + 0.5) / rings - 0.5);
      for (const at of [0.21132486540518713, 0.7886751345948129]) {
        field += ((turns / rings) * ringMutual(a, b, from + at * (to - from) - ring)) / (2 * MU_0 * A);
      }
    }
    return field;
  });
  const byCoil = new Float64Array(unknowns);
  const byField = new Float64Array(unknowns);
  for (let k = 0; k < n; k++) {
    byField[k] = steps[k][1] - steps[k][0];
    byCoil[k] = coil[k] * byField[k];
  }
  solveInPlace(matrix, byCoil, byField);

  // Flux of magnetisation A·M in every step; by reciprocity with the coil's field, the flux it links.
  let gained = 0;
  let linked = 0;
  let squared = 0;
  let mean = 0;
  for (let k = 0; k < n; k++) {
    const step = steps[k][1] - steps[k][0];
    gained += step * coil[k] * byCoil[k];
    linked += step * coil[k] * byField[k];
    squared += (step * byCoil[k] ** 2) / A;
    mean += (step * byField[k]) / A / length;
  }
  const airInductance = (turns / winding) ** 2 * currentSheet(b, winding);
  const inductance = airInductance + MU_0 * gained;
  const linkedArea = turns * Math.PI * b * b + linked;
  // R = ω µ″ ∂L/∂µ, and ∂L/∂χ = µ₀ ∫ M² dV / χ² since the equations are symmetric.
  const lossInductance = (permeability ** 2 * lossFactor * MU_0 * squared) / (chi * chi);
  const middle = byField[(n - 1) / 2] / A;

  const warnings: Warning[] = [];
  if (length < 5 * diameter) warnings.push(warning('aerial.rod-short'));
  if (coilDiameter > 1.5 * diameter) warnings.push(warning('aerial.rod-coil-loose'));
  if (spec.lossFactor === undefined) {
    warnings.push(warning('aerial.rod-loss-typical'));
  }
  return {
    inductance,
    airInductance,
    coilPermeability: inductance / airInductance,
    rodPermeability: (permeability * middle) / chi,
    meanPermeability: (permeability * mean) / chi,
    linkedArea,
    effectiveHeightAt: (f) => (2 * Math.PI * f * linkedArea) / LIGHT_SPEED,
    lossResistanceAt(f) {
      const resistance = 2 * Math.PI * f * lossInductance;
      return { resistance, range: [resistance / LOSS_SPREAD, resistance * LOSS_SPREAD] };
    },
    rodQ: inductance / lossInductance,
    warnings,
  };
}

/**
 * Equations of a rod along z: unknowns are A·M in every step from band to band (an end face at either end), then the charge
 * moved from the innermost ring of an end face to each other ring.
 */
function magnetisable(a: Metres, length: Metres, chi: number) {
  interface Patch {
    readonly r: Metres;
    readonly z: Metres;
    /** Half extent along z of a band, along r of a ring. */
    readonly dz: Metres;
    readonly dr: Metres;
  }
  const edge = (k: number) => length * (0.4 * (k / BANDS) + 0.3 * (1 - Math.cos((Math.PI * k) / BANDS)) - 0.5);
  const rim = (k: number) => a * Math.sin((Math.PI * k) / (2 * RINGS));
  const face = (z: Metres): Patch[] =>
    Array.from({ length: RINGS }, (_, k) => ({
      r: (rim(k) + rim(k + 1)) / 2,
      z,
      dz: 0,
      dr: (rim(k + 1) - rim(k)) / 2,
    }));
  const bands = Array.from({ length: BANDS }, (_, k) => ({
    r: a,
    z: (edge(k) + edge(k + 1)) / 2,
    dz: (edge(k + 1) - edge(k)) / 2,
    dr: 0,
  }));
  const patches: Patch[] = [...face(-length / 2), ...bands, ...face(length / 2)];
  const count = patches.length;
  const potential = new Float64Array(count * count);
  for (let i = 0; i < count; i++) {
    for (let j = 0; j <= i; j++)
      potential[i * count + j] = potential[j * count + i] = between(patches[i], patches[j]) / (4 * Math.PI);
  }
  // Each unknown takes its charge from one patch and leaves it on another.
  const ends = (k: number): readonly [number, number] => {
    if (k === 0) return [0, RINGS];
    if (k < BANDS) return [RINGS + k - 1, RINGS + k];
    if (k === BANDS) return [RINGS + BANDS - 1, RINGS + BANDS];
    const moved = k - BANDS - 1;
    const first = moved < RINGS - 1 ? 0 : RINGS + BANDS;
    return [first, first + 1 + (moved % (RINGS - 1))];
  };
  const unknowns = BANDS + 1 + 2 * (RINGS - 1);
  const matrix = new Float64Array(unknowns * unknowns);
  for (let i = 0; i < unknowns; i++) {
    const [p, q] = ends(i);
    for (let j = 0; j < unknowns; j++) {
      const [s, t] = ends(j);
      matrix[i * unknowns + j] =
        potential[q * count + t] - potential[q * count + s] - potential[p * count + t] + potential[p * count + s];
    }
  }
  const steps = Array.from({ length: BANDS + 1 }, (_, k) => [patches[ends(k)[0]].z, patches[ends(k)[1]].z] as const);
  for (let k = 0; k <= BANDS; k++) matrix[k * unknowns + k] += (steps[k][1] - steps[k][0]) / (Math.PI * a * a * chi);
  return { matrix, steps };

  function between(u: Patch, v: Patch): number {
    const extent = Math.max(u.dz, u.dr, v.dz, v.dr);
    // A strip on itself: ring of the strip's own mean logarithmic distance, half-width w: ln(8r/2w) + 3/2 over πr.
    if (u === v) return (Math.log((4 * u.r) / (u.dz + u.dr)) + 1.5) / (Math.PI * u.r);
    if (Math.hypot(u.r - v.r, u.z - v.z) > 6 * extent) return meanInverseOfCircles(u.r, v.r, u.z - v.z);
    let sum = 0;
    for (let i = 0; i < 3; i++)
      for (let j = 0; j < 3; j++)
        sum +=
          G3W[i] *
          G3W[j] *
          meanInverseOfCircles(u.r + G3[i] * u.dr, v.r + G3[j] * v.dr, u.z + G3[i] * u.dz - v.z - G3[j] * v.dz);
    return sum;
  }
}

/** Gauss-Legendre on (−1, 1), three points, weights of a mean. */
const G3 = [-Math.sqrt(0.6), 0, Math.sqrt(0.6)];
const G3W = [5 / 18, 8 / 18, 5 / 18];
