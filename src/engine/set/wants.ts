import * as v from 'valibot';
import type { FieldId } from '../fields/field-ids.ts';
import { frequency, list, object, quantityField, ratio, variantMessage, withDefault, words } from '../fields/fields.ts';
import { refuse } from '../fields/refusal.ts';

/** More wants than this contradict each other. */
const MOST_WANTS = 20;
const MOST_KEPT = 100;

const stationOf = (field: FieldId) => v.pipe(words(field, 80), v.minLength(1, refuse({ code: 'a-name' })));
const bandEnd = (field: FieldId) => frequency(field, { min: 1e5, max: 2e6, typical: [1.5e5, 1.62e6] });

/** One thing that the builder wants of the set. A station is named as in the list, or by its frequency. */
const want = v.variant(
  'kind',
  [
    object({ kind: v.literal('loudest'), station: stationOf('want.station') }),
    object({
      kind: v.literal('clear'),
      station: stationOf('want.station'),
      from: stationOf('want.from'),
      by: withDefault(quantityField('want.by', 'level', { min: 0, max: 80, typical: [10, 40] }), '30 dB'),
    }),
    object({
      kind: v.literal('band'),
      from: bandEnd('want.band.from'),
      to: bandEnd('want.band.to'),
      tolerance: withDefault(ratio('want.tolerance', { min: 0, max: 0.2, typical: [0, 0.05] }), '1 %'),
    }),
    object({ kind: v.literal('most stations') }),
    object({
      kind: v.literal('speech'),
      station: stationOf('want.station'),
      // The upper end of a telephone channel: ITU-T G.712.
      bandwidth: withDefault(
        quantityField('want.bandwidth', 'frequency', { min: 500, max: 20e3, typical: [2000, 9000] }),
        '3.4 kHz',
      ),
    }),
    object({ kind: v.literal('fewest parts') }),
  ],
  variantMessage('kind'),
);

/** What the builder wants of the set; every suggestion is judged by all of it. */
export const wants = list('set.wants', 'wants', want, { max: MOST_WANTS });

/** Parts and places of the description that suggestions leave as they are: "load", "coils[0]", "aerial.height". */
export const keep = list('set.keep', 'kept', words('keep.part', 80), { max: MOST_KEPT });

/** A want as read, SI. */
export type Want = v.InferOutput<typeof want>;
