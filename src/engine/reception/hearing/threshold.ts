import { monotoneCurve } from '../../numerics/monotone.ts';
import type { Decibels, Hertz } from '../../units/quantities.ts';

/**
 * ISO 226:2003 Table 1: threshold (that of ISO 389-7: both ears, free field, from the front) by frequency. Provenance in
 * reference/hearing.json.
 */
const TABLE: readonly (readonly [f: Hertz, Tf: Decibels])[] = [
  [20, 78.5],
  [25, 68.7],
  [31.5, 59.5],
  [40, 51.1],
  [50, 44],
  [63, 37.5],
  [80, 31.5],
  [100, 26.5],
  [125, 22.1],
  [160, 17.9],
  [200, 14.4],
  [250, 11.4],
  [315, 8.6],
  [400, 6.2],
  [500, 4.4],
  [630, 3],
  [800, 2.2],
  [1000, 2.4],
  [1250, 3.5],
  [1600, 1.7],
  [2000, -1.3],
  [2500, -4.2],
  [3150, -6],
  [4000, -5.4],
  [5000, -1.5],
  [6300, 6],
  [8000, 12.6],
  [10000, 13.9],
  [12500, 12.3],
];

/** Supra-aural earphone on an ear simulator, one ear: ANSI S3.6-2010, as ISO 389-1. */
const EARPHONE: readonly (readonly [f: Hertz, level: Decibels])[] = [
  [125, 45],
  [160, 38.5],
  [200, 32.5],
  [250, 27],
  [315, 22],
  [400, 17],
  [500, 13.5],
  [630, 10.5],
  [800, 8.5],
  [1000, 7.5],
  [1250, 7.5],
  [1600, 8],
  [2000, 9],
  [2500, 10.5],
  [3150, 11.5],
  [4000, 12],
  [5000, 11],
  [6300, 21],
  [8000, 15.5],
];

/** Between the tabulated frequencies: a smooth curve over the logarithm of frequency. */
const overLog = (points: readonly (readonly [Hertz, number])[]) => {
  const curve = monotoneCurve(
    points.map(([f]) => Math.log(f)),
    points.map(([, y]) => y),
  );
  return (f: Hertz): number => curve.at(Math.log(f));
};
const threshold = overLog(TABLE);
const earphone = overLog(EARPHONE);

/**
 * Of people of 20 to 65 over the young, healthy ear of the standards, 1 to 2 kHz: 5th percentile, median and 95th, dB.
 * ISO 7029:2000, from memory, averaged over those ages.
 */
export const LISTENERS: readonly [low: Decibels, usual: Decibels, high: Decibels] = [-7, 4, 20];

/** What two ears hear better than one, dB. From memory: 1.5 to 3. */
const TWO_EARS: Decibels = 2;

/**
 * The quietest tone a young, healthy ear hears with no other sound, dB SPL.
 * @param f Hz, 20 to 12500; outside that the end value.
 * @param how "free field" as ISO 389-7 (sound from in front, measured without the head); "phones" as ISO 389-1 (measured
 * in an ear simulator, which is how phones are rated). They differ: by 20 dB at 125 Hz.
 * @param ears default 2.
 */
export function hearingThreshold(f: Hertz, how: 'free field' | 'phones' = 'free field', ears: 1 | 2 = 2): Decibels {
  if (!(f > 0)) throw new RangeError(`frequency must be above 0, got ${f}`);
  if (how === 'free field') return threshold(f) + (ears === 1 ? TWO_EARS : 0);
  // Beyond the earphone table it keeps its distance from the free field.
  const at = Math.min(8000, Math.max(125, f));
  return earphone(at) + threshold(f) - threshold(at) - (ears === 2 ? TWO_EARS : 0);
}
