import * as v from 'valibot';
import {
  choice,
  frequency,
  list,
  number,
  object,
  part,
  quantityField,
  ratio,
  whole,
  withDefault,
  words,
} from '../fields/fields.ts';
import { LIMITS } from '../fields/limits.ts';
import { refuse } from '../fields/refusal.ts';
import { measuredStation } from '../kinds/measured/measured-schema.ts';
import { givenValue } from '../units/refusal.ts';

const ENVIRONMENTS = ['city', 'residential', 'rural', 'quiet rural'] as const;
const GROUNDS = ['sea', 'fresh water', 'wet', 'average', 'dry', 'very dry'] as const;
const TIMES_OF_DAY = ['day', 'night'] as const;
export const PROGRAMMES = ['speech', 'music', 'mixed', 'tone'] as const;

/** More than any receiver hears, and few enough to work out. */
export const MOST_STATIONS = 1000;

const fieldStrength = quantityField('station.fieldStrength', 'field strength', {
  ...LIMITS.fieldStrength,
  typical: [1e-5, 0.1],
});
const position = object({
  latitude: quantityField('position.latitude', 'latitude', { min: -90, max: 90 }),
  longitude: quantityField('position.longitude', 'longitude', { min: -180, max: 180 }),
});
const ground = v.union(
  [
    choice('ground.kind', GROUNDS),
    object({
      conductivity: quantityField('ground.conductivity', 'conductivity', {
        ...LIMITS.conductivity,
        typical: [1e-4, 5],
      }),
      permittivity: number('ground.permittivity', LIMITS.permittivity.min, LIMITS.permittivity.max, [3, 80]),
    }),
  ],
  refuse((issue) => ({
    expected: { code: 'one-of-or-object', options: GROUNDS, keys: ['conductivity', 'permittivity'] },
    given: givenValue(issue.input),
  })),
);

const section = object({
  length: quantityField('section.length', 'length', { ...LIMITS.distance, typical: [1e3, 1e6] }),
  ground: part('ground.part', ground),
});

export const station = v.pipe(
  object({
    name: v.pipe(words('station.name', 80), v.minLength(1, refuse({ code: 'a-name' }))),
    frequency: frequency('station.frequency', { min: 1e5, max: 2e6, typical: [1.5e5, 1.62e6] }),
    fieldStrength: v.optional(fieldStrength),
    power: v.optional(quantityField('station.power', 'power', { ...LIMITS.power, typical: [1e2, 1e6] })),
    distance: v.optional(quantityField('station.distance', 'length', { ...LIMITS.distance, typical: [1e3, 2e6] })),
    bearing: v.optional(quantityField('station.bearing', 'bearing', { ...LIMITS.angle, typical: [0, 360] })),
    position: v.optional(part('position.part', position)),
    mastGain: withDefault(quantityField('station.mastGain', 'level', { min: -40, max: 20, typical: [-3, 6] }), '0 dB'),
    mastHeight: v.optional(quantityField('station.mastHeight', 'length', { min: 1, max: 1000, typical: [30, 400] })),
    modulation: withDefault(ratio('station.modulation', { ...LIMITS.modulation, typical: [0.1, 1] }), '60 %'),
    programme: withDefault(choice('station.programme', PROGRAMMES), 'speech'),
    hours: v.optional(words('station.hours', 40)),
    sections: v.optional(list('station.sections', 'sections', section, { max: 50 })),
    measured: measuredStation,
  }),
  v.check(
    (s) =>
      s.fieldStrength !== undefined ||
      s.measured?.fieldStrength !== undefined ||
      (s.power !== undefined && (s.distance !== undefined || s.position !== undefined)),
    refuse({ code: 'field-or-power' }),
  ),
  // A field that was measured wins over one that was read from a map, and over power and distance.
  v.transform((s) => (s.measured?.fieldStrength ? { ...s, fieldStrength: s.measured.fieldStrength.value } : s)),
);

const listening = v.union(
  [
    choice('listening.time', TIMES_OF_DAY),
    object({
      month: whole('listening.month', 1, 12),
      hour: number('listening.hour', 0, 24, [0, 24]),
    }),
  ],
  refuse((issue) => ({
    expected: { code: 'one-of-or-object', options: TIMES_OF_DAY, keys: ['month', 'hour'] },
    given: givenValue(issue.input),
  })),
);

export const place = object({
  name: words('place.name', 80),
  notes: v.optional(words('place.notes', 20_000)),
  position: v.optional(part('position.part', position)),
  ground: withDefault(part('ground.part', ground), 'average'),
  environment: withDefault(choice('place.environment', ENVIRONMENTS), 'residential'),
  localNoise: v.optional(
    quantityField('place.localNoise', 'field strength', {
      min: LIMITS.fieldStrength.min,
      max: 1,
      typical: [1e-7, 1e-3],
    }),
  ),
  sunspots: v.optional(number('place.sunspots', 0, 400, [0, 200])),
  listening: v.optional(part('listening.part', listening)),
  stations: list('station.list', 'stations', station, { max: MOST_STATIONS }),
});
/** Where the set stands: position, ground, surroundings, and the stations of the place (SI). */
export type PlaceDescription = v.InferOutput<typeof place>;
export type StationDescription = v.InferOutput<typeof station>;

const ROOMS = ['night', 'quiet room', 'living room', 'workshop', 'out of doors'] as const;
export const ear = object({ room: withDefault(choice('ear.room', ROOMS), 'quiet room') });
