import type { Complex } from '../../numerics/complex.ts';
import { skinImpedance, transverseLoss } from '../wire/skin.ts';
import type { Wire } from '../wire/wire.ts';
import { type Background, backgroundField } from './background.ts';
import { dipoleCoupling, reactionTo } from './reaction.ts';
import { ROW_SUM, rowModes } from './row-modes.ts';
import type { Winding } from './winding.ts';

/**
 * Impedance of the wire in its coil, over its direct-current resistance, as a function of x = a√(ωμ₀/ρ) alone.
 * The real part is R/R₀; the imaginary part holds the internal inductance (x²/8 at low frequency) and what the redistributed
 * current takes off the inductance.
 */
export type EddyImpedance = (x: number) => Complex;

/**
 * Skin and proximity effect of a winding of solid wire.
 *
 * Each turn lies in a row of neighbours (a layer, or the disc of a spiral) and in the field h of all other turns and of its
 * own curvature. The row's exact modes (see row-modes) answer the current, the field along and the field across the row;
 * at the ends of rows neighbours are missing, which the dipole action between the actual turns takes into account (see
 * reaction). Per metre of wire, over R₀:
 *
 *   Z = Z_skin + jπx²·[δ/2π + 2πa²·(⟨h·b⟩ along + ⟨h·b⟩ across)] + 2πa²·⟨b⟩·Z_skin/r
 *
 * The last term is the shorter way round the inside of each turn. With thin wire it is Butterworth's H + G.
 */
export function eddyImpedance(w: Winding): EddyImpedance {
  const background = backgroundField(w);
  const a = w.wireRadius;
  const along = w.rows === 'axial' ? background.axial : background.radial;
  const across = w.rows === 'axial' ? background.radial : background.axial;
  const radius = Float64Array.from(background.turn, (i) => w.radius[i]);
  const everyTurn = background.turn.length === w.radius.length;
  const length = radius.reduce((s, r) => s + r, 0);

  // A turn by itself, or wires so far apart that they touch on nothing, has no row.
  const u = Math.min(a / w.pitch, 0.495);
  const row = rowModes(Math.max(u, 1e-6));
  const coupling = everyTurn ? dipoleCoupling(w) : undefined;
  const company = coupling ? meanSquare(coupling.company) : 1;
  const alongReaction = coupling && reactionTo(along, radius, coupling);
  const acrossReaction = coupling && reactionTo(across, radius, coupling);
  const sums = coupling ? undefined : meanSums(background, along, across, radius);
  const out = new Float64Array(4);
  const q = new Float64Array(8);

  return (x) => {
    const skin = skinImpedance(x);
    const { current, along: ta, across: tc } = row.at(x);
    const t = row.single;
    if (alongReaction && acrossReaction) {
      // The dipole part of the row's answer is taken out of it, to be put back turn by turn.
      const [ar, ai] = inverse(ta.re[0], ta.im[0]);
      const [cr, ci] = inverse(tc.re[0], tc.im[0]);
      const [lr, li] = inverse(t.re[0], t.im[0]);
      const s = ROW_SUM * u * u;
      // Few neighbours make few higher harmonics: between the lone wire and the row by the company kept.
      alongReaction.answer(mix(lr, ar + s, company), mix(li, ai, company), -u * u, out);
      q.set(out, 0);
      acrossReaction.answer(mix(lr, cr - s, company), mix(li, ci, company), u * u, out);
      q.set(out, 4);
    } else if (sums) {
      for (let k = 0; k < 2; k++) {
        const [re, im] = k === 0 ? [ta.re[0], ta.im[0]] : [tc.re[0], tc.im[0]];
        q[4 * k] = sums[k] * re;
        q[4 * k + 1] = sums[k] * im;
        q[4 * k + 2] = sums[k + 2] * re;
        q[4 * k + 3] = sums[k + 2] * im;
      }
    }
    const area = (2 * Math.PI * a * a) / length;
    // ⟨h·b⟩ weighted by the length of turns, both directions.
    const dr = area * (q[0] + q[4]) + (company * current.re[0]) / (2 * Math.PI);
    const di = area * (q[1] + q[5]) + (company * current.im[0]) / (2 * Math.PI);
    // Axial dipoles only shift current towards the inside of the turn.
    const k = w.rows === 'axial' ? 2 : 6;
    const br = area * q[k];
    const bi = area * q[k + 1];
    const px2 = Math.PI * x * x;
    return {
      re: skin.re - px2 * di + br * skin.re - bi * skin.im,
      im: skin.im + px2 * dr + br * skin.im + bi * skin.re,
    };
  };
}

const inverse = (re: number, im: number): [number, number] => {
  const p = re * re + im * im;
  return [re / p, -im / p];
};
const mix = (isolated: number, inRow: number, neighbours: number): number => isolated + neighbours * (inRow - isolated);
const meanSquare = (v: Float64Array): number => v.reduce((s, x) => s + x * x, 0) / v.length;

/** Σ r·h² along and across, Σ h along and across, of the turns looked at. */
function meanSums({ turn }: Background, along: Float64Array, across: Float64Array, radius: Float64Array): number[] {
  const sums = [0, 0, 0, 0];
  for (let k = 0; k < turn.length; k++) {
    sums[0] += radius[k] * along[k] ** 2;
    sums[1] += radius[k] * across[k] ** 2;
    sums[2] += along[k];
    sums[3] += across[k];
  }
  return sums;
}

/** Factor of Butterworth's formula for the strands' action on one another within the bundle, by their number. */
const LITZ_FACTOR: readonly (readonly [number, number])[] = [
  [1, 0],
  [3, 1.55],
  [9, 1.84],
  [27, 1.92],
  [1000, 2],
];

/**
 * Litz: H + [k·(n·d_s/d₀)² + 4π²n²d_s²⟨h²⟩]·G at the strand's x.
 * Source: Butterworth 1926 (in Terman's Radio Engineers' Handbook, section 2); perfect transposition.
 */
export function litzImpedance(w: Winding, wire: Wire): EddyImpedance {
  const background = backgroundField(w);
  let h2 = 0;
  let length = 0;
  background.turn.forEach((turn, i) => {
    h2 += w.radius[turn] * (background.axial[i] ** 2 + background.radial[i] ** 2);
    length += w.radius[turn];
  });
  h2 /= length;
  const n = wire.strands ?? 1;
  const inBundle = (n * wire.diameter) / (2 * w.wireRadius);
  const factor = byLogarithm(LITZ_FACTOR, n) * inBundle ** 2 + 4 * (Math.PI * n * wire.diameter) ** 2 * h2;
  return (x) => {
    const skin = skinImpedance(x);
    return { re: skin.re + factor * transverseLoss(x), im: skin.im };
  };
}

function byLogarithm(rows: readonly (readonly [number, number])[], n: number): number {
  const last = rows[rows.length - 1];
  if (n >= last[0]) return last[1];
  const k = rows.findIndex(([x]) => x > n);
  const [low, high] = [rows[k - 1], rows[k]];
  return low[1] + ((high[1] - low[1]) * Math.log(n / low[0])) / Math.log(high[0] / low[0]);
}

/**
 * The same function remembered at steps of ln x and interpolated by cubics (error below 1e-5): a circuit asks for it at
 * thousands of frequencies, all between a few of its steps.
 */
export function remembered(exact: EddyImpedance): EddyImpedance {
  const step = 0.07;
  const known = new Map<number, Complex>();
  const node = (k: number): Complex => {
    let value = known.get(k);
    if (!value) {
      const x = Math.exp(k * step);
      const z = exact(x);
      value = { re: z.re, im: z.im / (x * x) };
      known.set(k, value);
    }
    return value;
  };
  return (x) => {
    if (!(x > 0.05)) return { re: 1, im: (x * x) / 8 };
    const position = Math.log(x) / step;
    const k = Math.floor(position);
    const t = position - k;
    const w0 = (-t * (t - 1) * (t - 2)) / 6;
    const w1 = ((t + 1) * (t - 1) * (t - 2)) / 2;
    const w2 = (-(t + 1) * t * (t - 2)) / 2;
    const w3 = ((t + 1) * t * (t - 1)) / 6;
    const [a, b, c, d] = [node(k - 1), node(k), node(k + 1), node(k + 2)];
    return {
      re: w0 * a.re + w1 * b.re + w2 * c.re + w3 * d.re,
      im: (w0 * a.im + w1 * b.im + w2 * c.im + w3 * d.im) * x * x,
    };
  };
}
