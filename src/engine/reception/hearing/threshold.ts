import { monotoneCurve } from '../../numerics/monotone.ts';
import type { Decibels, Hertz } from '../../units/quantities.ts';

/**
 * ISO 226:2003 Table 1: threshold (that of ISO 389-7: both ears, free field, from the front), exponent of loudness and
 * transfer, by frequency. Provenance in reference/hearing.json.
 */
const TABLE: readonly (readonly [f: Hertz, Tf: Decibels, alpha: number, LU: Decibels])[] = [
  [20, 78.5, 0.532, -31.6],
  [25, 68.7, 0.506, -27.2],
  [31.5, 59.5, 0.48, -23],
  [40, 51.1, 0.455, -19.1],
  [50, 44, 0.432, -15.9],
  [63, 37.5, 0.409, -13],
  [80, 31.5, 0.387, -10.3],
  [100, 26.5, 0.367, -8.1],
  [125, 22.1, 0.349, -6.2],
  [160, 17.9, 0.33, -4.5],
  [200, 14.4, 0.315, -3.1],
  [250, 11.4, 0.301, -2],
  [315, 8.6, 0.288, -1.1],
  [400, 6.2, 0.276, -0.4],
  [500, 4.4, 0.267, 0],
  [630, 3, 0.259, 0.3],
  [800, 2.2, 0.253, 0.5],
  [1000, 2.4, 0.25, 0],
  [1250, 3.5, 0.246, -2.7],
  [1600, 1.7, 0.244, -4.1],
  [2000, -1.3, 0.243, -1],
  [2500, -4.2, 0.243, 1.7],
  [3150, -6, 0.243, 2.5],
  [4000, -5.4, 0.242, 1.2],
  [5000, -1.5, 0.242, -2.1],
  [6300, 6, 0.245, -7.1],
  [8000, 12.6, 0.254, -11.2],
  [10000, 13.9, 0.271, -10.7],
  [12500, 12.3, 0.301, -3.1],
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
const threshold = overLog(TABLE.map(([f, Tf]) => [f, Tf]));
const alpha = overLog(TABLE.map(([f, , a]) => [f, a]));
const transfer = overLog(TABLE.map(([f, , , LU]) => [f, LU]));
const earphone = overLog(EARPHONE);

/** What two ears hear better than one, dB. From memory: 1.5 to 3. */
export const TWO_EARS: Decibels = 2;

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

/** Level of a tone as loud as one of `phon` dB at 1 kHz, free field: ISO 226:2003 eq. (1), 20 to 90 phon. */
export function equalLoudness(f: Hertz, phon: number): Decibels {
  const a = alpha(f);
  const LU = transfer(f);
  const Af = 4.47e-3 * (10 ** (0.025 * phon) - 1.15) + (0.4 * 10 ** ((threshold(f) + LU) / 10 - 9)) ** a;
  return (10 / a) * Math.log10(Af) - LU + 94;
}
