/**
 * Wright's omega function: the w > 0 with w + ln w = z, that is W(e^z) of Lambert's W without the overflow.
 * @param z any real number. @returns w, to about 1e-15 relative; 0 where e^z underflows.
 * Source: Corless & Jeffrey, "The Wright ω function" (2002); the step is Fritsch, Shafer & Crowley's (CACM 443, 1973).
 */
export function wrightOmega(z: number): number {
  if (z < -36) return Math.exp(z);
  if (!(z < 1e17)) return z;
  let w: number;
  if (z < 0) {
    // Padé's quotient of the series of W at 0: 1e-15 off at z = -6.5, 4e-6 at -2, 0.5 % at 0.
    const x = Math.exp(z);
    w = (x * (60 + x * (114 + 17 * x))) / (60 + x * (174 + 101 * x));
    if (z < -6.5) return w;
  } else if (z < 3) {
    // Any start within a third will do: the step is of fourth order.
    w = Math.exp((z - 1) * (0.6 - 0.06 * z));
  } else {
    const l = Math.log(z);
    w = z - l + l / z;
  }
  for (let k = 0; k < 4; k++) {
    const r = z - w - Math.log(w);
    const s = 1 + w;
    const q = 2 * s * (s + (2 / 3) * r);
    const step = (r / s) * ((q - r) / (q - 2 * r));
    w *= 1 + step;
    if (Math.abs(r) < 2e-4 * s) break;
  }
  return w;
}
