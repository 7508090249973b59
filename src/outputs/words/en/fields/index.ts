import type { FieldId } from '../../../../engine/fields/field-ids.ts';
import { aerialFields } from './aerial.ts';
import { arrangementFields, elementFields, trapFields } from './arrangement.ts';
import { boxFields, formerFields, limitsFields } from './box.ts';
import { coilFields, wireFields } from './coil.ts';
import { detectorFields } from './detector.ts';
import { earthFields } from './earth.ts';
import { loadFields, transformerFields } from './load.ts';
import { measuredFields } from './measured.ts';
import {
  earFields,
  groundFields,
  listeningFields,
  placeFields,
  positionFields,
  sectionFields,
  stationFields,
} from './place.ts';
import { sceneFields } from './scenes.ts';
import { setFields } from './set.ts';
import type { FieldText } from './texts-of.ts';
import { tuningFields } from './tuning.ts';
import { assumedFields, bandFields, correlationFields, keepFields, wantFields } from './wants.ts';

/** Label and explanation of every field. */
export const FIELDS: { readonly [Id in FieldId]: FieldText } = {
  ...aerialFields,
  ...arrangementFields,
  ...trapFields,
  ...elementFields,
  ...coilFields,
  ...wireFields,
  ...measuredFields,
  ...detectorFields,
  ...earthFields,
  ...loadFields,
  ...transformerFields,
  ...tuningFields,
  ...placeFields,
  ...stationFields,
  ...positionFields,
  ...groundFields,
  ...sectionFields,
  ...listeningFields,
  ...earFields,
  ...setFields,
  ...sceneFields,
  ...bandFields,
  ...wantFields,
  ...keepFields,
  ...boxFields,
  ...formerFields,
  ...limitsFields,
  ...assumedFields,
  ...correlationFields,
};

/** What a field is called, on its editor and in the published schema. */
export const fieldLabel = (id: FieldId): string => FIELDS[id].label;

/** What a field is and what to write; undefined where the label says it all. */
export const fieldHelp = (id: FieldId): string | undefined => FIELDS[id].help;

export { expectedText, type NameOf } from './expected.ts';
export { givenText } from './given.ts';
export { hintText } from './hints.ts';
export { kindLabels, kindName, type PartWithKinds } from './kinds.ts';
export { namedOptions, optionName } from './options.ts';
export { type ProblemText, problemMessage, problemSentence, problemText, readNote } from './problems.ts';
export { boxSchemaTexts, schemaTexts } from './schema.ts';
export { columnName, rowProblem, stationDoubt, tableTooLarge } from './station-tables.ts';
export { touchstoneProblem } from './touchstone.ts';
