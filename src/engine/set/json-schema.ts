import type { FieldId } from '../fields/field-ids.ts';
import { bare, type FieldMetadata, lengthsOf, metadataOf, type SchemaNode } from '../fields/introspect.ts';
import { LONGEST_NUMBER } from '../units/number.ts';
import { QUANTITY_KINDS, type QuantityKind } from '../units/parse.ts';
import { definitionName, type Json, referenceTo, sharingDefinitions } from './shared-definitions.ts';

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
 * The published JSON Schema of a file, made from the schema the reader uses.
 * Made here because a quantity is one idea (text with a unit, or a number) that general converters take apart.
 * @param whole the schema of the file
 * @param words titles and explanations of the fields
 * @returns a JSON Schema (draft 2020-12)
 */
export function jsonSchema(whole: SchemaNode, words: SchemaWords): Json {
  const schema = {
    $schema: 'https://json-schema.org/draft/2020-12/schema',
    title: words.title,
    description: words.description,
    ...convert(whole, words),
  };
  return sharingDefinitions(
    plain(schema),
    Object.fromEntries(
      Object.entries(QUANTITY_KINDS).map(([kind, { examples }]) => [
        definitionName(kind),
        { description: words.quantity(kind as QuantityKind), examples },
      ]),
    ),
  );
}

/** Without the keys that are undefined. */
const plain = (schema: Json): Json => JSON.parse(JSON.stringify(schema)) as Json;

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
  const { field, quantity, bounds, whole } = metadataOf(node);
  const inner = (one: SchemaNode): Json => convert(one, schemaWords);
  const help = field && schemaWords.help(field);
  const words: Json = {};
  if (field) words.title = schemaWords.label(field);
  if (help) words.description = help;
  if (node.default !== undefined) words.default = node.default;
  if (quantity) {
    return {
      ...words,
      ...referenceTo(definitionName(quantity)),
      type: ['string', 'number'],
      ...limits(bounds),
      maxLength: LONGEST_NUMBER,
    };
  }
  const schema = bare(node);
  switch (schema.type) {
    case 'loose_object': {
      const entries = Object.entries(schema.entries!);
      const required = entries.filter(([, entry]) => entry.type !== 'optional').map(([key]) => key);
      return {
        ...words,
        type: 'object',
        properties: Object.fromEntries(entries.map(([key, entry]) => [key, inner(entry)])),
        required: required.length > 0 ? required : undefined,
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
