import type { Wire } from '../../parts/wire/wire.ts';
import type { Wire as WireDescription } from './wire-schema.ts';

/** A described wire as the models of coils take it. */
export const wireOf = ({ size, ...wire }: WireDescription): Wire => ({ diameter: size, ...wire });
