import * as v from 'valibot';
import { list, object, part, words } from '../fields/fields.ts';
import { refuse } from '../fields/refusal.ts';
import { type ArrangementDescription, arrangement } from '../kinds/arrangements/arrangement-schema.ts';

/** Ways of a switch that a builder finds: three and four are common. */
const MOST_BANDS = 4;

/** One band of a set with a band switch, as read. */
export interface BandDescription {
  /** As it stands at the switch. */
  readonly name: string;
  /** Left out for the band that the switch stands on: that one's is the set's own. */
  readonly arrangement?: ArrangementDescription;
}

/** The same as written. */
export interface WrittenBand {
  readonly name: string;
  readonly arrangement?: v.InferInput<typeof arrangement>;
}

/** By name, or the type of a whole description is longer than the compiler writes. */
type BandsSchema = v.GenericSchema<readonly WrittenBand[], BandDescription[]>;

const band = object({
  name: v.pipe(words('band.name', 40), v.minLength(1, refuse({ code: 'a-name' }))),
  arrangement: v.optional(part('band.arrangement', arrangement)),
});

/** The bands of a set with a band switch: what is switched is the arrangement, and with it coils, taps and turns. */
export const bands: BandsSchema = list('set.bands', 'bands', band, { min: 2, max: MOST_BANDS });
