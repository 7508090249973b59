import type { Hertz } from '../units/quantities.ts';

/**
 * Broadcasting on long and medium wave in Europe, Africa and western Asia: ITU Radio Regulations, Region 1; the GE75
 * plan's carriers lie within.
 */
export const BANDS = {
  'long wave': { from: 148.5e3, to: 283.5e3 },
  'medium wave': { from: 526.5e3, to: 1606.5e3 },
} as const satisfies Record<string, { readonly from: Hertz; readonly to: Hertz }>;
/** A broadcast band by name. */
export type BandName = keyof typeof BANDS;

/** Between long and medium wave. */
const BETWEEN: Hertz = 385e3;

/** The band that a frequency belongs to, within it or nearer to it than to the other. */
export const nearestBand = (frequency: Hertz): BandName => (frequency < BETWEEN ? 'long wave' : 'medium wave');
