import type { Line } from './lines.ts';
import type { BareTables } from './one-way.ts';
import type { RippleTables } from './recorded-smoothing.ts';
import type { SampledParts } from './sampled-wave.ts';

/** Whatever of a set of waves is kept as samples. */
export type SampledPart =
  | 'programme'
  | 'sent'
  | 'received'
  | 'crowd'
  | 'crowdEnvelope'
  | 'capacitor'
  | 'detectorMean'
  | 'phonesMean';

/**
 * What takes long to work out of a set of waves, as plain data: made in one place (a worker), sent, and put together
 * again in another without working anything out.
 */
export interface WaveParts {
  readonly sampled: Partial<Record<SampledPart, SampledParts>>;
  readonly lines: Partial<Record<'detector' | 'phones', readonly Line[]>>;
  bare?: BareTables;
  ripple?: RippleTables;
}

export const noParts = (): WaveParts => ({ sampled: {}, lines: {} });

/** Every block of memory in them, to be handed over instead of copied. */
export function buffersOf({ sampled, bare, ripple }: WaveParts): ArrayBuffer[] {
  const arrays = [
    ...Object.values(sampled).flatMap(({ samples, lows, highs }) => [samples, ...lows, ...highs]),
    ...(bare ? [bare.at, bare.means] : []),
    ...(ripple ? [ripple.above, ripple.below] : []),
  ];
  return [...new Set(arrays.map((a) => a.buffer as ArrayBuffer))];
}
