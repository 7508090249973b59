import type { AerialDescription } from './aerials/aerial-schema.ts';

const GIVEN_KINDS: Readonly<Record<AerialDescription['kind'], boolean>> = {
  'inverted-L': false,
  T: false,
  vertical: false,
  horizontal: false,
  sloping: false,
  bent: false,
  frame: false,
  'ferrite rod': false,
  measured: true,
  impedance: true,
};

/** An aerial described by what it does, not by its sizes. */
export type GivenAerial = Extract<AerialDescription, { kind: 'measured' | 'impedance' }>;

/** Whether an aerial's figures were measured where it hangs, so that what is around it is in them. */
export const isGivenAerial = (aerial: AerialDescription): aerial is GivenAerial => GIVEN_KINDS[aerial.kind];
