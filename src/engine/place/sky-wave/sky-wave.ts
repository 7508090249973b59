import { type Warning, warning } from '../../facts/warning.ts';
import type { Decibels, Degrees, Hertz, Metres, VoltsPerMetre, Watts } from '../../units/quantities.ts';
import { fieldFromLevel, powerLevel } from '../levels.ts';
import { type SunspotRegion, sunspotFactor } from './losses.ts';

export interface SkyWaveInput {
  /** Hz; the method is for 150 to 1700 kHz. */
  readonly frequency: Hertz;
  /** Great-circle distance, m; the method is for 50 to 12 000 km. */
  readonly distance: Metres;
  /** Degrees, −90 to 90; see `geomagneticLatitude`. */
  readonly transmitterGeomagneticLatitude: Degrees;
  readonly receiverGeomagneticLatitude: Degrees;
  /** Effective monopole radiated power at the departure angle, W. Default 1 kW. */
  readonly power?: Watts;
  /** Twelve-month smoothed sunspot number. Default 0. */
  readonly sunspots?: number;
  /** For the sunspot term. Default Europe. */
  readonly region?: SunspotRegion;
  /** Gain of ends near the sea, dB. Default 0. */
  readonly seaGain?: Decibels;
  /** Sum of both ends, dB; see `polarizationLoss`. Default 0. */
  readonly polarizationLoss?: Decibels;
  /** See `hourlyLoss`. Default 0: four hours after sunset to three before sunrise. */
  readonly hourlyLoss?: Decibels;
  /** Middle of the path in ITU Region 3 south of 11° S, where medium wave does 3 dB better. Default false. */
  readonly southOfRegion3?: boolean;
}

export interface SkyWave {
  /** V/m r.m.s.: annual median of half-hourly medians, as a loop or short vertical at ground level receives it. */
  readonly fieldStrength: VoltsPerMetre;
  /** dB(µV/m). */
  readonly level: Decibels;
  /** Height of reflection used, m. */
  readonly reflectionHeight: Metres;
  /** Length of the slanting path, m. */
  readonly slantDistance: Metres;
  /** dB above the median that one night in ten exceeds (from memory, low confidence). */
  readonly decile: Decibels;
  readonly warnings: readonly Warning[];
}

/** Boundary between low and medium frequency, Hz (ITU Radio Regulations). */
const MEDIUM_FREQUENCY = 300e3;

/** Height of reflection: the E layer, or the F layer for medium wave reflected steeply. From memory, medium confidence. */
export function reflectionHeight(frequency: Hertz, distance: Metres): Metres {
  const limit = 350 + Math.cbrt((2.8e-3 * distance) ** 3 + 300 ** 3); // kHz, with the distance in km
  return frequency <= limit * 1e3 ? 100e3 : 220e3;
}

/**
 * Night sky-wave field strength, E = V + G_S − L_p + A − 20 log p − L_a − L_t − L_r.
 * Source: Rec. ITU-R P.1147-4 (form of the equation looked up). Confirmed by 47 CFR 73.190: A = 107 at medium wave,
 * the loss factor k, the 100 km height and the 60° cap. From memory: A = 110.2 at long wave and 110 in the south, the
 * 220 km height and where it applies, the split beyond 3000 km, the sunspot term, the spread.
 * Values: reference/propagation-checks.json, "p1147-1" and "fcc-sky".
 * @param input frequency (Hz), distance (m), geomagnetic latitudes (degrees), power (W), sunspot number, losses (dB)
 * @returns field strength (V/m, r.m.s.) with its spread (dB)
 * @throws RangeError for impossible input.
 */
export function skyWave(input: SkyWaveInput): SkyWave {
  const { frequency, distance, power = 1000, sunspots = 0, region = 'Europe' } = input;
  const { transmitterGeomagneticLatitude: PhiT, receiverGeomagneticLatitude: PhiR } = input;
  if (!(frequency > 0 && frequency < Number.POSITIVE_INFINITY))
    throw new RangeError(`frequency must be above 0 Hz, got ${frequency}`);
  if (!(distance >= 0 && distance < Number.POSITIVE_INFINITY))
    throw new RangeError(`distance must be 0 m or more, got ${distance}`);
  if (!(power >= 0 && power < Number.POSITIVE_INFINITY))
    throw new RangeError(`power must be 0 W or more, got ${power}`);
  for (const Phi of [PhiT, PhiR])
    if (!(Math.abs(Phi) <= 90)) throw new RangeError(`geomagnetic latitude must be within 90°, got ${Phi}`);

  const long = frequency < MEDIUM_FREQUENCY;
  const d = distance / 1000;
  const height = reflectionHeight(frequency, distance);
  const p = Math.hypot(d, (2 * height) / 1000);
  // Beyond 3000 km the two halves of the path are taken apart.
  const points = d <= 3000 ? [(PhiT + PhiR) / 2] : [(3 * PhiT + PhiR) / 4, (PhiT + 3 * PhiR) / 4];
  const mean = (of: (Phi: Degrees) => number) => points.reduce((sum, Phi) => sum + of(Phi), 0) / points.length;
  const k = mean((Phi) => 2 * Math.PI + 4.95 * Math.tan((Math.min(60, Math.abs(Phi)) * Math.PI) / 180) ** 2);
  const b = mean((Phi) => sunspotFactor(Phi, region));
  const A = long ? 110.2 : input.southOfRegion3 ? 110 : 107;
  const level =
    powerLevel(power) +
    (input.seaGain ?? 0) -
    (input.polarizationLoss ?? 0) +
    A -
    20 * Math.log10(p) -
    k * Math.sqrt(p / 1000) -
    (input.hourlyLoss ?? 0) -
    b * (sunspots / 100) * (p / 1000);

  const warnings: Warning[] = [];
  if (!(frequency >= 150e3 && frequency <= 1705e3)) warnings.push(warning('place.sky-wave-frequency-range'));
  if (!(d >= 50)) warnings.push(warning('place.sky-wave-near'));
  if (!(d <= 12000)) warnings.push(warning('place.sky-wave-far'));
  return {
    fieldStrength: fieldFromLevel(level),
    level,
    reflectionHeight: height,
    slantDistance: p * 1000,
    decile: long ? 6.5 : 8,
    warnings,
  };
}
