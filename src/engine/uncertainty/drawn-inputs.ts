import type { SetCircuit } from '../built/set-circuit.ts';
import { arrivals } from '../place/stations/arrivals.ts';
import { arrivalsAtPlace, type FieldOptions } from '../reception/path/field.ts';
import type { Ratio } from '../units/quantities.ts';
import { GIVEN_FIELD, measuredField, SKY_WAVE, siteSpread } from './field-draws.ts';
import { fieldFollows } from './fields-together.ts';
import { HEARING, MODULATION, ROOM_NOISE } from './hearing-spreads.ts';
import type { Measurable, PartInput } from './input.ts';
import { setInputs } from './inputs.ts';
import { groundSpread } from './outdoor-spreads.ts';
import type { Spread } from './spread.ts';

/** One thing that is drawn for every set built like one, and how. */
export interface DrawnInput extends Spread {
  readonly input: PartInput | 'ground' | 'site' | 'sky wave' | 'field' | 'modulation' | 'hearing' | 'room noise';
  /** Of a difference; a factor has none. */
  readonly unit?: 'dB' | 'V' | '';
  /** What measuring settles it; left out: nothing does. */
  readonly settledBy?: Measurable;
  /** Place in the set's list of the station it is drawn for; left out: one draw for all. */
  readonly station?: number;
  /** What it is drawn together with: the share that it takes of each one's own normal deviate, the rest being its own. */
  readonly follows?: readonly { readonly input: string; readonly station?: number; readonly share: Ratio }[];
}

const UNITS: Readonly<Partial<Record<DrawnInput['input'], DrawnInput['unit']>>> = {
  ideality: '',
  'contact potential': 'V',
};
const unitOf = (input: DrawnInput['input'], { kind }: Spread) =>
  kind === 'factor' ? undefined : (UNITS[input] ?? 'dB');

/**
 * Everything that is drawn for a set: about what its parts and place have it, and how far from that nine in ten lie.
 * @param circuit the set as parts made and joined.
 * @param options time and coastline, as of `receive`.
 * @returns those of the place, of each station, of the parts and of the listener, with 5th percentile, median and 95th.
 */
export function drawnInputs({ set, ...circuit }: SetCircuit, options: FieldOptions = {}): readonly DrawnInput[] {
  const { place } = set;
  const arriving = arrivals(place, place.stations, arrivalsAtPlace(place, options));
  const one = (input: DrawnInput['input'], spread: Spread, rest: Partial<DrawnInput> = {}): DrawnInput => ({
    input,
    ...spread,
    unit: unitOf(input, spread),
    ...rest,
  });
  const isComputed = arriving.some(({ source, ground }) => source !== 'measured' && ground);
  const ofStations = arriving.flatMap(({ source, ground, sky, sections }, station): DrawnInput[] => {
    const { measured } = place.stations[station];
    const own = { station, settledBy: 'field strength' } as const;
    if (source === 'measured') {
      const follows = fieldFollows(set, station).map(({ other, share }) =>
        other === 'sensitivity' ? { input: other, share } : { input: 'field', station: other, share },
      );
      const spread = measured?.fieldStrength ? measuredField(measured.fieldStrength) : GIVEN_FIELD;
      return [one('field', spread, follows.length > 0 ? { ...own, follows } : own)];
    }
    return [
      ...(ground ? [one('site', siteSpread(sections), own)] : []),
      ...(sky ? [one('sky wave', SKY_WAVE, own)] : []),
    ];
  });
  return [
    ...(isComputed ? [one('ground', groundSpread(place), { settledBy: 'field strength' })] : []),
    ...ofStations,
    ...place.stations.map((_, station) => one('modulation', MODULATION, { station, settledBy: 'modulation' })),
    ...setInputs({ set, ...circuit }).map(({ id, settledBy, spread, follows }) =>
      one(id, spread, {
        settledBy,
        ...(follows && { follows: follows.map(({ other, share }) => ({ input: other, share })) }),
      }),
    ),
    one('hearing', HEARING),
    one('room noise', ROOM_NOISE),
  ];
}
