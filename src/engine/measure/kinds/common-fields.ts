/** Fields that several kinds of measurement have. */
export const FREQUENCY = { type: 'quantity', quantity: 'frequency', above: 0, max: 1e12 } as const;
export const CAPACITANCE = { type: 'quantity', quantity: 'capacitance', min: 0, max: 1 } as const;
export const RESISTANCE = { type: 'quantity', quantity: 'resistance', above: 0, max: 1e12 } as const;
export const VOLTAGE = { type: 'quantity', quantity: 'voltage', above: 0, max: 1e12 } as const;
export const TEMPERATURE = { type: 'quantity', quantity: 'temperature', min: 100, max: 600 } as const;
/** One standard deviation as a share of the reading. */
export const RELATIVE_ERROR = { type: 'quantity', quantity: 'ratio', above: 0, max: 1, optional: true } as const;
