import * as v from 'valibot';
import type { FieldId } from '../fields/field-ids.ts';
import {
  capacitance,
  choice,
  frequency,
  lines,
  list,
  number,
  object,
  part,
  quantityField,
  ratio,
  resistance,
  variantMessage,
  voltage,
  whole,
  words,
  yes,
} from '../fields/fields.ts';
import { refuse } from '../fields/refusal.ts';
import { DETECTOR_IDS } from '../parts/detector/library.ts';

/** Where on its path a signal is looked at, in order. */
export const SCENE_POINTS = ['programme', 'carrier', 'modulated', 'tuned', 'detector', 'phones'] as const;
export const SCENE_PICTURES = ['vanes', 'swing', 'curve', 'charge', 'heater', 'aerial'] as const;
/** How fast a scene sounds. */
export const SCENE_SOUNDS = ['real time', 'slowed', 'silent'] as const;
/** Long enough for any story. */
const MOST_SCENES = 200;

const point = choice('scene.point', SCENE_POINTS);
const tone = (field: FieldId) => frequency(field, { min: 50, max: 20e3, typical: [100, 5000] });
const from = quantityField('scene.from', 'time', { min: -10, max: 60 });
const span = quantityField('scene.span', 'time', { min: 1e-9, max: 60 });

const programme = v.variant(
  'kind',
  [
    object({ kind: v.literal('tone'), frequency: tone('scene.programme.frequency') }),
    object({
      kind: v.literal('two tones'),
      first: tone('scene.programme.first'),
      second: tone('scene.programme.second'),
    }),
    object({ kind: v.literal('recording') }),
  ],
  variantMessage('kind'),
);

/** What was turned for a scene; whatever is left out is as in the set. */
const settings = object({
  station: v.optional(whole('scene.settings.station', 0, 10_000)),
  carrier: v.optional(frequency('scene.settings.carrier', { min: 50e3, max: 5e6 })),
  otherBand: v.optional(yes('scene.settings.otherBand')),
  keepsCoil: v.optional(yes('scene.settings.keepsCoil')),
  depth: v.optional(ratio('scene.settings.depth', { min: 0, max: 2 })),
  programme: v.optional(part('scene.programme', programme)),
  detector: v.optional(choice('scene.settings.detector', ['perfect', ...DETECTOR_IDS])),
  capacitance: v.optional(capacitance('scene.settings.capacitance', { max: 1e-4 })),
  resistance: v.optional(resistance('scene.settings.resistance', { min: 10, max: 1e8 })),
  strength: v.optional(voltage('scene.settings.strength', { min: 1e-6, max: 100 })),
  loadedQ: v.optional(number('scene.settings.loadedQ', 0.5, 2000)),
  neighbours: v.optional(yes('scene.settings.neighbours')),
});

/** Of a row, against the usual one. */
export const ROW_HEIGHT = { min: 0.25, max: 6 } as const;

const row = object({
  point,
  title: v.optional(words('scene.row.title', 80)),
  height: v.optional(number('scene.row.height', ROW_HEIGHT.min, ROW_HEIGHT.max)),
  with: v.optional(part('scene.with', settings)),
});

const scene = v.pipe(
  object({
    title: words('scene.title', 120),
    caption: v.optional(words('scene.caption', 600)),
    note: v.optional(words('scene.note', 5000)),
    rows: v.optional(list('scene.rows', 'rows', row, { max: 8 })),
    from: v.optional(from),
    span: v.optional(span),
    to: v.optional(part('scene.to', object({ from, span, seconds: number('scene.to.seconds', 0.5, 120) }))),
    show: v.optional(
      part(
        'scene.show',
        object({
          average: v.optional(yes('scene.show.average')),
          cover: v.optional(yes('scene.show.cover')),
          envelope: v.optional(yes('scene.show.envelope')),
          spectrum: v.optional(yes('scene.show.spectrum')),
          alike: v.optional(yes('scene.show.alike')),
        }),
      ),
    ),
    settings: v.optional(part('scene.settings', settings)),
    picture: v.optional(choice('scene.picture', SCENE_PICTURES)),
    hear: v.optional(choice('scene.hear', SCENE_POINTS)),
    sound: v.optional(choice('scene.sound', SCENE_SOUNDS)),
  }),
  v.check((s) => (s.rows?.length ?? 0) > 0 || s.picture !== undefined, refuse({ code: 'scene-content' })),
);

/** Speech or music that scenes use as the programme: ADPCM of 4 bits in base64url, as `outputs/explain` writes it. */
export const recording = part(
  'set.recording',
  object({
    name: words('scene.recording.name', 60),
    rate: whole('scene.recording.rate', 4000, 48_000),
    samples: lines('scene.recording.samples'),
  }),
);

/** Prepared views of the waves, in order, with which the set explains itself. */
export const scenes = list('set.scenes', 'scenes', scene, { max: MOST_SCENES });
