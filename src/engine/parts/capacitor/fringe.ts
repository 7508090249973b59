import { EPSILON_0, type Farads, type Metres } from '../../units/quantities.ts';

/**
 * A pair of facing plates has, beside ε₀KA/d, the field round its edge. To first order in d that field is the one round a
 * wire of radius d/(2πe) bent along the edge, so the edge adds ε₀·L/μ₀ with L the (external) inductance of that loop.
 * For a long strip this is d/(πw)(1 + ln 2πw/d) (H. B. Palmer, Trans. AIEE 56, 363 (1937)), for a disc Kirchhoff's
 * a(ln 16πa/d − 1); for a rectangle the loop formula of Grover, Inductance Calculations (1946), ch. 8.
 */
const edgeRadius = (d: Metres): Metres => d / (2 * Math.PI * Math.E);

/** Edge capacitance of rectangular plates in air, over ε₀. */
const rectangleEdge = (a: Metres, b: Metres, d: Metres): number => {
  const r = edgeRadius(d);
  return (
    (a * Math.log((2 * a) / r) +
      b * Math.log((2 * b) / r) +
      2 * Math.hypot(a, b) -
      a * Math.asinh(a / b) -
      b * Math.asinh(b / a) -
      2 * (a + b)) /
    Math.PI
  );
};

/** Facing rectangular plates on both faces of a wider sheet of permittivity K. Good to 1 % while d < 0.05 of the width. */
export function rectangularPlates(length: Metres, width: Metres, separation: Metres, permittivity = 1): Farads {
  const d = separation;
  const edge =
    Math.max(0, rectangleEdge(length, width, d)) * edgePermittivity(Math.min(length, width), d, permittivity);
  return EPSILON_0 * ((permittivity * length * width) / d + edge);
}

/**
 * How much the sheet raises the edge field, which runs partly in the sheet and partly in air: from the effective
 * permittivity of a strip over a ground at half the distance, E. Hammerstad & O. Jensen, IEEE MTT-S Digest 1980, 407.
 */
function edgePermittivity(width: Metres, separation: Metres, K: number): number {
  if (!(K > 1.0001)) return 1;
  const u = (2 * width) / separation;
  const a = 1 + Math.log((u ** 4 + (u / 52) ** 2) / (u ** 4 + 0.432)) / 49 + Math.log(1 + (u / 18.1) ** 3) / 18.7;
  const b = 0.564 * ((K - 0.9) / (K + 3)) ** 0.053;
  const effective = (K + 1) / 2 + ((K - 1) / 2) * (1 + 10 / u) ** (-a * b);
  const flat = width / separation;
  const edge = (1 / Math.PI) * (1 + Math.log(2 * Math.PI * flat));
  return Math.max(1, (effective * (flat + edge) - K * flat) / edge);
}

/**
 * What is left between two plates of equal width slid just apart: two strips edge to edge with a gap of their own
 * separation (conformal map, K(k′)/K(k) with k = g/(g + 2w)), half in the sheet. An estimate, to a third.
 */
export function platesApart(edgeLength: Metres, depth: Metres, separation: Metres, permittivity = 1): Farads {
  const k = separation / (separation + 2 * depth);
  const ratio = completeElliptic(Math.sqrt(1 - k * k)) / completeElliptic(k);
  return ((EPSILON_0 * (1 + permittivity)) / 2) * edgeLength * ratio;
}

/** Complete elliptic integral of the first kind, modulus k, by the arithmetic-geometric mean. */
function completeElliptic(k: number): number {
  let a = 1;
  let b = Math.sqrt(1 - k * k);
  while (Math.abs(a - b) > 1e-15 * a) [a, b] = [(a + b) / 2, Math.sqrt(a * b)];
  return Math.PI / (2 * a);
}
