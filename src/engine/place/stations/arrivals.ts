import { type Warning, warning } from '../../facts/warning.ts';
import type { Decibels, Degrees, Hertz } from '../../units/quantities.ts';
import { groundWaveCurves } from '../ground-wave/ground-wave.ts';
import { mixedPath, type PathSection } from '../ground-wave/mixed-path.ts';
import { STANDARD_RADIUS_FACTOR } from '../ground-wave/surface.ts';
import { fieldFromLevel, fieldLevel, powerLevel, sumLevels } from '../levels.ts';
import type { AtmosphericTime } from '../noise/atmospheric.ts';
import { type Noise, noise } from '../noise/noise.ts';
import {
  type Arrival,
  type ArrivalOptions,
  arrivalMemory,
  type Estimate,
  type Neighbour,
  type Place,
  type SkyArrival,
} from './arrival.ts';
import { onAir } from './hours.ts';
import { mastGain } from './mast.ts';
import { pathToStation, type StationPath } from './path-to-station.ts';
import { skyArrival } from './sky-arrival.ts';
import type { Station } from './station.ts';

const NEIGHBOURHOOD: Hertz = 20e3;
const FADING: Decibels = 10;

/**
 * What arrives at a place from a list of stations, in the list's order: ground wave, sky wave by night, both together,
 * how sure that is, the noise it must stand above, and who sits close in frequency.
 * Measured fields win. Nothing here throws for odd stations: what cannot be computed is left out and said.
 * @param place where the set stands, its ground and surroundings
 * @param stations as read, SI
 * @param options time, coastline, sunspots, memory
 * @returns field strengths (V/m, r.m.s.) with their spread (dB)
 * @throws RangeError for an impossible place (latitude, noise bandwidth).
 */
export function arrivals(place: Place, stations: readonly Station[], options: ArrivalOptions = {}): Arrival[] {
  const list = stations.map((station, index) => arrival(place, station, index, options));
  return list.map((one) => ({ ...one, neighbours: neighboursOf(one, list) }));
}

type Alone = Omit<Arrival, 'neighbours'>;

function arrival(place: Place, station: Station, index: number, options: ArrivalOptions): Alone {
  const warnings: Warning[] = [];
  const { time } = options;
  const path = guarded(warnings, () => pathToStation(place, station, options.coast));
  warnings.push(...(path?.warnings ?? []));
  const ground = path && guarded(warnings, () => groundEstimate(path, station, options));
  const night = path && guarded(warnings, () => skyArrival(place.position, path, station, options));
  warnings.push(...(night?.warnings ?? []));
  const sky = night?.sky;
  const on = time && onAir(station.hours, time, options.utcOffset);
  if (on === false) warnings.push(warning('place.off-air'));

  const { total, source, fading } = together(station, ground, sky, warnings);
  const around = noiseAt(place, station.frequency, options);
  return {
    index,
    station,
    distance: path?.distance,
    bearing: path?.bearing,
    sections: path?.sections ?? [],
    ground,
    sky,
    sun: night?.sun,
    total,
    source,
    fading,
    onAir: on,
    noise: around,
    signalToNoise: total.level - around.level,
    warnings,
  };
}

/** Impossible figures of one station become its warning, not the end of the list. */
function guarded<T>(warnings: Warning[], compute: () => T): T | undefined {
  try {
    return compute();
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    warnings.push(warning('place.not-computed', { reason: error.message }));
    return undefined;
  }
}

/**
 * Honest spread of a ground wave, dB: 3 over sea and 4 over land of a guessed kind, 2.5 more in quadrature for each coast
 * (reference/propagation-checks.json, "millington-2"), never said to be worse than 8. The first figures: common practice.
 */
function groundSpread(sections: readonly PathSection[], coasts: number): Decibels {
  const land = sections.some(({ ground }) => ground !== 'sea');
  return Math.min(8, Math.hypot(land ? 4 : 3, 2.5 * Math.sqrt(coasts)));
}

function groundEstimate(path: StationPath, station: Station, options: ArrivalOptions): Estimate | undefined {
  const { power, frequency } = station;
  if (power === undefined) return undefined;
  if (!(power >= 0 && power < Number.POSITIVE_INFINITY))
    throw new RangeError(`power must be 0 W or more, got ${power}`);
  const memory = options.memory ?? arrivalMemory();
  const factor = options.earthRadiusFactor ?? STANDARD_RADIUS_FACTOR;
  const curves = cached(memory.curves, `${frequency}/${factor}`, () =>
    groundWaveCurves({ frequency, earthRadiusFactor: factor }),
  );
  const key = JSON.stringify([frequency, factor, path.sections]);
  const { level, coasts } = cached(memory.grounds, key, () => {
    const field = mixedPath(frequency, path.sections, curves);
    return { level: field.level, coasts: field.sections.length - 1 };
  });
  const total = level + powerLevel(power) + groundGain(station);
  return { ...estimate(total), spread: groundSpread(path.sections, coasts) };
}

/**
 * dB over a short mast, along the ground.
 * @param options frequency (Hz), and mast height (m) or gain (dB)
 * @returns dB
 */
export const groundGain = ({ mastGain: gain, mastHeight, frequency }: Station): Decibels =>
  gain || (mastHeight === undefined ? 0 : mastGain(mastHeight, frequency));

const MOST_REMEMBERED = 5000;
function cached<T>(cache: Map<string, T>, key: string, make: () => T): T {
  let value = cache.get(key);
  if (value === undefined) {
    value = make();
    if (cache.size >= MOST_REMEMBERED) cache.clear();
    cache.set(key, value);
  }
  return value;
}

const estimate = (level: Decibels) => ({ fieldStrength: fieldFromLevel(level), level });
const NOTHING: Estimate = { ...estimate(Number.NEGATIVE_INFINITY), spread: 0 };

function together(
  station: Station,
  ground: Estimate | undefined,
  sky: SkyArrival | undefined,
  warnings: Warning[],
): Pick<Arrival, 'total' | 'source' | 'fading'> {
  const parts = [ground, sky].filter(
    (part) => part !== undefined && part.level > Number.NEGATIVE_INFINITY,
  ) as Estimate[];
  const level = sumLevels(parts.map((part) => part.level));
  const difference =
    ground && sky ? sky.level - ground.level : sky ? Number.POSITIVE_INFINITY : Number.NEGATIVE_INFINITY;
  const fading = Math.abs(difference) <= FADING ? 'deep' : difference > FADING ? 'slow' : 'none';
  if (fading === 'deep') warnings.push(warning('place.fading-deep'));
  else if (fading === 'slow') warnings.push(warning('place.fading-slow'));

  const { fieldStrength } = station;
  if (fieldStrength !== undefined && fieldStrength >= 0) {
    const measured = fieldLevel(fieldStrength);
    if (parts.length > 0 && Math.abs(measured - level) > 20) {
      warnings.push(warning('place.measured-field-differs', { difference: measured - level }));
    }
    return { total: { fieldStrength, level: measured, spread: 2 }, source: 'measured', fading };
  }
  if (parts.length === 0) {
    warnings.push(warning(station.power === 0 ? 'place.no-power' : 'place.strength-unknown'));
    return { total: NOTHING, source: 'nothing', fading: 'none' };
  }
  // The stronger part decides how sure the sum is.
  const weight = (part: Estimate) => 10 ** ((part.level - level) / 10);
  const spread = parts.reduce((sum, part) => sum + weight(part) * part.spread, 0);
  const source = fading === 'deep' ? 'both' : fading === 'slow' ? 'sky wave' : 'ground wave';
  return { total: { ...estimate(level), spread }, source, fading };
}

function noiseAt(place: Place, frequency: Hertz, { time, light, bandwidth = 9000 }: ArrivalOptions): Noise {
  const { localNoise, localNoiseBandwidth = 2700, position } = place;
  const usable = frequency > 0 && frequency < Number.POSITIVE_INFINITY;
  return noise({
    frequency: usable ? frequency : 1e6,
    bandwidth,
    environment: place.environment ?? 'residential',
    time: stormsAt(position?.latitude, position?.longitude, time, light),
    measured:
      localNoise !== undefined && localNoise > 0
        ? { fieldStrength: localNoise, bandwidth: localNoiseBandwidth }
        : undefined,
  });
}

/** Season and local hour for the lightning; without a time there is none, with only day or night the middle of it. */
function stormsAt(
  latitude: Degrees | undefined,
  longitude: Degrees | undefined,
  time: Date | undefined,
  light: ArrivalOptions['light'],
): AtmosphericTime | undefined {
  if (latitude === undefined || longitude === undefined || !time) {
    return light ? { latitude: latitude ?? 50, month: 4, localHour: light === 'day' ? 12 : 0 } : undefined;
  }
  const hours = time.getTime() / 3_600_000 + longitude / 15;
  const localHour = light ? (light === 'day' ? 12 : 0) : ((hours % 24) + 24) % 24;
  return { latitude, month: time.getUTCMonth() + 1, localHour };
}

function neighboursOf(one: Alone, all: readonly Alone[]): Neighbour[] {
  return all
    .filter((other) => {
      const offset = Math.abs(other.station.frequency - one.station.frequency);
      return other !== one && offset <= NEIGHBOURHOOD && other.onAir !== false;
    })
    .map((other) => ({
      index: other.index,
      name: other.station.name,
      offset: other.station.frequency - one.station.frequency,
      difference: other.total.level - one.total.level,
    }))
    .filter(({ difference }) => !Number.isNaN(difference))
    .sort((a, b) => Math.abs(a.offset) - Math.abs(b.offset) || b.difference - a.difference);
}
