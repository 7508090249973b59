/** A figure that others are products of powers of. */
export interface RangedFactor {
  readonly value: number;
  /** 90 %. */
  readonly range: readonly [low: number, high: number];
  /** Default 1. */
  readonly power?: number;
}

/**
 * Range of a product of powers of independent figures, each with its own range: squares of logarithms add.
 * @param value the product, in its own SI unit
 * @param parts what it is a product of
 * @returns 90 %, in the unit of the value
 */
export function productRange(value: number, parts: readonly RangedFactor[]): readonly [low: number, high: number] {
  let below = 0;
  let above = 0;
  for (const { value: now, range, power = 1 } of parts) {
    const ends = range.map((end) => power * Math.log(end / now));
    below += Math.min(0, ...ends) ** 2;
    above += Math.max(0, ...ends) ** 2;
  }
  const [nearer, farther] = [value * Math.exp(-Math.sqrt(below)), value * Math.exp(Math.sqrt(above))];
  return value < 0 ? [farther, nearer] : [nearer, farther];
}
