import type { StationReception } from '../../../engine/reception/path/types.ts';
import type { SetDescription } from '../../../engine/set/description.ts';
import { formatNumber } from '../../../engine/units/format.ts';
import { type Pointer, pointerOf } from './dial-marks.ts';

/** A position as read off a scale: degrees, or millimetres of travel. */
export const readingText = ({ scale, at }: Pick<Pointer, 'scale' | 'at'>, position: number): string =>
  scale.kind === 'straight' ? `${formatNumber(at(position), 2)} mm` : `${Math.round(at(position))}°`;

/** Where a station is on the set's own scale, as its dial sheet has it. */
export const dialText = (set: SetDescription, s: StationReception): string =>
  s.dial ? readingText(pointerOf(set), s.dial.position) : '—';
