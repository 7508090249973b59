import { byName } from '../numerics/lazily.ts';
import { decibels } from '../units/quantities.ts';
import { DRAWS, deviates } from './draws.ts';
import type { SetInput } from './input.ts';
import { valueAtDeviate } from './spread.ts';

/** Deviates of inputs by the way they are drawn, so many kept. */
const cache = byName<Float64Array>(100);

/** The deviate of what follows another, from that one's and its own. */
export const following = (correlation: number, other: number, own: number): number =>
  correlation * other + Math.sqrt(1 - correlation * correlation) * own;

/** The deviates of an input in every set drawn, together with what it follows. */
export function deviatesOf({ id, follows }: SetInput): Float64Array {
  if (!follows) return deviates(id);
  return cache([id, follows.other, follows.correlation].join('/'), () => {
    const [own, other] = [deviates(id), deviates(follows.other)];
    return Float64Array.from({ length: DRAWS }, (_, k) => following(follows.correlation, other[k], own[k]));
  });
}

/** Values of an input in every set drawn, about its middle: dB as they are, or of a factor. */
export function valuesDrawn(input: SetInput): Float64Array {
  const { id, spread, follows } = input;
  const { kind, low, middle, high } = spread;
  return cache([id, follows?.other, follows?.correlation, kind, low, middle, high].join('/'), () => {
    const about = (value: number): number => (kind === 'factor' ? decibels(value / middle) : value - middle);
    return deviatesOf(input).map((u) => about(valueAtDeviate(spread, u)));
  });
}
