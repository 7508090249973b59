import * as v from 'valibot';
import {
  capacitance,
  choice,
  frequency,
  number,
  object,
  ratio,
  resistance,
  variantMessage,
  voltage,
  whole,
  words,
  yes,
} from '../fields/fields.ts';
import { DETECTOR_IDS } from '../parts/detector/library.ts';
import { refuse } from '../units/refusal.ts';
import { quantity } from '../units/schema.ts';

/** Where on its path a signal is looked at, in order. */
export const SCENE_POINTS = ['programme', 'carrier', 'modulated', 'tuned', 'detector', 'phones'] as const;
export const SCENE_PICTURES = ['vanes', 'swing', 'curve', 'charge', 'heater', 'aerial'] as const;
/** Long enough for any story. */
const MOST_SCENES = 200;

const point = choice('Point of the path', SCENE_POINTS);
const tone = (label: string) => frequency(label, { min: 50, max: 20e3, typical: [100, 5000] });
const from = quantity('time', { min: -10, max: 60, label: 'From', about: 'Where the view begins.' });
const span = quantity('time', { min: 1e-9, max: 60, label: 'Span', about: 'How much time it shows.' });

const programme = v.variant(
  'kind',
  [
    object({ kind: v.literal('tone'), frequency: tone('Tone') }),
    object({ kind: v.literal('two tones'), first: tone('First tone'), second: tone('Second tone') }),
    object({ kind: v.literal('recording') }),
  ],
  variantMessage('kind'),
);

/** What was turned for a scene; whatever is left out is as in the set. */
const settings = object({
  station: v.optional(whole('Station', 0, 10_000, 'Its place in the list, from 0; the one heard best if left out.')),
  carrier: v.optional(frequency('Carrier', { min: 50e3, max: 5e6 })),
  depth: v.optional(ratio('Depth of modulation', { min: 0, max: 2 })),
  programme: v.optional(programme),
  detector: v.optional(choice('Detector', ['perfect', ...DETECTOR_IDS])),
  capacitance: v.optional(capacitance('Load capacitor', { max: 1e-4 })),
  resistance: v.optional(
    resistance('Load resistance', { min: 10, max: 1e8, about: 'A plain one in place of the set’s own load.' }),
  ),
  strength: v.optional(voltage('Carrier at the detector', { min: 1e-6, max: 100 })),
  loadedQ: v.optional(number('Loaded Q', 0.5, 2000)),
  neighbours: v.optional(yes('Other stations on the air')),
});

const row = object({
  point,
  title: v.optional(words('Title', 'In place of the point’s own.', 80)),
  with: v.optional(settings),
});

const scene = v.pipe(
  object({
    title: words('Title', '', 120),
    caption: v.optional(words('Caption', 'Figures in braces, such as {carrier}, are filled in with the set’s.', 600)),
    note: v.optional(words('What you say', '', 5000)),
    rows: v.optional(v.pipe(v.array(row, refuse('a list of rows')), v.maxLength(8, refuse('at most 8 rows')))),
    from: v.optional(from),
    span: v.optional(span),
    to: v.optional(object({ from, span, seconds: number('Seconds', 0.5, 120, 'How long the slow zoom takes.') })),
    show: v.optional(
      object({
        average: v.optional(yes('Running average')),
        cover: v.optional(yes('Cover the lower half')),
        envelope: v.optional(yes('Envelope')),
        spectrum: v.optional(yes('Spectrum beside')),
        alike: v.optional(yes('All rows to one scale')),
      }),
    ),
    settings: v.optional(settings),
    picture: v.optional(choice('Moving picture', SCENE_PICTURES)),
    hear: v.optional(choice('Heard', SCENE_POINTS)),
  }),
  v.check(
    (s) => (s.rows?.length ?? 0) > 0 || s.picture !== undefined,
    refuse('something to see: rows with at least one point, or a picture'),
  ),
);

/** Prepared views of the waves, in order, with which the set explains itself. */
export const scenes = v.pipe(
  v.array(scene, refuse('a list of scenes')),
  v.maxLength(MOST_SCENES, refuse(`at most ${MOST_SCENES} scenes`)),
  v.metadata({ label: 'Scenes', about: 'Prepared views, in order; without them, the story that comes with the tool.' }),
);
