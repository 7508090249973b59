import { type Complex, magnitude } from '../../numerics/complex.ts';
import { nonNegativeLeastSquares } from '../../numerics/nonnegative.ts';
import type { Hertz } from '../../units/quantities.ts';

/** Part of a series string that stands for a two-terminal thing known only by its impedance. */
export interface Section {
  /** `lag`: R ∥ C. `choke`: R ∥ L. */
  readonly kind: 'resistance' | 'inductance' | 'capacitance' | 'lag' | 'choke';
  /** Ω, H or F; the resistance of a lag or choke. */
  readonly value: number;
  /** Corner of a lag or choke, rad/s. */
  readonly corner?: number;
}

const CORNERS_HZ = [30, 300, 3e3, 30e3, 300e3, 3e6, 30e6];
/** How much more the neighbourhood of the design frequency counts than the rest of the spectrum. */
const NEAR_WEIGHT = 40;

/**
 * A passive series string of R, L, C, R∥L and R∥C that has the given impedance near one frequency and follows it as
 * well as it can from audio to far above. Fitted with no negative part, so it can never oscillate by itself.
 * @param impedance Ω as a function of frequency. @param frequency where it must be right.
 * @returns sections and the relative error left at `frequency`.
 * @throws RangeError when the impedance at `frequency` is not a finite number.
 */
export function impedanceSections(
  impedance: (frequency: Hertz) => Complex,
  frequency: Hertz,
): { sections: Section[]; misfit: number } {
  const z0 = impedance(frequency);
  if (!Number.isFinite(magnitude(z0))) throw new RangeError(`an impedance at ${frequency} Hz is not a finite number`);
  const points: { w: number; weight: number; z: Complex }[] = [];
  const sample = (f: number, weight: number) => {
    const z = impedance(f);
    const size = magnitude(z);
    if (Number.isFinite(size)) points.push({ w: 2 * Math.PI * f, weight: weight / Math.max(size, 1e-6), z });
  };
  for (let i = 0; i <= 48; i++) sample(50 * ((10 * frequency) / 50) ** (i / 48), 1);
  for (let i = -4; i <= 4; i++) sample(frequency * (1 + 0.0125 * i), NEAR_WEIGHT);
  const unit = basis();
  const n = unit.length;
  const rows = new Float64Array(points.length * 2 * n);
  const target = new Float64Array(points.length * 2);
  points.forEach(({ w, weight, z }, i) => {
    unit.forEach((section, j) => {
      const part = sectionImpedance(section, w);
      rows[2 * i * n + j] = part.re * weight;
      rows[(2 * i + 1) * n + j] = part.im * weight;
    });
    target[2 * i] = z.re * weight;
    target[2 * i + 1] = z.im * weight;
  });
  const size = nonNegativeLeastSquares(rows, target, n);
  const sections = unit
    .map((section, j) => grown(section, size[j]))
    .filter((s): s is Section => s !== undefined)
    .filter((s) => points.some(({ w, weight }) => magnitude(sectionImpedance(s, w)) * weight > 1e-4));
  const w0 = 2 * Math.PI * frequency;
  let re = -z0.re;
  let im = -z0.im;
  for (const section of sections) {
    const part = sectionImpedance(section, w0);
    re += part.re;
    im += part.im;
  }
  return { sections, misfit: Math.hypot(re, im) / Math.max(magnitude(z0), 1e-12) };
}

/** The parts the string may be made of, each of unit size: coefficients multiply impedance. */
function basis(): Section[] {
  return [
    { kind: 'resistance', value: 1 },
    { kind: 'inductance', value: 1 },
    { kind: 'capacitance', value: 1 },
    ...CORNERS_HZ.flatMap((f): Section[] => [
      { kind: 'lag', value: 1, corner: 2 * Math.PI * f },
      { kind: 'choke', value: 1, corner: 2 * Math.PI * f },
    ]),
  ];
}

function grown(section: Section, size: number): Section | undefined {
  if (!(size > 0)) return undefined;
  // A capacitance's impedance falls as it grows.
  return { ...section, value: section.kind === 'capacitance' ? 1 / size : size };
}

function sectionImpedance({ kind, value, corner = 1 }: Section, w: number): Complex {
  switch (kind) {
    case 'resistance':
      return { re: value, im: 0 };
    case 'inductance':
      return { re: 0, im: w * value };
    case 'capacitance':
      return { re: 0, im: -1 / (w * value) };
    case 'lag': {
      const d = corner * corner + w * w;
      return { re: (value * corner * corner) / d, im: (-value * corner * w) / d };
    }
    case 'choke': {
      const d = corner * corner + w * w;
      return { re: (value * w * w) / d, im: (value * corner * w) / d };
    }
  }
}
