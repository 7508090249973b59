import { formatQuantity } from '../../../engine/units/format.ts';
import type { Ohms, Volts } from '../../../engine/units/quantities.ts';
import { ohms } from './words.ts';

/** An ordinary meter's last figure stands for about this much; less does not move it. Common practice, no source. */
const LEAST_VOLTS: Volts = 1e-3;
/** Below this the meter's own leads and plugs are a good part of what it shows. Common practice, no source. */
const LEADS_MATTER: Ohms = 2;

export const volts = (v: Volts, digits = 2): string => formatQuantity(Math.abs(v), 'voltage', digits);

/** Whether an ordinary meter would show it. */
export const metered = (v: Volts): boolean => Math.abs(v) > LEAST_VOLTS;

/** A voltage as an ordinary meter gives it. */
export const meterVolts = (v: Volts): string =>
  metered(v) ? volts(v) : `${volts(v)}, too small for an ordinary meter`;

/** A level that may be so many dB out, as a range of volts. */
export function voltRange(v: Volts, spread: number): string {
  const factor = 10 ** (Math.min(Math.abs(spread), 20) / 20);
  return `${volts(v / factor)} to ${volts(v * factor)}`;
}

/** A winding's resistance with what hands and wire make of it, and how to read so little. @param told said before. */
export function windingOhms(r: Ohms, told = false): string {
  const words = `${ohms(r)} (${ohms(r * 0.85)} to ${ohms(r * 1.2)})`;
  if (!leadsMatter(r)) return `${words}.`;
  return told
    ? `${words}, the leads’ reading taken off.`
    : `${words}. For so little touch the meter’s leads together first and take that reading off.`;
}

/** Whether a winding has so little that the meter's leads matter. */
export const leadsMatter = (r: Ohms): boolean => r < LEADS_MATTER;
