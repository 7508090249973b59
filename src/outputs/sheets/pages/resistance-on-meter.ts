import { leadsMatter } from '../../../engine/faults/ohmmeter.ts';
import type { Ohms } from '../../../engine/units/quantities.ts';
import type { MeteredWinding } from '../../words/index.ts';

/**
 * Resistance of a winding comes out within this share: a wire's diameter is held to about 2 %, and the meter to 2 %; the
 * meter's own leads, Ω; and its last figure, Ω. Common practice, no source.
 */
const SHARE = 0.08;
const LEADS = 0.3;
const LAST_FIGURE = 0.1;

/**
 * What an ordinary meter shows of a good winding.
 * @param resistance at rest, Ω
 * @returns Ω; its leads within, or subtracted where they matter
 */
export function resistanceOnMeter(resistance: Ohms): MeteredWinding {
  const [low, high] = [resistance * (1 - SHARE), resistance * (1 + SHARE)];
  return leadsMatter(resistance)
    ? { value: resistance, low: Math.max(low - LAST_FIGURE, 0), high: high + LAST_FIGURE, leads: 'subtracted' }
    : { value: resistance, low, high: high + LEADS, leads: 'within' };
}
