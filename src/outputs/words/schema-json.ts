import { jsonSchema } from '../../engine/set/json-schema.ts';
import { fieldHelp, fieldLabel, schemaTexts } from './en/index.ts';

/** The published JSON Schema of a description, with its titles and explanations. */
export const publishedSchema = () => jsonSchema({ ...schemaTexts, label: fieldLabel, help: fieldHelp });

/** The same as a file: a part of a set on each line, and a definition on each line, with no spaces inside. */
export const publishedSchemaText = (): string => `${linesOf(publishedSchema(), 2)}\n`;

/** JSON with so many levels of it broken into lines. */
function linesOf(value: unknown, levels: number, indent = ''): string {
  if (levels === 0 || typeof value !== 'object' || value === null || Array.isArray(value)) return JSON.stringify(value);
  const inner = `${indent}  `;
  const lines = Object.entries(value).map(
    ([key, one]) => `${inner}${JSON.stringify(key)}: ${linesOf(one, levels - 1, inner)}`,
  );
  return `{\n${lines.join(',\n')}\n${indent}}`;
}
