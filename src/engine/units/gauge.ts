import type { Metres, Ratio } from './quantities.ts';

/**
 * British standard wire gauge, inches, by number (BS 3737; the legal sizes of 1883).
 * Source: reference/parts-published.json, entry "swg" (steps and parts of the table looked up, the rest from memory).
 */
const SWG_INCHES: Readonly<Record<string, number>> = {
  '10': 0.128,
  '11': 0.116,
  '12': 0.104,
  '13': 0.092,
  '14': 0.08,
  '15': 0.072,
  '16': 0.064,
  '17': 0.056,
  '18': 0.048,
  '19': 0.04,
  '20': 0.036,
  '21': 0.032,
  '22': 0.028,
  '23': 0.024,
  '24': 0.022,
  '25': 0.02,
  '26': 0.018,
  '27': 0.0164,
  '28': 0.0148,
  '29': 0.0136,
  '30': 0.0124,
  '31': 0.0116,
  '32': 0.0108,
  '33': 0.01,
  '34': 0.0092,
  '35': 0.0084,
  '36': 0.0076,
  '37': 0.0068,
  '38': 0.006,
  '39': 0.0052,
  '40': 0.0048,
  '41': 0.0044,
  '42': 0.004,
  '43': 0.0036,
  '44': 0.0032,
  '45': 0.0028,
  '46': 0.0024,
  '47': 0.002,
  '48': 0.0016,
};

/** A standard series of wire sizes: the British SWG or the American AWG. */
export type Gauge = 'SWG' | 'AWG';

const SWG_NAME = String.raw`s\.?w\.?g\.?`;
const AWG_NAME = String.raw`a\.?w\.?g\.?|b\s*&\s*s`;
const NAME = `(${SWG_NAME}|${AWG_NAME})`;
const SIZE = new RegExp(
  String.raw`^\s*(?:#\s*(\d+)|(\d+)\s*${NAME}|#\s*(\d+)\s*${NAME}|${NAME}\s*#?\s*(\d+))\s*$`,
  'i',
);
const IS_SWG = new RegExp(`^${SWG_NAME}$`, 'i');

/**
 * A size of wire by its gauge: "28 SWG", "SWG 28", "28 s.w.g.", "24 AWG", "24 B&S" (Brown & Sharpe, another name of AWG)
 * or "#24", the American way of marking it.
 * @param text what somebody wrote
 * @returns the gauge and the number, whether or not the gauge has it; undefined for what is no gauge size
 */
export function readGauge(text: string): { readonly gauge: Gauge; readonly number: number } | undefined {
  const match = SIZE.exec(text);
  if (!match) return undefined;
  const [, marked, before, nameAfter, markedBefore, nameMarked, nameFirst, after] = match;
  const name = nameAfter ?? nameMarked ?? nameFirst;
  return {
    gauge: name !== undefined && IS_SWG.test(name) ? 'SWG' : 'AWG',
    number: Number(marked ?? before ?? markedBefore ?? after),
  };
}

/**
 * Bare diameter of a gauge number.
 * AWG by ASTM B258: 0.127 mm × 92^((36 − n)/39).
 * @param gauge SWG or AWG
 * @param number the size: SWG 10 to 48, AWG 0 to 44
 * @returns metres, or undefined for a number the gauge does not have (SWG 10–48, AWG 0–44).
 */
export function gaugeDiameter(gauge: Gauge, number: number): Metres | undefined {
  if (gauge === 'SWG') {
    const inches = SWG_INCHES[String(number)];
    return inches === undefined ? undefined : inches * 0.0254;
  }
  if (!(Number.isInteger(number) && number >= 0 && number <= 44)) return undefined;
  return 0.127e-3 * 92 ** ((36 - number) / 39);
}

/**
 * The gauge size nearest to a bare diameter, for labels.
 * @param gauge SWG or AWG
 * @param diameter bare, m
 * @returns e.g. { number: 28, error: 0.004 } (relative).
 */
export function nearestGauge(gauge: Gauge, diameter: Metres): { number: number; error: Ratio } {
  const numbers = gauge === 'SWG' ? Object.keys(SWG_INCHES).map(Number) : Array.from({ length: 45 }, (_, n) => n);
  let best = { number: numbers[0], error: Number.POSITIVE_INFINITY };
  for (const number of numbers) {
    const error = gaugeDiameter(gauge, number)! / diameter - 1;
    if (Math.abs(error) < Math.abs(best.error)) best = { number, error };
  }
  return best;
}
