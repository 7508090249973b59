import type { SchemaNode } from '../../engine/fields/introspect.ts';
import { boxDescription } from '../../engine/find/box-schema.ts';
import { description } from '../../engine/set/description.ts';
import { jsonSchema } from '../../engine/set/json-schema.ts';
import { boxSchemaTexts, fieldHelp, fieldLabel, schemaTexts } from './en/index.ts';

const ofFields = { label: fieldLabel, help: fieldHelp };

/** The published JSON Schema of a description, with its titles and explanations. */
export const publishedSchema = () => jsonSchema(description as unknown as SchemaNode, { ...schemaTexts, ...ofFields });

/** The published JSON Schema of a box of parts. */
export const publishedBoxSchema = () =>
  jsonSchema(boxDescription as unknown as SchemaNode, { ...boxSchemaTexts, ...ofFields });

/** A published schema as a file: a part on each line, and a definition on each line, with no spaces inside. */
const fileOf = (published: unknown): string => `${linesOf(published, 2)}\n`;

export const publishedSchemaText = (): string => fileOf(publishedSchema());
export const publishedBoxSchemaText = (): string => fileOf(publishedBoxSchema());

/** JSON with so many levels of it broken into lines. */
function linesOf(value: unknown, levels: number, indent = ''): string {
  if (levels === 0 || typeof value !== 'object' || value === null || Array.isArray(value)) return JSON.stringify(value);
  const inner = `${indent}  `;
  const lines = Object.entries(value).map(
    ([key, one]) => `${inner}${JSON.stringify(key)}: ${linesOf(one, levels - 1, inner)}`,
  );
  return `{\n${lines.join(',\n')}\n${indent}}`;
}
