import { formatNumber, formatQuantity } from '../../../../engine/units/format.ts';

export const volts = (v: number): string => formatQuantity(v, 'voltage', 2);
export const amperes = (i: number): string => formatQuantity(i, 'current', 2);
export const duration = (t: number, digits = 2): string => formatQuantity(t, 'time', digits);
export const hertz = (f: number, digits = 4): string => formatQuantity(f, 'frequency', digits);
/** A frequency in kHz. */
export const kilohertz = (f: number, digits = 4): string => `${formatNumber(f / 1e3, digits)} kHz`;
export const percent = (share: number, digits = 2): string => formatQuantity(share, 'ratio', digits);
