import type { Warning } from '../../facts/warning.ts';
import type { Decibels, Degrees, Hertz, Metres, Ratio, VoltsPerMetre } from '../../units/quantities.ts';
import type { Coast } from '../coast.ts';
import type { GroundWaveCurves } from '../ground-wave/ground-wave.ts';
import type { PathSection } from '../ground-wave/mixed-path.ts';
import type { EnvironmentKind } from '../noise/man-made.ts';
import type { Noise } from '../noise/noise.ts';
import type { SunState } from '../sun.ts';
import type { Site } from './path-to-station.ts';
import type { Station } from './station.ts';

/** The listening place. */
export interface Place extends Site {
  /** Default residential. */
  readonly environment?: EnvironmentKind;
  /** Noise as measured at the site, V/m r.m.s., in `localNoiseBandwidth` (default 2.7 kHz). */
  readonly localNoise?: VoltsPerMetre;
  readonly localNoiseBandwidth?: Hertz;
}

export interface ArrivalOptions {
  /** The moment: decides day or night on each path, the season's lightning, and who is on the air. */
  readonly time?: Date;
  /** Day or night everywhere, whatever the time; needs no positions. */
  readonly light?: 'day' | 'night';
  /** Minutes the stations' written hours are ahead of UTC. Default 0. */
  readonly utcOffset?: number;
  readonly coast?: Coast;
  /** Twelve-month smoothed sunspot number. Default 50. */
  readonly sunspots?: number;
  /** For the noise, Hz. Default 9 kHz. */
  readonly bandwidth?: Hertz;
  readonly earthRadiusFactor?: Ratio;
  /** From `arrivalMemory()`: kept between calls, so that moving the time costs little. */
  readonly memory?: ArrivalMemory;
}

/** What is worth keeping between calls; belongs to whoever made it. */
export interface ArrivalMemory {
  readonly curves: Map<string, GroundWaveCurves>;
  readonly grounds: Map<string, { readonly level: Decibels; readonly coasts: number }>;
}
/**
 * Keeps what has been worked out of paths, for the next question about the same place.
 * @returns an empty memory, to be handed to `arrivals`
 */
export const arrivalMemory = (): ArrivalMemory => ({ curves: new Map(), grounds: new Map() });

/** A field and how far it may honestly be off. */
export interface Estimate {
  /** V/m r.m.s. */
  readonly fieldStrength: VoltsPerMetre;
  /** dB(µV/m). */
  readonly level: Decibels;
  /** ± dB. */
  readonly spread: Decibels;
}

export interface SkyArrival extends Estimate {
  /** Loss of the hour after sunset or before sunrise, dB; 0 deep in the night. */
  readonly hourlyLoss: Decibels;
  /** At the transmitter, degrees above the horizon. */
  readonly departureAngle: Degrees;
  /** dB above the median on one night in ten. */
  readonly decile: Decibels;
}

export interface Neighbour {
  /** Place in the list of stations. */
  readonly index: number;
  readonly name: string;
  /** Its frequency less this one's, Hz. */
  readonly offset: Hertz;
  /** Its level over this one's, dB. */
  readonly difference: Decibels;
}

/** What of one station arrives. */
export interface Arrival {
  readonly index: number;
  readonly station: Station;
  readonly distance?: Metres;
  readonly bearing?: Degrees;
  /** Land and sea from the transmitter. */
  readonly sections: readonly PathSection[];
  readonly ground?: Estimate;
  /** Only by night. */
  readonly sky?: SkyArrival;
  /** The sun at the middle of the path; undefined without a time or a place. */
  readonly sun?: SunState;
  /** Median of everything together, or the measured field. */
  readonly total: Estimate;
  readonly source: 'measured' | 'ground wave' | 'sky wave' | 'both' | 'nothing';
  /** Ground and sky wave are within 10 dB, or the sky wave rules: it will come and go. */
  readonly fading: 'none' | 'slow' | 'deep';
  /** undefined when its hours say nothing. */
  readonly onAir?: boolean;
  readonly noise: Noise;
  /** dB, total over noise. */
  readonly signalToNoise: Decibels;
  /** Others within 20 kHz that are on the air, nearest first. */
  readonly neighbours: readonly Neighbour[];
  readonly warnings: readonly Warning[];
}
