/** Numbers from 0 to below 1, the same for the same seed everywhere (the splitmix/mulberry step of 32 bits). */
export function seeded(seed: number): () => number {
  let a = Math.imul(seed | 0, 0x9e3779b1) ^ 0x5bd1e995;
  return () => {
    a = (a + 0x6d2b79f5) | 0;
    let t = Math.imul(a ^ (a >>> 15), 1 | a);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

/** Normally distributed numbers of unit variance (Box and Muller); the second of each pair is kept in `pair`, not on the heap. */
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
