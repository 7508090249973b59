import { DIAL_LAWS } from '../dial-law-fit.ts';

/** Fields that several kinds of measurement have. */
export const FREQUENCY = { type: 'quantity', quantity: 'frequency', above: 0, max: 1e12 } as const;
export const CAPACITANCE = { type: 'quantity', quantity: 'capacitance', min: 0, max: 1 } as const;
export const INDUCTANCE = { type: 'quantity', quantity: 'inductance', above: 0, max: 1e4 } as const;
export const RESISTANCE = { type: 'quantity', quantity: 'resistance', above: 0, max: 1e12 } as const;
export const VOLTAGE = { type: 'quantity', quantity: 'voltage', above: 0, max: 1e12 } as const;
export const CURRENT = { type: 'quantity', quantity: 'current', above: 0, max: 1000 } as const;
export const TEMPERATURE = { type: 'quantity', quantity: 'temperature', min: 100, max: 600 } as const;
export const LEVEL_RATIO = { type: 'number', min: 1, max: 1e6, optional: true } as const;
/** One standard deviation as a share of the reading. */
export const RELATIVE_ERROR = { type: 'quantity', quantity: 'ratio', above: 0, max: 1, optional: true } as const;
export const FREQUENCY_ERROR = { ...FREQUENCY, optional: true } as const;
/** The capacitor that positions were read on, of any law that vanes are cut to, or one that nobody knows. */
export const DIAL_CAPACITOR = {
  type: 'group',
  fields: {
    law: { type: 'choice', options: [...DIAL_LAWS, 'unknown'] },
    minimum: CAPACITANCE,
    maximum: { ...CAPACITANCE, above: 0 },
  },
  rising: ['minimum', 'maximum'],
  optional: true,
} as const;
/** 0 fully open, 1 fully meshed; a little outside is possible. */
export const POSITION = { type: 'number', min: -1, max: 2 } as const;
