import type { Decibels, Degrees, Hertz, Metres, Ratio, VoltsPerMetre, Watts } from '../../units/quantities.ts';
import type { Position } from '../geodesy.ts';
import type { PathSection } from '../ground-wave/mixed-path.ts';

/** A transmitter as somebody writes it down. Either a measured field, or a power and where it stands. */
export interface Station {
  readonly name: string;
  /** Hz. */
  readonly frequency: Hertz;
  /** Power of the transmitter, W; not yet counting what the mast does with it. */
  readonly power?: Watts;
  readonly position?: Position;
  /** m, and degrees from the site clockwise from north; used where there is no position. */
  readonly distance?: Metres;
  readonly bearing?: Degrees;
  /** Height of a vertical mast, m; its gain follows. */
  readonly mastHeight?: Metres;
  /** Gain along the ground toward the site over a short mast, losses included, dB; if not 0 it wins over the height's. */
  readonly mastGain?: Decibels;
  /** As measured at the site, V/m r.m.s.; it wins over everything computed. */
  readonly fieldStrength?: VoltsPerMetre;
  /** Depth, 0 to 1 and a little over. */
  readonly modulation?: Ratio;
  readonly programme?: string;
  /** When it is on the air, as "06:00-22:00". */
  readonly hours?: string;
  /** Land and sea on the way from the transmitter, where somebody knows better than the coastline. */
  readonly sections?: readonly PathSection[];
}
