import { jsonSchema } from '../../engine/set/json-schema.ts';
import { fieldHelp, fieldLabel, schemaTexts } from './en/index.ts';

/** The published JSON Schema of a description, with its titles and explanations. */
export const publishedSchema = () => jsonSchema({ ...schemaTexts, label: fieldLabel, help: fieldHelp });
