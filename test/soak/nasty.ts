import fc from 'fast-check';

const UNITS = [
  'pF',
  'µF',
  'F',
  'µH',
  'mH',
  'Ω',
  'kΩ',
  'MΩ',
  'V',
  'mV/m',
  'kHz',
  'MHz',
  'm',
  'mm',
  '°',
  '%',
  'kW',
  'dB',
  'SWG',
  's',
];
const FIGURES = [
  '0',
  '-0',
  '1',
  '-1',
  '365',
  '0.5',
  '1e400',
  '1e-400',
  '1e308',
  '5e-324',
  '٣',
  '1,5',
  '1.000,5',
  '0x10',
  '1e',
  '+',
  '∞',
];

/** Words that programs trip over. */
export const NASTY_TEXTS = [
  '',
  ' ',
  '__proto__',
  'constructor',
  'toString',
  'hasOwnProperty',
  'NaN',
  'Infinity',
  'null',
  'undefined',
  '\u0000',
  '\ud800',
  '\ufeff',
  '\u202e',
  'a'.repeat(300),
  '=1+1',
  '<b>',
  '%00',
  '../..',
  'é',
  '𝄞',
];

/** A figure with a unit, either of them possibly none. */
export const nastyQuantity = fc
  .tuple(fc.constantFrom(...FIGURES), fc.constantFrom('', ' ', '  '), fc.constantFrom('', ...UNITS))
  .map((parts) => parts.join(''));

const nastyNumber = fc.oneof(
  fc.constantFrom(0, -0, -1, 1e308, -1e308, 5e-324, 2 ** 53, 2 ** 31, 1e-30, 0.1 + 0.2),
  fc.double({ noNaN: true, noDefaultInfinity: true }),
  fc.integer({ min: -3, max: 2000 }),
);

/** Anything that JSON holds, mostly where a program would not expect it. */
export const nastyValue: fc.Arbitrary<unknown> = fc.oneof(
  { weight: 4, arbitrary: nastyNumber },
  { weight: 4, arbitrary: nastyQuantity },
  { weight: 3, arbitrary: fc.constantFrom<unknown>(...NASTY_TEXTS) },
  { weight: 2, arbitrary: fc.constantFrom<unknown>(null, true, false, [], {}, [[]], [null], { kind: 'none' }) },
  { weight: 1, arbitrary: fc.jsonValue({ maxDepth: 2 }) },
);
