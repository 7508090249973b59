import type { Decibels, Degrees } from '../../units/quantities.ts';

/** Where the sunspot term was measured; elsewhere it is nothing. */
export type SunspotRegion = 'Europe' | 'Australia' | 'North America' | 'elsewhere';

/**
 * Loss per 1000 km at 100 sunspots, dB. Rec. ITU-R P.1147; both divisors and the 45° are from memory (medium
 * confidence), the 60° cap is confirmed by 47 CFR 73.190.
 */
export function sunspotFactor(geomagneticLatitude: Degrees, region: SunspotRegion): Decibels {
  const excess = Math.min(60, Math.abs(geomagneticLatitude)) - 45;
  if (!(excess > 0) || region === 'elsewhere') return 0;
  return region === 'North America' ? excess / 3 : excess / 12;
}

/**
 * Excess polarisation coupling loss of one end, medium wave only: the ionosphere passes a wave of one polarisation,
 * which near the magnetic equator a vertical aerial receives little of.
 * Rec. ITU-R P.1147, constants from memory (medium to high confidence).
 * @param dip of the earth's field, degrees; no loss above 45°.
 * @param fromEastWest angle between the path and the magnetic east-west line, 0 to 90°.
 */
export function polarizationLoss(dip: Degrees, fromEastWest: Degrees): Decibels {
  if (!(Math.abs(dip) <= 45)) return 0;
  return Math.max(0, 180 / Math.sqrt(36 + fromEastWest ** 2 + dip ** 2) - 2);
}

/**
 * Loss while the lower ionosphere fades away after sunset or builds up before sunrise, dB.
 * Rec. ITU-R P.1147, both cubics from memory (medium confidence; they meet 0 within 0.4 dB at the quiet end).
 * @param afterSunset hours since the nearest sunset; used from −1 to +4.
 * @param afterSunrise hours since the nearest sunrise (negative before); used from −3 to +1.
 * @returns 0 outside both ranges: whether it is night there at all is for the caller.
 */
export function hourlyLoss(afterSunset: number, afterSunrise: number): Decibels {
  const t = afterSunset;
  const u = afterSunrise;
  const evening = t >= -1 && t <= 4 ? 12.4 + t * (-9.248 + t * (2.892 - t * 0.3343)) : 0;
  const morning = u >= -3 && u <= 1 ? 9.6 + u * (12.2 + u * (5.62 + u * 0.86)) : 0;
  // In a short night the two ranges overlap; the recommendation does not say, the greater is taken here.
  return Math.max(evening, morning, 0);
}
