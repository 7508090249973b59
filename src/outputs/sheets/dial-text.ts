import type { StationReception } from '../../engine/reception/types.ts';
import type { SetDescription } from '../../engine/set/description.ts';
import { formatNumber } from '../../engine/units/format.ts';
import { scaleOf } from './dial-marks.ts';

/** Where a station is on the set's own scale, as its dial sheet has it: degrees, or millimetres of travel. */
export function dialText(set: SetDescription, s: StationReception): string {
  if (!s.dial) return '—';
  const { scale, at } = scaleOf(set);
  return scale.kind === 'straight'
    ? `${formatNumber(at(s.dial.position), 2)} mm`
    : `${Math.round(at(s.dial.position))}°`;
}
