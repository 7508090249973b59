import { byName } from '../numerics/lazily.ts';
import { decibels } from '../units/quantities.ts';
import { DRAWS, deviates } from './draws.ts';
import type { SetInput } from './input.ts';
import { valueAtDeviate } from './spread.ts';

/** Deviates of inputs by the way they are drawn, so many kept. */
const cache = byName<Float64Array>(100);

/** The deviate of what follows others, from theirs and its own. */
export const following = (shares: readonly { readonly share: number; readonly other: number }[], own: number): number =>
  shares.reduce((sum, { share, other }) => sum + share * other, own * restOf(shares));

/** What is left for an input's own deviate. */
const restOf = (shares: readonly { readonly share: number }[]): number =>
  Math.sqrt(Math.max(0, 1 - shares.reduce((sum, { share }) => sum + share * share, 0)));

const nameOf = ({ id, follows = [] }: SetInput): string =>
  [id, ...follows.map(({ other, share }) => `${other} ${share}`)].join('/');

/** The deviates of an input in every set drawn, together with what it follows. */
export function deviatesOf(input: SetInput): Float64Array {
  const { id, follows = [] } = input;
  if (follows.length === 0) return deviates(id);
  return cache(nameOf(input), () => {
    const own = deviates(id);
    const others = follows.map(({ other, share }) => ({ share, of: deviates(other) }));
    return Float64Array.from({ length: DRAWS }, (_, k) =>
      following(
        others.map(({ share, of }) => ({ share, other: of[k] })),
        own[k],
      ),
    );
  });
}

/** Values of an input in every set drawn, about its middle: dB as they are, or of a factor. */
export function valuesDrawn(input: SetInput): Float64Array {
  const { spread } = input;
  const { kind, low, middle, high } = spread;
  return cache([nameOf(input), kind, low, middle, high].join('/'), () => {
    const about = (value: number): number => (kind === 'factor' ? decibels(value / middle) : value - middle);
    return deviatesOf(input).map((u) => about(valueAtDeviate(spread, u)));
  });
}
