import { ImpossibleValues } from '../../facts/impossible-values.ts';
import { type Complex, reciprocal } from '../../numerics/complex.ts';
import { root } from '../../numerics/roots.ts';
import {
  type Henries,
  type Hertz,
  LIGHT_SPEED,
  type Metres,
  type Ohms,
  type OhmsPerMetre,
} from '../../units/quantities.ts';
import type { StaticCharge } from './static-charge.ts';

export interface LineAt {
  /** At the foot of the lead-in, against perfect earth. */
  readonly impedance: Complex;
  /** ∫ I dz along the wire over the foot's current, plus the foot's own height. */
  readonly effectiveHeight: Complex;
  /** |∫ I z ds| of the level part of the wire over the foot's current, m². */
  readonly levelMoment: number;
  /** ∫ |I|² ds over the foot's current squared: what a resistance per metre is multiplied by. */
  readonly currentSquared: Metres;
}

/**
 * The aerial as a branching line whose capacitance per metre is its own static one (Schelkunoff's non-uniform line),
 * with inductance per metre µ₀ε₀/c′ scaled so that the whole has the inductance of `staticCharge`: right to the second order in
 * frequency, and close up to where the wire is half a wavelength long.
 * @param series resistance per metre of wire, conductor and radiation. @returns a function of frequency.
 */
export function wireLine(charge: StaticCharge) {
  const { segments } = charge;
  const n = segments.length;
  const L = inductances(charge);
  const C = segments.map((s) => s.capacitance);
  const rise = segments.map((s) => s.to[2] - s.from[2]);
  const along = segments.map((s) => ((s.to[0] - s.from[0]) * (s.to[2] + s.from[2])) / 2);
  const across = segments.map((s) => ((s.to[1] - s.from[1]) * (s.to[2] + s.from[2])) / 2);
  const parents = segments.map((s) => s.parent);
  const base = segments[0].from[2];
  // Per segment: admittance beyond its far end, admittance of its middle shunt onwards, and impedance seen at its near end.
  const farRe = new Float64Array(n);
  const farIm = new Float64Array(n);
  const midRe = new Float64Array(n);
  const midIm = new Float64Array(n);
  const nearRe = new Float64Array(n);
  const nearIm = new Float64Array(n);

  return (frequency: Hertz, series: OhmsPerMetre): LineAt => {
    const w = 2 * Math.PI * frequency;
    farRe.fill(0);
    farIm.fill(0);
    let rootRe = 0;
    let rootIm = 0;
    // Inwards: every segment is half its series impedance, its capacitance, and the other half.
    for (let i = n - 1; i >= 0; i--) {
      const r = (series * segments[i].length) / 2;
      const x = (w * L[i]) / 2;
      let re = 0;
      let im = w * C[i];
      if (farRe[i] !== 0 || farIm[i] !== 0) {
        const beyond = reciprocal({ re: farRe[i], im: farIm[i] });
        const y = reciprocal({ re: beyond.re + r, im: beyond.im + x });
        re += y.re;
        im += y.im;
      }
      midRe[i] = re;
      midIm[i] = im;
      const z = reciprocal({ re, im });
      nearRe[i] = z.re + r;
      nearIm[i] = z.im + x;
      const y = reciprocal({ re: nearRe[i], im: nearIm[i] });
      const parent = parents[i];
      if (parent < 0) {
        rootRe += y.re;
        rootIm += y.im;
      } else {
        farRe[parent] += y.re;
        farIm[parent] += y.im;
      }
    }
    const impedance = reciprocal({ re: rootRe, im: rootIm });
    // Outwards: one ampere at the foot; node voltages become currents.
    let heightRe = base;
    let heightIm = 0;
    let squared = 0;
    const level = [0, 0, 0, 0];
    const farV: Complex[] = new Array(n);
    for (let i = 0; i < n; i++) {
      const v = parents[i] < 0 ? impedance : farV[parents[i]];
      const d = nearRe[i] ** 2 + nearIm[i] ** 2;
      const inRe = (v.re * nearRe[i] + v.im * nearIm[i]) / d;
      const inIm = (v.im * nearRe[i] - v.re * nearIm[i]) / d;
      const r = (series * segments[i].length) / 2;
      const x = (w * L[i]) / 2;
      const vRe = v.re - inRe * r + inIm * x;
      const vIm = v.im - inRe * x - inIm * r;
      const outRe = inRe + w * C[i] * vIm;
      const outIm = inIm - w * C[i] * vRe;
      farV[i] = { re: vRe - outRe * r + outIm * x, im: vIm - outRe * x - outIm * r };
      const re = (inRe + outRe) / 2;
      const im = (inIm + outIm) / 2;
      heightRe += rise[i] * re;
      heightIm += rise[i] * im;
      level[0] += along[i] * re;
      level[1] += along[i] * im;
      level[2] += across[i] * re;
      level[3] += across[i] * im;
      squared += (segments[i].length * (inRe ** 2 + inIm ** 2 + outRe ** 2 + outIm ** 2)) / 2;
    }
    return {
      impedance,
      effectiveHeight: { re: heightRe, im: heightIm },
      levelMoment: Math.hypot(...level),
      currentSquared: squared,
    };
  };
}

/** Of each segment, H. */
function inductances({ segments, inductance }: StaticCharge): Henries[] {
  const perFarad = segments.map((s) => s.length ** 2 / (LIGHT_SPEED ** 2 * s.capacitance));
  const raw = perFarad.reduce((sum, l, i) => sum + l * segments[i].share ** 2, 0);
  return perFarad.map((l) => (l * inductance) / raw);
}

/**
 * Reactance at the foot of the lossless line as a function of frequency; a number at resonances too, where the complex
 * sums of `wireLine` have 0/0.
 */
function reactanceAt(charge: StaticCharge): (frequency: Hertz) => Ohms {
  const { segments } = charge;
  const L = inductances(charge);
  return (frequency) => {
    const w = 2 * Math.PI * frequency;
    const beyond = new Float64Array(segments.length);
    let foot = 0;
    for (let i = segments.length - 1; i >= 0; i--) {
      const { parent, capacitance } = segments[i];
      const half = (w * L[i]) / 2;
      // Susceptances; 1/0 is infinite and 1/∞ is 0, as they should be.
      const far = beyond[i] === 0 ? 0 : -1 / (half - 1 / beyond[i]);
      const near = -1 / (half - 1 / (w * capacitance + far));
      if (parent < 0) foot += near;
      else beyond[parent] += near;
    }
    return -1 / foot;
  };
}

/** Every real aerial resonates well before its wire is so many waves long. */
const WAVES_SEARCHED = 4;

/**
 * First frequency at which the reactance at the foot is zero: the quarter-wave resonance against perfect earth.
 * @throws ImpossibleValues for wires as thick as they lie near one another or the ground: moments give no charge then
 */
export function naturalFrequency(charge: StaticCharge): Hertz {
  const reactance = reactanceAt(charge);
  const wireLength = charge.segments.reduce((sum, s) => sum + s.length, 0);
  let high = LIGHT_SPEED / (16 * wireLength);
  let low = high / 1000;
  // The reactance rises all the way to it, so the first positive value lies beyond it and short of the next pole.
  while (reactance(high) < 0) {
    if (high > WAVES_SEARCHED * (LIGHT_SPEED / wireLength)) throw new ImpossibleValues({ code: 'aerial.unsolvable' });
    low = high;
    high *= 1.1;
  }
  return root(reactance, low, high);
}
