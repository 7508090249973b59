import { compassPoint } from '../../../../engine/place/geodesy.ts';
import type { Arrival, Neighbour } from '../../../../engine/place/stations/arrival.ts';
import type { Disturbance } from '../../../../engine/reception/path/types.ts';
import type { RangedArrival } from '../../../../engine/uncertainty/ranged-field.ts';
import { formatNumber, formatQuantity } from '../../../../engine/units/format.ts';
import { spanBeside } from '../../ranges.ts';
import { interferenceWords } from '../reception/interference.ts';

const COMPASS: Readonly<Record<ReturnType<typeof compassPoint>, string>> = {
  north: 'north',
  'north-east': 'north-east',
  east: 'east',
  'south-east': 'south-east',
  south: 'south',
  'south-west': 'south-west',
  west: 'west',
  'north-west': 'north-west',
};

/** Fields below this, V/m, are under any noise there is; their figures would only look like knowledge. */
const LEAST_SHOWN = 1e-6;

const signed = (x: number): string => `${x > 0 ? '+' : ''}${formatNumber(x, 3)}`;

/** Stations as they arrive at a place. */
export const placeTableWords = {
  columns: {
    station: 'station',
    band: 'band',
    frequency: 'kHz',
    distance: 'distance',
    bearing: 'bearing',
    day: 'by day (90 %)',
    night: 'by night (90 %)',
    propagation: 'propagation',
    verdict: 'with this set',
    interference: 'interference',
    neighbour: 'strongest neighbour',
  },
  noInterference: 'none',
} as const;

/** "1.2 mV/m (0.7–2.1)": the median and its 90 % range; a dash for nothing. */
export const estimateText = ({ fieldStrength, range }: RangedArrival['total']): string =>
  fieldStrength > 0 && fieldStrength < LEAST_SHOWN
    ? 'below 1 µV/m'
    : fieldStrength > 0
      ? `${formatQuantity(fieldStrength, 'field strength', 2)}${range ? ` ${spanBeside(fieldStrength, range, 'field strength', 2)}` : ''}`
      : '—';

/** "74° east": degrees, and the point of the compass. Empty where it is not known. */
export const bearingText = (bearing: number | undefined): string =>
  bearing === undefined ? '' : `${Math.round(bearing) % 360}° ${COMPASS[compassPoint(bearing)]}`;

/** How a station arrives by day and by night. */
export function propagationText({
  dayBy,
  nightBy,
  fading,
}: {
  readonly dayBy: Arrival['source'];
  readonly nightBy: Arrival['source'];
  readonly fading: Arrival['fading'];
}): string {
  if (dayBy === 'measured') return 'measured';
  if (dayBy === 'nothing' && nightBy === 'nothing') return 'not known';
  if (fading === 'deep') return 'ground wave; at night sky wave too, fading';
  return nightBy === 'sky wave' ? 'ground wave; sky wave at night' : 'ground wave';
}

/** "Radio Corvale −9 kHz, +12 dB". */
export const neighbourText = ({ name, offset, difference }: Neighbour): string =>
  offset === 0
    ? `${name} same channel, ${signed(Math.round(difference))} dB`
    : `${name} ${signed(offset / 1e3)} kHz, ${signed(Math.round(difference))} dB`;

/** "Radio Corvale: interferes". */
export const disturbedByText = ({ by, effect }: Pick<Disturbance, 'by' | 'effect'>): string =>
  `${by}: ${interferenceWords[effect]}`;

/** A warning about the arrival of stations. @param stations their names; undefined for all that are listed. */
export const arrivalWarning = (stations: readonly string[] | undefined, warning: string): string =>
  stations === undefined ? `All stations: ${warning}` : `${stations.join(', ')}: ${warning}`;
