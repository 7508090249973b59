import * as v from 'valibot';
import { choice, length, list, object, part, whole, withDefault, words } from '../fields/fields.ts';
import { LIMITS } from '../fields/limits.ts';
import { refuse } from '../fields/refusal.ts';
import { aerial } from '../kinds/aerials/aerial-schema.ts';
import { wire } from '../kinds/coils/wire-schema.ts';
import { detector } from '../kinds/detectors/detector-schema.ts';
import { earth } from '../kinds/earths/earth-schema.ts';
import { load, transformer } from '../kinds/loads/load-schema.ts';
import { tuning } from '../kinds/tunings/tuning-schema.ts';
import { type DielectricName, DIELECTRICS as TABLE } from '../parts/capacitor/dielectrics.ts';
import { keep, wants } from '../set/wants.ts';
import { formerSchema } from './former-schema.ts';

const BOX_FORMAT = 'faintwave-box/1';

/** Different parts of one sort; how many there are of each is a number beside it. */
const MOST_DIFFERENT = 200;
const MOST_OF_ONE = 10_000;

/** Ways to connect parts that can be looked for. */
export const ARRANGEMENTS_FOUND = [
  'direct',
  'series capacitor',
  'tapped',
  'coupled',
  'slider',
  'variometer',
  'frame',
  'ferrite rod',
] as const;

const count = withDefault(whole('box.count', 1, MOST_OF_ONE, [1, 10]), 1);
const label = v.optional(words('box.label', 60));
const DIELECTRICS = Object.keys(TABLE) as DielectricName[];
const sheetSide = { ...LIMITS.plate, typical: [0.05, 0.6] as const };

const former = object({ label, count, former: part('box.former', formerSchema) });
const reel = object({
  label,
  wire,
  length: length('box.reel.length', { min: 0.01, max: 1e5, typical: [5, 200] }),
});
const capacitor = object({
  label,
  count,
  capacitor: part('box.capacitor', tuning),
  gangs: withDefault(whole('box.gangs', 1, 6, [1, 3]), 1),
});
const foil = object({
  label,
  count,
  length: length('box.sheet.length', sheetSide),
  width: length('box.sheet.width', sheetSide),
});
const dielectricSheet = object({
  label,
  count,
  dielectric: choice('box.sheet.dielectric', DIELECTRICS),
  length: length('box.sheet.length', sheetSide),
  width: length('box.sheet.width', sheetSide),
  thickness: length('box.sheet.thickness', { ...LIMITS.dielectric, typical: [2e-5, 1e-3] }),
});
const detectorItem = object({ label, count, detector: part('box.detector', detector) });
const loadItem = object({ label, count, load: part('box.load', load) });
const transformerItem = object({ label, count, transformer: part('box.transformer', transformer) });
const switchItem = object({ label, count, positions: whole('box.switch.positions', 2, 24, [2, 12]) });
const aerialItem = object({ label, aerial: part('box.aerial', aerial) });
const earthItem = object({ label, earth: part('box.earth', earth) });

/** What a set that is looked for may not exceed. */
const limits = object({
  coils: v.optional(whole('limits.coils', 0, 4, [1, 2])),
  controls: v.optional(whole('limits.controls', 0, 4, [1, 2])),
  size: v.optional(length('limits.size', { min: 0.01, max: 10, typical: [0.1, 1] })),
  arrangements: v.optional(
    list('limits.arrangements', 'arrangements', choice('limits.arrangement', ARRANGEMENTS_FOUND), {
      min: 1,
      max: ARRANGEMENTS_FOUND.length,
    }),
  ),
  tapEvery: withDefault(whole('limits.tapEvery', 1, 50, [1, 10]), 1),
});

const items = { max: MOST_DIFFERENT };

/** A box of parts as written in a file. Unknown keys are allowed everywhere and kept. */
export const boxDescription = object({
  format: v.literal(BOX_FORMAT, refuse({ code: 'literal', value: BOX_FORMAT })),
  name: v.pipe(words('box.name', 120), v.minLength(1, refuse({ code: 'a-name' }))),
  notes: v.optional(words('box.notes', 20_000)),
  formers: withDefault(list('box.formers', 'formers', former, items), []),
  wires: withDefault(list('box.wires', 'reels', reel, items), []),
  capacitors: withDefault(list('box.capacitors', 'capacitors', capacitor, items), []),
  foils: withDefault(list('box.foils', 'sheets', foil, items), []),
  dielectrics: withDefault(list('box.dielectrics', 'sheets', dielectricSheet, items), []),
  detectors: withDefault(list('box.detectors', 'detectors', detectorItem, items), []),
  loads: withDefault(list('box.loads', 'loads', loadItem, items), []),
  transformers: withDefault(list('box.transformers', 'transformers', transformerItem, items), []),
  switches: withDefault(list('box.switches', 'switches', switchItem, items), []),
  aerials: withDefault(list('box.aerials', 'aerials', aerialItem, items), []),
  earths: withDefault(list('box.earths', 'earths', earthItem, items), []),
  wants: v.optional(wants),
  keep: v.optional(keep),
  limits: v.optional(part('box.limits', limits)),
});

/** A box as read: plain SI numbers, defaults filled in. */
export type BoxDescription = v.InferOutput<typeof boxDescription>;
export type FoundArrangement = (typeof ARRANGEMENTS_FOUND)[number];
/** A box as written: quantities may be text. */
export type WrittenBox = v.InferInput<typeof boxDescription>;
