import * as v from 'valibot';
import { list, object, part, withDefault, words } from '../fields/fields.ts';
import { refuse } from '../fields/refusal.ts';
import { aerial } from '../kinds/aerials/aerial-schema.ts';
import { arrangement } from '../kinds/arrangements/arrangement-schema.ts';
import { coil } from '../kinds/coils/coil-schema.ts';
import { detector } from '../kinds/detectors/detector-schema.ts';
import { earth } from '../kinds/earths/earth-schema.ts';
import { load } from '../kinds/loads/load-schema.ts';
import { tuning } from '../kinds/tunings/tuning-schema.ts';
import { assumed } from './assumed.ts';
import { bands } from './band-schema.ts';
import { correlations } from './correlations.ts';
import { ear, place } from './place.ts';
import { recording, scenes } from './scenes.ts';
import { keep, wants } from './wants.ts';

export const FORMAT = 'faintwave-set/1';

/** Measurements that a description keeps. */
const MOST_READINGS_KEPT = 200;

/** A whole set as written in a file. Unknown keys are allowed everywhere and kept. */
export const description = object({
  format: v.literal(FORMAT, refuse({ code: 'literal', value: FORMAT })),
  name: v.pipe(words('set.name', 120), v.minLength(1, refuse({ code: 'a-name' }))),
  notes: v.optional(words('set.notes', 20_000)),
  place: part('set.place', place),
  aerial: part('set.aerial', aerial),
  earth: part('set.earth', earth),
  coils: list('set.coils', 'coils', coil, { max: 12 }),
  tuning: part('set.tuning', tuning),
  arrangement: part('set.arrangement', arrangement),
  bands: v.optional(bands),
  detector: part('set.detector', detector),
  load: part('set.load', load),
  ear: withDefault(part('set.ear', ear), { room: 'quiet room' }),
  wants: v.optional(wants),
  keep: v.optional(keep),
  assumed: v.optional(assumed),
  scenes: v.optional(scenes),
  recording: v.optional(recording),
  readings: v.optional(list('set.readings', 'readings', v.unknown(), { max: MOST_READINGS_KEPT })),
  correlations: v.optional(correlations),
});

/** A description as read: plain SI numbers, defaults filled in. What the engine calls a set. */
export type SetDescription = v.InferOutput<typeof description>;
/** A description as written: quantities may be text. */
export type WrittenDescription = v.InferInput<typeof description>;
