import type { Decibels, Degrees, Hertz } from '../../units/quantities.ts';
import type { NoiseFigure } from './man-made.ts';

/*
 * Medians of atmospheric noise, F_a in dB over kT₀b, at 150, 250, 531, 1000 and 1602 kHz for three blocks of local time.
 * Temperate: means of three European places; tropical: one place on the equator in Africa. Thinned from
 * reference/propagation-checks.json, "p372-atm", which was computed with the open ITU implementation of Rec. ITU-R P.372;
 * its coefficient files are not used here. Single places differ by 10 dB, and a stormy continental summer is 20 dB above.
 */
const FREQUENCIES = [150e3, 250e3, 531e3, 1000e3, 1602e3] as const;
type Row = readonly [number, number, number, number, number];
type Block = 'small hours' | 'afternoon' | 'evening';
type Zone = Readonly<Record<Block, Row>>;

const TEMPERATE: { winter: Zone; summer: Zone } = {
  winter: {
    'small hours': [106.6, 96.1, 81.7, 71.6, 65.6],
    afternoon: [84.3, 71.7, 54.5, 42.2, 34.8],
    evening: [104.1, 93.7, 79.7, 69.9, 63.9],
  },
  summer: {
    'small hours': [106.9, 95.3, 79.5, 68.9, 63.3],
    afternoon: [92.0, 77.9, 57.9, 43.4, 35.0],
    evening: [106.9, 95.6, 80.1, 69.3, 63.2],
  },
};
const TROPICAL: Zone = {
  'small hours': [118.2, 109.3, 96.2, 86.0, 78.8],
  afternoon: [110.5, 99.9, 84.9, 72.9, 64.4],
  evening: [117.2, 108.3, 95.4, 85.2, 77.8],
};

/**
 * The six blocks of local time from midnight. Three are in the table; between them the share of night is put in by how
 * long the dark lasts in the season (common sense, no source): [block by night, share of night in winter, in summer].
 */
const BLOCKS: readonly (readonly [Block, number, number])[] = [
  ['small hours', 1, 1], // 00-04
  ['small hours', 0.75, 0.25], // 04-08
  ['small hours', 0, 0], // 08-12
  ['evening', 0, 0], // 12-16
  ['evening', 0.75, 0.25], // 16-20
  ['evening', 1, 1], // 20-24
];

/** What the season and the time are for the storms. */
export interface AtmosphericTime {
  /** Degrees north. */
  readonly latitude: Degrees;
  /** 1 to 12. */
  readonly month: number;
  /** Local solar time, hours, 0 to 24. */
  readonly localHour: number;
}

/**
 * Atmospheric noise (distant lightning), rough: a small table by season, time of day and zone.
 * Median within about ±10 dB by night and ±15 dB by day, as `above` and `below` say.
 * @param frequency Hz; 150 to 1700 kHz, held straight in log f beyond.
 */
export function atmosphericNoise(frequency: Hertz, { latitude, month, localHour }: AtmosphericTime): NoiseFigure {
  if (!(frequency > 0 && frequency < Number.POSITIVE_INFINITY))
    throw new RangeError(`frequency must be above 0 Hz, got ${frequency}`);
  if (!(Math.abs(latitude) <= 90)) throw new RangeError(`latitude must be within 90°, got ${latitude}`);
  if (!(month >= 1 && month <= 12)) throw new RangeError(`month must be from 1 to 12, got ${month}`);
  if (!(localHour >= 0 && localHour <= 24)) throw new RangeError(`hour must be from 0 to 24, got ${localHour}`);
  // From 0 in January to 1 in July in the north, the other way in the south, no seasons on the equator.
  const northern = 0.5 - 0.5 * Math.cos(((month - 1) / 6) * Math.PI);
  const summer = 0.5 + Math.min(1, Math.max(-1, latitude / 15)) * (northern - 0.5);
  const tropical = Math.min(1, Math.max(0, (40 - Math.abs(latitude)) / 25));
  // Between the middles of the blocks straight lines, as P.372's own procedure has it.
  const place = localHour / 4 - 0.5;
  const first = Math.floor(place);
  const share = place - first;
  const at = (block: number): { figure: number; night: number } => {
    const [dark, winterNight, summerNight] = BLOCKS[(block + 6) % 6];
    const night = winterNight + (summerNight - winterNight) * summer;
    const zone = (of: Zone) =>
      night * interpolate(of[dark], frequency) + (1 - night) * interpolate(of.afternoon, frequency);
    const temperate = (1 - summer) * zone(TEMPERATE.winter) + summer * zone(TEMPERATE.summer);
    return { figure: tropical * zone(TROPICAL) + (1 - tropical) * temperate, night };
  };
  const a = at(first);
  const b = at(first + 1);
  const spread: Decibels = 15 - 5 * ((1 - share) * a.night + share * b.night);
  return { figure: (1 - share) * a.figure + share * b.figure, above: spread, below: spread };
}

function interpolate(row: Row, frequency: Hertz): Decibels {
  let i = 0;
  while (i < FREQUENCIES.length - 2 && frequency > FREQUENCIES[i + 1]) i++;
  const along = Math.log(frequency / FREQUENCIES[i]) / Math.log(FREQUENCIES[i + 1] / FREQUENCIES[i]);
  return row[i] + (row[i + 1] - row[i]) * along;
}
