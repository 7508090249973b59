import { toJsonSchema } from '@valibot/to-json-schema';
import { description } from './description.ts';

/** The published JSON Schema of a description, generated from the schema the reader uses. */
export function jsonSchema(): Record<string, unknown> {
  const schema = toJsonSchema(description as never, {
    typeMode: 'input',
    errorMode: 'ignore',
    overrideSchema({ valibotSchema, jsonSchema: made }) {
      const pipe = (valibotSchema as { pipe?: { metadata?: Record<string, never> }[] }).pipe ?? [];
      const metadata: Record<string, unknown> = Object.assign({}, ...pipe.map((action) => action.metadata ?? {}));
      if (metadata.quantity) {
        return {
          type: ['string', 'number'],
          title: String(metadata.label || metadata.quantity),
          description: `${metadata.about ? `${metadata.about} ` : ''}A ${metadata.quantity}: text with a unit, or a plain number in SI units.`,
          examples: metadata.examples as string[],
        };
      }
      if (metadata.label)
        return {
          ...made,
          title: String(metadata.label),
          ...(metadata.about ? { description: String(metadata.about) } : {}),
        };
      return undefined;
    },
  });
  return {
    title: 'A Faintwave set',
    description: 'One AM receiver, its place and its listener. Unknown keys are kept.',
    ...schema,
  };
}
