import { decay, dial, resonance, width } from './kinds/coil-kinds.ts';
import { detector } from './kinds/detector-kinds.ts';
import type { Measurement } from './measurement.ts';

const KINDS = { resonance, dial, detector, width, decay };

/** Id of a kind of measurement, as files of readings have it. */
export type MeasurementKind = keyof typeof KINDS;

/** Every kind of measurement, by its id. */
export const MEASUREMENTS: Readonly<Record<MeasurementKind, Measurement>> = KINDS;
