/**
 * Modified Bessel functions of order 0 and 1 as the detector needs them: the logarithm of I0 and the ratio I1/I0.
 * Neither overflows, and everything else follows: d ln I0/dx = r and r' = 1 - r/x - r² (DLMF 10.29.3, 10.29.4).
 */
const SMALL = 0.5;
const LARGE = 32;
const STEP = 0.02;
const NODES = Math.round(LARGE / STEP) + 2;

// Σ (x²/4)^k / k!², DLMF 10.25.2: all terms positive, so good to the last digit wherever it does not overflow.
function seriesLogI0(x: number): number {
  const q = (x * x) / 4;
  let term = 1;
  let sum = 0;
  for (let k = 1; term > 1e-17 * sum || k < 3; k++) {
    term *= q / (k * k);
    sum += term;
  }
  return Math.log1p(sum);
}

// I1/I0 = 1/(2/x + 1/(4/x + 1/(6/x + …))), DLMF 10.33.1, from the far end inwards.
function fractionRatio(x: number): number {
  let f = 0;
  for (let k = Math.ceil(20 + 1.5 * x); k >= 1; k--) f = 1 / ((2 * k) / x + f);
  return f;
}

const nodeLog = new Float64Array(NODES);
const nodeRatio = new Float64Array(NODES);
const nodeSlope = new Float64Array(NODES);
for (let i = 0; i < NODES; i++) {
  const x = i * STEP;
  const r = i === 0 ? 0 : fractionRatio(x);
  nodeLog[i] = i === 0 ? 0 : seriesLogI0(x);
  nodeRatio[i] = r;
  nodeSlope[i] = i === 0 ? 0.5 : 1 - r / x - r * r;
}

// r ~ Σ c_k x^-k for large x; the coefficients follow from r' = 1 - r/x - r² order by order.
const TERMS = 9;
const ratioCoefficients = [1];
for (let k = 1; k <= TERMS; k++) {
  let c = (k - 2) * ratioCoefficients[k - 1];
  for (let i = 1; i < k; i++) c -= ratioCoefficients[i] * ratioCoefficients[k - i];
  ratioCoefficients.push(c / 2);
}

function hermite(y0: number, y1: number, d0: number, d1: number, t: number): number {
  const a = d0 * STEP - (y1 - y0);
  const b = y1 - y0 - d1 * STEP;
  return y0 + t * (y1 - y0 + (1 - t) * (a * (1 - t) + b * t));
}

/**
 * Natural logarithm of the modified Bessel function I0.
 * @param x any number (the function is even). @returns ln I0(x) ≥ 0, good to 1e-9 (relative, for small x as well).
 */
export function logI0(x: number): number {
  const a = Math.abs(x);
  if (a < SMALL) {
    const q = (a * a) / 4;
    return Math.log1p(q * (1 + (q / 4) * (1 + (q / 9) * (1 + (q / 16) * (1 + q / 25)))));
  }
  if (a < LARGE) {
    const i = (a / STEP) | 0;
    return hermite(nodeLog[i], nodeLog[i + 1], nodeRatio[i], nodeRatio[i + 1], a / STEP - i);
  }
  // DLMF 10.40.1
  const z = 1 / (8 * a);
  let term = 1;
  let sum = 0;
  for (let k = 1; k <= 7; k++) {
    term *= ((2 * k - 1) * (2 * k - 1) * z) / k;
    sum += term;
  }
  return a - 0.5 * Math.log(2 * Math.PI * a) + Math.log1p(sum);
}

/**
 * Ratio I1(x)/I0(x) of the modified Bessel functions.
 * @param x at least 0. @returns between 0 (x/2 for small x) and 1, good to 1e-9 relative.
 */
export function ratioI1I0(x: number): number {
  if (x < SMALL) {
    const q = (x * x) / 4;
    const i0 = 1 + q * (1 + (q / 4) * (1 + (q / 9) * (1 + (q / 16) * (1 + q / 25))));
    const i1 = 1 + (q / 2) * (1 + (q / 6) * (1 + (q / 12) * (1 + (q / 20) * (1 + q / 30))));
    return ((x / 2) * i1) / i0;
  }
  if (x < LARGE) {
    const i = (x / STEP) | 0;
    return hermite(nodeRatio[i], nodeRatio[i + 1], nodeSlope[i], nodeSlope[i + 1], x / STEP - i);
  }
  const z = 1 / x;
  let sum = 0;
  for (let k = TERMS; k >= 0; k--) sum = sum * z + ratioCoefficients[k];
  return sum;
}
