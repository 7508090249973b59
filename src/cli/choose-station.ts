import { formatNumber } from '../engine/units/format.ts';
import type { Hertz } from '../engine/units/quantities.ts';
import { InputError } from './command.ts';

/** A station by its frequency in kHz or part of its name. @returns its index. @throws InputError naming those there are. */
export function chooseStation(
  stations: readonly { readonly name: string; readonly frequency: Hertz }[],
  wanted: string | undefined,
  fallback = 0,
): number {
  if (stations.length === 0) throw new InputError('the place of this set lists no stations yet');
  if (wanted === undefined) return fallback;
  const kilohertz = Number(wanted.replace(/\s*kHz$/i, ''));
  const found = stations.findIndex((s) =>
    Number.isFinite(kilohertz)
      ? Math.abs(s.frequency / 1e3 - kilohertz) < 0.6
      : s.name.toLowerCase().includes(wanted.toLowerCase()),
  );
  if (found < 0) {
    throw new InputError(
      `no station "${wanted}"; there are ${stations.map((s) => `${s.name} (${formatNumber(s.frequency / 1e3, 5)} kHz)`).join(', ')}`,
    );
  }
  return found;
}
