import type { QuantityKind } from '../../../../engine/units/parse.ts';

const A_QUANTITY: Readonly<Record<QuantityKind, string>> = {
  length: 'A length',
  capacitance: 'A capacitance',
  inductance: 'An inductance',
  resistance: 'A resistance',
  frequency: 'A frequency',
  voltage: 'A voltage',
  current: 'A current',
  power: 'A power',
  time: 'A time',
  temperature: 'A temperature',
  angle: 'An angle',
  'field strength': 'A field strength',
  resistivity: 'A resistivity',
  conductivity: 'A conductivity',
  conductance: 'A conductance',
  ratio: 'A ratio',
  level: 'A level',
  mass: 'A mass',
};

/** Texts of the published schema besides those of its fields. */
export const schemaTexts = {
  title: 'A Faintwave set',
  description: 'One AM receiver, its place and its listener. Unknown keys are kept.',
  quantity: (kind: QuantityKind): string => `${A_QUANTITY[kind]}: text with a unit, or a plain number in SI units.`,
};
