import type { FieldId } from '../fields/field-ids.ts';
import { bare, type FieldMetadata, lengthsOf, metadataOf, type SchemaNode } from '../fields/introspect.ts';
import { LONGEST_NUMBER } from '../units/number.ts';
import type { QuantityKind } from '../units/parse.ts';
import { description } from './description.ts';

type Json = Record<string, unknown>;

/** The texts of a published schema. */
export interface SchemaWords {
  readonly title: string;
  readonly description: string;
  readonly label: (field: FieldId) => string;
  readonly help: (field: FieldId) => string | undefined;
  /** How a quantity is written. */
  readonly quantity: (kind: QuantityKind) => string;
}

/**
 * The published JSON Schema of a description, made from the schema the reader uses.
 * Made here because a quantity is one idea (text with a unit, or a number) that general converters take apart.
 * @param words titles and explanations of the fields
 * @returns a JSON Schema (draft 2020-12)
 */
export function jsonSchema(words: SchemaWords): Json {
  return {
    $schema: 'https://json-schema.org/draft/2020-12/schema',
    title: words.title,
    description: words.description,
    ...convert(description as unknown as SchemaNode, words),
  };
}

/** Limits of a number; for a quantity, of one written as a plain number in SI units. */
const limits = ({ min, above, max }: FieldMetadata['bounds'] = {}): Json => ({
  minimum: min,
  exclusiveMinimum: above,
  maximum: max,
});

/** Fewest and most items or characters. */
const sizes = (node: SchemaNode, of: 'Items' | 'Length'): Json => {
  const { min, max } = lengthsOf(node);
  return { [`min${of}`]: min || undefined, [`max${of}`]: max };
};

function convert(node: SchemaNode, schemaWords: SchemaWords): Json {
  const { field, quantity, bounds, examples, whole } = metadataOf(node);
  const inner = (one: SchemaNode): Json => convert(one, schemaWords);
  const help = field && schemaWords.help(field);
  const words: Json = {};
  if (field) words.title = schemaWords.label(field);
  if (help) words.description = help;
  if (node.default !== undefined) words.default = node.default;
  if (quantity) {
    const written = schemaWords.quantity(quantity);
    return {
      ...words,
      type: ['string', 'number'],
      description: help ? `${help} ${written}` : written,
      ...limits(bounds),
      maxLength: LONGEST_NUMBER,
      examples: examples ?? [],
    };
  }
  const schema = bare(node);
  switch (schema.type) {
    case 'loose_object': {
      const entries = Object.entries(schema.entries!);
      return {
        ...words,
        type: 'object',
        properties: Object.fromEntries(entries.map(([key, entry]) => [key, inner(entry)])),
        required: entries.filter(([, entry]) => entry.type !== 'optional').map(([key]) => key),
      };
    }
    case 'variant':
    case 'union':
      return { ...words, oneOf: (schema.options as SchemaNode[]).map(inner) };
    case 'array':
      return { ...words, type: 'array', ...sizes(node, 'Items'), items: inner(schema.item!) };
    case 'tuple':
      return {
        ...words,
        type: 'array',
        prefixItems: schema.items!.map(inner),
        minItems: schema.items!.length,
        maxItems: schema.items!.length,
      };
    case 'literal':
      return { ...words, const: schema.literal };
    case 'picklist':
      return { ...words, enum: schema.options };
    case 'number':
      return {
        ...words,
        type: whole ? 'integer' : 'number',
        ...limits(bounds),
      };
    case 'string':
      return { ...words, type: 'string', ...sizes(node, 'Length') };
    case 'unknown':
      return words;
    case 'boolean':
      return { ...words, type: schema.type };
    default:
      throw new RangeError(`the schema has a "${schema.type}", which the published form cannot show`);
  }
}
