import { bare, type FieldMetadata, lengthsOf, metadataOf, type SchemaNode } from '../fields/introspect.ts';
import { LONGEST_NUMBER } from '../units/number.ts';
import { description } from './description.ts';

type Json = Record<string, unknown>;

/**
 * The published JSON Schema of a description, made from the schema the reader uses.
 * Made here because a quantity is one idea (text with a unit, or a number) that general converters take apart.
 */
export function jsonSchema(): Json {
  return {
    $schema: 'https://json-schema.org/draft/2020-12/schema',
    title: 'A Faintwave set',
    description: 'One AM receiver, its place and its listener. Unknown keys are kept.',
    ...convert(description as unknown as SchemaNode),
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
  return { [`min${of}`]: min, [`max${of}`]: max };
};

function convert(node: SchemaNode): Json {
  const { label, about, quantity, bounds, examples, whole } = metadataOf(node);
  const words: Json = {};
  if (label) words.title = label;
  if (about) words.description = about;
  if (node.default !== undefined) words.default = node.default;
  if (quantity) {
    const what = `A ${quantity}: text with a unit, or a plain number in SI units.`;
    return {
      ...words,
      type: ['string', 'number'],
      description: about ? `${about} ${what}` : what,
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
        properties: Object.fromEntries(entries.map(([key, entry]) => [key, convert(entry)])),
        required: entries.filter(([, entry]) => entry.type !== 'optional').map(([key]) => key),
      };
    }
    case 'variant':
    case 'union':
      return { ...words, oneOf: (schema.options as SchemaNode[]).map(convert) };
    case 'array':
      return { ...words, type: 'array', ...sizes(node, 'Items'), items: convert(schema.item!) };
    case 'tuple':
      return {
        ...words,
        type: 'array',
        prefixItems: schema.items!.map(convert),
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
    case 'boolean':
      return { ...words, type: schema.type };
    default:
      throw new RangeError(`the schema has a "${schema.type}", which the published form cannot show`);
  }
}
