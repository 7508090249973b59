import * as v from 'valibot';
import { angle, choice, frequency, number, object, ratio, whole, withDefault, words } from '../fields/fields.ts';
import { LIMITS } from '../fields/limits.ts';
import { brief } from '../units/brief.ts';
import { refuse } from '../units/refusal.ts';
import { quantity } from '../units/schema.ts';

const ENVIRONMENTS = ['city', 'residential', 'rural', 'quiet rural'] as const;
const GROUNDS = ['sea', 'fresh water', 'wet', 'average', 'dry', 'very dry'] as const;
export const PROGRAMMES = ['speech', 'music', 'mixed', 'tone'] as const;

/** More than any receiver hears, and few enough to work out. */
export const MOST_STATIONS = 1000;

const fieldStrength = quantity('field strength', {
  ...LIMITS.fieldStrength,
  label: 'Field strength',
  typical: [1e-5, 0.1],
  about: 'As measured or read from a map; it wins over power and distance.',
});
const position = object({
  latitude: quantity('angle', { min: -90, max: 90, label: 'Latitude', about: 'Degrees north; south is negative.' }),
  longitude: quantity('angle', { min: -180, max: 180, label: 'Longitude', about: 'Degrees east; west is negative.' }),
});
const ground = v.union(
  [
    choice('Ground', GROUNDS, 'What lies between the transmitters and you.'),
    object({
      conductivity: quantity('conductivity', { ...LIMITS.conductivity, label: 'Conductivity', typical: [1e-4, 5] }),
      permittivity: number('Permittivity', LIMITS.permittivity.min, LIMITS.permittivity.max, '', [3, 80]),
    }),
  ],
  refuse((issue) => ({
    expected: `one of ${GROUNDS.map((g) => `"${g}"`).join(', ')}, or { conductivity, permittivity }`,
    received: brief(issue.input),
  })),
);

const section = object({
  length: quantity('length', { ...LIMITS.distance, label: 'Length', typical: [1e3, 1e6] }),
  ground,
});

export const station = v.pipe(
  object({
    name: v.pipe(words('Name', '', 80), v.minLength(1, refuse('a name'))),
    frequency: frequency('Frequency', { min: 1e5, max: 2e6, typical: [1.5e5, 1.62e6] }),
    fieldStrength: v.optional(fieldStrength),
    power: v.optional(
      quantity('power', { ...LIMITS.power, label: 'Power', typical: [1e2, 1e6], about: 'Of the transmitter.' }),
    ),
    distance: v.optional(quantity('length', { ...LIMITS.distance, label: 'Distance', typical: [1e3, 2e6] })),
    bearing: v.optional(
      angle('Bearing', { min: -360, max: 360, typical: [0, 360], about: 'From you, clockwise from north.' }),
    ),
    position: v.optional(position),
    mastGain: withDefault(
      quantity('level', {
        min: -40,
        max: 20,
        label: 'Mast gain',
        typical: [-3, 6],
        about: 'Over a short mast, toward you, losses included; 0 if unknown.',
      }),
      '0 dB',
    ),
    mastHeight: v.optional(quantity('length', { min: 1, max: 1000, label: 'Mast height', typical: [30, 400] })),
    modulation: withDefault(
      ratio('Modulation', { ...LIMITS.modulation, typical: [0.1, 1], about: 'Usual depth on peaks of programme.' }),
      '60 %',
    ),
    programme: withDefault(choice('Programme', PROGRAMMES), 'speech'),
    hours: v.optional(words('Hours', 'When it is on the air, in UTC, as "06:00-22:00".', 40)),
    sections: v.optional(
      v.pipe(
        v.array(section, refuse('a list of sections')),
        v.maxLength(50, refuse('at most 50 sections')),
        v.metadata({
          label: 'Land and sea on the way',
          about: 'From the transmitter to you, where you know better than the map; stretched to the distance.',
        }),
      ),
    ),
  }),
  v.check(
    (s) =>
      s.fieldStrength !== undefined ||
      (s.power !== undefined && (s.distance !== undefined || s.position !== undefined)),
    refuse('a fieldStrength, or a power with a distance or a position'),
  ),
);

const listening = v.union(
  [
    choice('Time of day', ['day', 'night'], 'What page and commands begin with; day if left out.'),
    object({
      month: whole('Month', 1, 12, 'In its middle; the sun at the middle of each path decides.'),
      hour: number('Hour', 0, 24, 'UTC, such as 21.5 for half past nine in the evening.', [0, 24]),
    }),
  ],
  refuse((issue) => ({
    expected: 'one of "day", "night", or { month, hour }',
    received: brief(issue.input),
  })),
);

export const place = object({
  name: words('Name', '', 80),
  position: v.optional(position),
  ground: withDefault(ground, 'average'),
  environment: withDefault(
    choice('Surroundings', ENVIRONMENTS, 'Man-made noise comes with neighbours.'),
    'residential',
  ),
  localNoise: v.optional(
    quantity('field strength', {
      min: LIMITS.fieldStrength.min,
      max: 1,
      label: 'Local noise',
      typical: [1e-7, 1e-3],
      about: 'As measured at the site in 2.7 kHz, if worse than usual.',
    }),
  ),
  sunspots: v.optional(
    number('Sunspot number', 0, 400, 'Smoothed over twelve months, for the sky wave; 50 if left out.', [0, 200]),
  ),
  listening: v.optional(listening),
  stations: v.pipe(
    v.array(station, refuse('a list of stations')),
    v.maxLength(MOST_STATIONS, refuse(`at most ${MOST_STATIONS} stations`)),
  ),
});
export type PlaceDescription = v.InferOutput<typeof place>;
export type StationDescription = v.InferOutput<typeof station>;

const ROOMS = ['night', 'quiet room', 'living room', 'workshop', 'out of doors'] as const;
export const ear = object({ room: withDefault(choice('Listening in', ROOMS), 'quiet room') });
