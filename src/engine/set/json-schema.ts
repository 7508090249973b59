import { toJsonSchema } from '@valibot/to-json-schema';
import { description } from './description.ts';
import type { FieldMetadata } from './introspect.ts';

/** The published JSON Schema of a description, generated from the schema the reader uses. */
export function jsonSchema(): Record<string, unknown> {
  const schema = toJsonSchema(description as never, {
    typeMode: 'input',
    errorMode: 'ignore',
    overrideAction({ valibotAction, jsonSchema: made }) {
      if (valibotAction.type !== 'metadata') return undefined;
      const { label, about, quantity, bounds, examples } = (valibotAction as unknown as { metadata: FieldMetadata })
        .metadata;
      const title = label ? { title: label } : {};
      if (quantity) {
        return {
          ...title,
          type: ['string', 'number'],
          description: `${about ? `${about} ` : ''}A ${quantity}: text with a unit, or a plain number in SI units.`,
          examples: [...(examples ?? [])],
        };
      }
      const limits = {
        ...(bounds?.min === undefined ? {} : { minimum: bounds.min }),
        ...(bounds?.max === undefined ? {} : { maximum: bounds.max }),
      };
      return { ...made, ...title, ...(about ? { description: about } : {}), ...limits };
    },
  });
  return {
    title: 'A Faintwave set',
    description: 'One AM receiver, its place and its listener. Unknown keys are kept.',
    ...schema,
  };
}
