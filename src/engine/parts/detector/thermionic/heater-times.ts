import { boundary } from '../../../numerics/roots.ts';
import type { Amperes, Kelvins, Seconds, Volts } from '../../../units/quantities.ts';
import { cold, type Heater, type HeaterState, heatCathode, heatedThrough } from './heater.ts';
import { emission } from './thermionic.ts';

/** A valve whose cathode can emit less than this detects nothing: the currents of a station are of microamperes. */
export const WORKING_EMISSION: Amperes = 10e-6;

/**
 * Single valves of one type take so many times more or less (90 %): how well the wire touches its sleeve varies.
 * A maker's statement of 1963 that single valves differ considerably; the factor is common practice, no source.
 */
const SPREAD = 1.6;

/** A time and its 90 % range. */
export interface HeaterTime {
  readonly time: Seconds;
  readonly range: readonly [low: Seconds, high: Seconds];
}

/** When a valve works after its heater is switched on, and until when after it is switched off. */
export interface HeaterTimes {
  /** From switching on, cold, until the cathode emits `WORKING_EMISSION`. */
  readonly worksAfter: HeaterTime;
  /** From switching off, warmed through, until it no longer does. */
  readonly worksFor: HeaterTime;
}

/** Looked for so far. */
const LONGEST: Seconds = 600;

/** The first time at which a temperature has been passed, by doubling and halving; undefined where it is not. */
function passed(isPast: (T: Kelvins) => boolean, from: HeaterState, volts: Volts, heater: Heater): Seconds | undefined {
  let state = from;
  for (let t = 0; t < LONGEST; t++) {
    const next = heatCathode(state, volts, 1, heater);
    if (isPast(next.cathode)) {
      const [before] = boundary((share) => !isPast(heatCathode(state, volts, share, heater).cathode), 0, 1, 1e-3);
      return t + before;
    }
    state = next;
  }
  return undefined;
}

/**
 * The one statement of how long a valve takes, used wherever times of a heater are stated.
 * @param voltage on the heater, V
 * @param heater its rating
 * @returns times (s) with their 90 % ranges; undefined where the voltage does not bring the cathode to work
 * @throws RangeError when the voltage is beyond 3 times the rated one
 */
export function heaterTimes(voltage: Volts, heater: Heater): HeaterTimes | undefined {
  const warm = heatedThrough(voltage, heater);
  const works = (T: Kelvins) => emission(T) >= WORKING_EMISSION;
  if (!works(warm.cathode)) return undefined;
  const on = passed(works, cold(heater), voltage, heater);
  const off = passed((T) => !works(T), warm, 0, heater);
  if (on === undefined || off === undefined) return undefined;
  const ranged = (time: Seconds): HeaterTime => ({ time, range: [time / SPREAD, time * SPREAD] });
  return { worksAfter: ranged(on), worksFor: ranged(off) };
}
