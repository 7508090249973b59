import { formatNumber, formatQuantity } from '../../../../../engine/units/format.ts';
import { bandSpan } from '../../../figures.ts';
import { listOf, plural } from '../../grammar.ts';
import type { TunerId } from '../figures.ts';
import { hertz, kilohertz } from '../format.ts';

export interface TuningPictureFacts {
  readonly tuner: TunerId;
  /** Ends of the tuning range, Hz, and the stations in it. */
  readonly lowest: number;
  readonly highest: number;
  readonly stationsInRange: number;
  readonly station: string;
  readonly carrier: number;
  readonly bandwidth: number;
  /** Strongest others in the range, with what the tuned circuit takes away, dB. */
  readonly others: readonly { readonly name: string; readonly frequency: number; readonly attenuation: number }[];
}

const title = 'Tuning: the resonance moves along the band';

/** What lowers the frequency. */
const LOWER: Readonly<Record<TunerId, string>> = {
  vanes: 'The further the vanes are meshed, the higher the capacitance and the lower the frequency.',
  foil: 'The more the foils overlap, the higher the capacitance and the lower the frequency.',
  tubes: 'The more the tubes overlap, the higher the capacitance and the lower the frequency.',
  book: 'The further the plates are closed, the higher the capacitance and the lower the frequency.',
  slider: 'The more turns are in use, the higher the inductance and the lower the frequency.',
  variometer: 'The more the fields of the two coils add, the higher the inductance and the lower the frequency.',
};
const MOVES: Readonly<Record<TunerId, string>> = {
  vanes: 'A set of vanes turns into the fixed ones and out again.',
  foil: 'One foil slides over the other and back.',
  tubes: 'One tube slides into the other and back.',
  book: 'One plate moves over the other and back.',
  slider: 'A contact slides along the coil and back.',
  variometer: 'One coil turns inside the other and back.',
};

const about = ({ tuner, lowest, highest, stationsInRange }: TuningPictureFacts): string =>
  `${LOWER[tuner]} The tuning range is ${bandSpan(lowest, highest)}, with ${stationsInRange} ${plural(stationsInRange, 'station', 'stations')} in it.`;

function moves({ tuner, station, carrier, bandwidth, others }: TuningPictureFacts): string {
  const curve = `${MOVES[tuner]} Beside it the resonance curve moves along the band. Every station is a pale bar, as tall as it is received; the dark part of a bar is what the tuned circuit passes. On ${station} (${kilohertz(carrier)}) the bandwidth is ${hertz(bandwidth, 2)} (−3 dB).`;
  const list = listOf(
    others.map((o) => `${o.name} (${kilohertz(o.frequency)}) by ${formatNumber(Math.round(o.attenuation), 3)} dB`),
  );
  return others.length > 0 ? `${curve} It attenuates ${list}.` : curve;
}

export const tuningPicture = {
  title,
  about,
  description: (facts: TuningPictureFacts): string => `${title}. ${moves(facts)} ${about(facts)}`,
  setting: (degrees: number | undefined, capacitance: number | undefined): string =>
    [
      degrees === undefined ? '' : `${formatNumber(degrees, 3)}°`,
      capacitance === undefined ? '' : formatQuantity(capacitance, 'capacitance', 3),
    ]
      .filter(Boolean)
      .join(', '),
  resonance: (frequency: number, bandwidth: number): string =>
    `${kilohertz(frequency)}, bandwidth ${hertz(bandwidth, 2)}`,
  mark: (frequency: number): string => formatNumber(Math.round(frequency / 1e4) * 10, 4),
  unit: 'kHz',
  speed: 'at the speed of a hand',
} as const;
