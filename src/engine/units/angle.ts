import type { Degrees } from './quantities.ts';

/** The same direction, from 0 to below 360°. */
export const withinTurn = (degrees: Degrees): Degrees => ((degrees % 360) + 360) % 360;

/** The same direction by the shorter way from 0: from −180 to below 180°, as longitudes are. */
export const withinHalfTurn = (degrees: Degrees): Degrees => withinTurn(degrees + 180) - 180;
