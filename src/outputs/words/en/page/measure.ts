import type { Instrument, MeasuredPart } from '../../../../engine/measure/offered.ts';
import type { QuantityKind } from '../../../../engine/units/parse.ts';
import { plural } from '../grammar.ts';

/** The unit that a number typed without one is in. */
const UNITS: Readonly<Partial<Record<QuantityKind, string>>> = {
  frequency: 'kHz',
  capacitance: 'pF',
  inductance: 'µH',
  resistance: 'Ω',
  voltage: 'V',
  current: 'µA',
  length: 'm',
  temperature: '°C',
  angle: '°',
  ratio: '%',
  level: 'dB',
  'field strength': 'mV/m',
};

/**
 * The unit that a number typed without one is in.
 * @param quantity of the field; left out for a number without a unit
 * @returns a unit as people write it, or nothing
 */
export const readingUnit = (quantity: QuantityKind | undefined): string => (quantity && UNITS[quantity]) ?? '';

/** The view where the set is measured. */
export const measureView = {
  label: 'Measure the set',
  have: 'I have',
  haveAlways: 'Ears and the dial, resistors, capacitors and a battery are taken for granted.',
  instruments: {
    multimeter: 'multimeter',
    'signal generator': 'signal generator',
    oscilloscope: 'oscilloscope',
    'sound card': 'sound card',
    'network analyser': 'network analyser',
    'capacitance meter': 'capacitance meter',
    'inductance meter': 'inductance meter',
  } satisfies Record<Instrument, string>,
  wantToKnow: 'I want to know',
  whatHelps: 'whatever helps most',
  part: {
    coil: 'the coil',
    tuning: 'the capacitor',
    aerial: 'the aerial',
    earth: 'the earth',
    detector: 'the detector',
    load: 'the phones',
    station: 'the field of a station',
  } satisfies Record<MeasuredPart, string>,
  coil: (name: string): string => `the coil “${name}”`,
  possible: (station: string | undefined): string =>
    station === undefined ? 'Possible measurements' : `Possible measurements, for ${station}`,
  choose: (name: string, of: string): string => `${name}: ${of}`,
  elsewhere: 'Figures known from elsewhere',
  calculating: 'Working out what would help most…',
  noneOffered: 'With these instruments nothing of this part can be measured.',
  notWorkedOut: (why: string): string => `It could not be worked out: ${why}`,
  pickOne: 'Choose a measurement to see how it is made.',
  readings: 'Readings',
  withUnit: (name: string, unit: string): string => (unit === '' ? name : `${name}, ${unit}`),
  cell: (name: string, row: number): string => `${name}, reading ${row}`,
  removeRow: (row: number): string => `Remove reading ${row}`,
  optional: 'More fields',
  notChosen: '—',
  file: 'A file of readings (CSV, JSON, Touchstone or WAV)',
  fileHint: 'Or drop a file on this card.',
  fileTaken: (name: string): string => `Taken from ${name}.`,
  fileRefused: (name: string): string => `${name} was read, but not all of it can be used: the result says why.`,
  severalTaken: (count: number, file: string): string =>
    count === 1
      ? `${file} has 1 measurement, and none of the cards here is for it. It can be used as it is.`
      : `${file} has ${count} measurements. They can be used all at once.`,
  useAll: (count: number): string => (count === 1 ? 'Use this measurement' : `Use all ${count}`),
  fileProblems: (file: string, count: number): string =>
    `${file} cannot be used: ${count} ${plural(count, 'problem', 'problems')}. Nothing is changed.`,
  clear: 'Clear the readings',
  typed: 'readings typed, not used yet',
  typedKept: (count: number): string =>
    `Readings typed into ${count} ${plural(count, 'card', 'cards')} and not used yet are kept on this device.`,
  typedNotKept: 'The readings typed here cannot be kept on this device: use them before the page is closed.',
  clearTyped: 'Clear all typed readings',
  typedCleared: 'The typed readings are cleared.',
  putBack: 'Put back',
  result: 'Result',
  nothingYet: 'The result comes here once the readings allow it.',
  needed: 'Still missing or not understood',
  date: 'Date',
  note: 'Note',
  use: 'Use it',
  useLabel: 'measured values',
  used: (count: number): string =>
    count === 0
      ? 'The readings are kept. They do not narrow any figure by a fifth or more, so no figure is changed.'
      : `${count} measured ${plural(count, 'value is', 'values are')} in the description now.`,
  notUsed: (why: string): string => `It could not be used: ${why}`,
  kept: 'Readings in the description',
  keptNone: 'None yet.',
  keptOne: (name: string, of: string | undefined, date: string | undefined): string =>
    [name, of, date].filter((part) => part !== undefined && part !== '').join(', '),
  remove: (name: string): string => `Remove ${name}`,
  removeShort: 'Remove',
  removed: 'The readings are taken out; the figures follow the sizes again where nothing else was measured.',
  measured: (value: string): string => `measured ${value}`,
  methodUnknown: 'method not written down',
  removeMeasured: 'Remove the measured value: the calculated one counts again',
  calculatedAgain: (name: string): string => `${name}: the calculated value counts again.`,
  wins: 'Measured: it wins over the calculated value',
  beside: 'Calculated and measured',
  noneMeasured: 'Nothing of this set is measured yet.',
} as const;
