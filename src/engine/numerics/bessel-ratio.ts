/**
 * Ratios q_m = J_{m+1}(z) / J_m(z) of Bessel functions at z = x·e^{−jπ/4}, the argument of eddy currents in a round wire.
 * Only ratios are needed there, and ratios never overflow.
 *
 * Below |z| = 36: q_{m−1} = 1 / (2m/z − q_m), run downwards from an order well above |z| (Abramowitz & Stegun 9.1.27;
 * J is the solution that falls with the order, so the start is forgotten). Above: Hankel's asymptotic series for J₁/J₀
 * (9.2.5–9.2.10; the other exponential is below e^{−50}), then upwards, which is stable while m < |z|.
 *
 * @param x modulus of z, above 0.
 * @param re real parts of q_0 … q_{n−1}, n its length (at most 24).
 * @param im imaginary parts.
 */
export function besselRatios(x: number, re: Float64Array, im: Float64Array): void {
  const n = re.length;
  const zr = x * Math.SQRT1_2;
  const zi = -zr;
  const inv = 1 / (x * x);
  // 1/z = conj(z)/|z|²
  const ur = zr * inv;
  const ui = -zi * inv;
  if (x < 36) {
    let qr = 0;
    let qi = 0;
    for (let m = Math.max(n, Math.ceil(x)) + 28; m >= 1; m--) {
      const dr = 2 * m * ur - qr;
      const di = 2 * m * ui - qi;
      const d = dr * dr + di * di;
      qr = dr / d;
      qi = -di / d;
      if (m <= n) {
        re[m - 1] = qr;
        im[m - 1] = qi;
      }
    }
    return;
  }
  const s0 = hankelSum(0, ur, ui);
  const s1 = hankelSum(1, ur, ui);
  // J1/J0 = e^{−jπ/2} S1/S0
  const d = s0.re * s0.re + s0.im * s0.im;
  const tr = (s1.re * s0.re + s1.im * s0.im) / d;
  const ti = (s1.im * s0.re - s1.re * s0.im) / d;
  re[0] = ti;
  im[0] = -tr;
  for (let m = 1; m < n; m++) {
    const p = re[m - 1] * re[m - 1] + im[m - 1] * im[m - 1];
    re[m] = 2 * m * ur - re[m - 1] / p;
    im[m] = 2 * m * ui + im[m - 1] / p;
  }
}

/** P + jQ of Hankel's expansion for order ν: Σ (jᵏ) a_k(ν) / zᵏ. */
function hankelSum(order: number, ur: number, ui: number) {
  let termR = 1;
  let termI = 0;
  let re = 1;
  let im = 0;
  for (let k = 1; k <= 14; k++) {
    const a = (4 * order * order - (2 * k - 1) ** 2) / (8 * k);
    const r = a * (termR * ur - termI * ui);
    const i = a * (termR * ui + termI * ur);
    termR = -i;
    termI = r;
    re += termR;
    im += termI;
  }
  return { re, im };
}
