import type { AerialDescription } from './aerials/aerial-schema.ts';

/** Aerials that are their own coil and need no earth. */
export type LoopDescription = Extract<AerialDescription, { kind: 'frame' | 'ferrite rod' }>;

export const isLoop = (aerial: AerialDescription): aerial is LoopDescription =>
  aerial.kind === 'frame' || aerial.kind === 'ferrite rod';
