import type { AerialDescription } from './aerials/aerial-schema.ts';
import type { KindOf, Of } from './by-kind.ts';

const LOOP_KINDS = {
  bent: false,
  horizontal: false,
  vertical: false,
  sloping: false,
  'inverted-L': false,
  T: false,
  frame: true,
  'ferrite rod': true,
  measured: false,
  impedance: false,
} as const satisfies Record<KindOf<AerialDescription>, boolean>;

type LoopKind = {
  [K in keyof typeof LOOP_KINDS]: (typeof LOOP_KINDS)[K] extends true ? K : never;
}[keyof typeof LOOP_KINDS];

/** Aerials that are their own coil and need no earth. */
export type LoopDescription = Of<AerialDescription, LoopKind>;

/**
 * Whether an aerial is its own coil and needs no earth: a frame or a ferrite rod.
 * @param aerial as described
 * @returns true narrows it to such an aerial
 */
export const isLoop = (aerial: AerialDescription): aerial is LoopDescription => isLoopKind(aerial.kind);

/** The same of its kind, as written. */
export const isLoopKind = (kind: unknown): kind is LoopKind =>
  typeof kind === 'string' && Object.hasOwn(LOOP_KINDS, kind) && LOOP_KINDS[kind as keyof typeof LOOP_KINDS];
