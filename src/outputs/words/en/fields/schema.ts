import { writtenQuantity } from './quantities.ts';

/** Texts of the published schema besides those of its fields. */
export const schemaTexts = {
  title: 'A Faintwave set',
  description: 'One AM receiver, its place and its listener. Unknown keys are kept.',
  quantity: writtenQuantity,
};

/** The same of a box of parts. */
export const boxSchemaTexts = {
  title: 'A Faintwave box',
  description: 'Parts that sets can be made from, and what the place allows. Unknown keys are kept.',
  quantity: writtenQuantity,
};
