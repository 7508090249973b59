/**
 * Uniform numbers from 0 to below 1, the same for the same seed everywhere (Steele and Vigna's SplitMix with 32 bits).
 * @param seed a whole number, of which 32 bits count
 */
export function uniform(seed: number): () => number {
  let state = seed | 0;
  return () => {
    state = (state + 0x9e3779b9) | 0;
    let z = state;
    z = Math.imul(z ^ (z >>> 16), 0x21f0aaad);
    z = Math.imul(z ^ (z >>> 15), 0x735a2d97);
    return ((z ^ (z >>> 15)) >>> 0) / 2 ** 32;
  };
}

/**
 * Normally distributed numbers of unit variance (Box and Muller); the second of each pair is kept in `pair`, not on the heap.
 * @param random uniform from 0 to below 1
 */
export function gaussian(random: () => number): () => number {
  const pair = new Float64Array(1);
  let has = false;
  return () => {
    has = !has;
    if (!has) return pair[0];
    const r = Math.sqrt(-2 * Math.log(1 - random()));
    const a = 2 * Math.PI * random();
    pair[0] = r * Math.sin(a);
    return r * Math.cos(a);
  };
}
