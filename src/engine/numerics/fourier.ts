/**
 * Discrete Fourier transform in place, radix 2, not scaled: Σ x·exp(−2πi·kn/N).
 * @param re real parts, as many as a power of 2
 * @param im imaginary parts, as many
 * @returns nothing: both arrays have the transform
 */
export function fourierTransform(re: Float64Array, im: Float64Array): void {
  const n = re.length;
  for (let i = 1, j = 0; i < n; i++) {
    let bit = n >> 1;
    for (; j & bit; bit >>= 1) j ^= bit;
    j |= bit;
    if (i < j) {
      [re[i], re[j]] = [re[j], re[i]];
      [im[i], im[j]] = [im[j], im[i]];
    }
  }
  for (let half = 1; half < n; half *= 2)
    for (let k = 0; k < half; k++) {
      const [c, s] = [Math.cos((Math.PI * k) / half), -Math.sin((Math.PI * k) / half)];
      for (let a = k; a < n; a += 2 * half) {
        const b = a + half;
        const x = re[b] * c - im[b] * s;
        const y = re[b] * s + im[b] * c;
        re[b] = re[a] - x;
        im[b] = im[a] - y;
        re[a] += x;
        im[a] += y;
      }
    }
}
