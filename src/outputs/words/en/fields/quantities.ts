import { formatNumber, formatQuantity } from '../../../../engine/units/format.ts';
import { parseQuantity, QUANTITY_KINDS, type QuantityKind } from '../../../../engine/units/parse.ts';
import { ZERO_CELSIUS } from '../../../../engine/units/quantities.ts';
import type { QuantityOfField } from '../../../../engine/units/refusal.ts';

const A_QUANTITY: Readonly<Record<QuantityKind, string>> = {
  length: 'a length',
  capacitance: 'a capacitance',
  inductance: 'an inductance',
  resistance: 'a resistance',
  frequency: 'a frequency',
  voltage: 'a voltage',
  current: 'a current',
  power: 'a power',
  time: 'a time',
  temperature: 'a temperature',
  angle: 'an angle',
  latitude: 'a latitude',
  longitude: 'a longitude',
  bearing: 'a bearing',
  'field strength': 'a field strength',
  resistivity: 'a resistivity',
  conductivity: 'a conductivity',
  conductance: 'a conductance',
  ratio: 'a ratio',
  level: 'a level',
  mass: 'a mass',
};

const WRITTEN: Readonly<Record<QuantityKind, string>> = {
  length: 'A length: text with a unit, or a plain number in metres.',
  capacitance: 'A capacitance: text with a unit, or a plain number in farads.',
  inductance: 'An inductance: text with a unit, or a plain number in henries.',
  resistance: 'A resistance: text with a unit, or a plain number in ohms.',
  frequency: 'A frequency: text with a unit, or a plain number in hertz.',
  voltage: 'A voltage: text with a unit, or a plain number in volts.',
  current: 'A current: text with a unit, or a plain number in amperes.',
  power: 'A power: text with a unit, or a plain number in watts.',
  time: 'A time: text with a unit, or a plain number in seconds.',
  temperature: 'A temperature: text with a unit, or a plain number in kelvins.',
  angle: 'An angle: text with a unit, or a plain number in degrees.',
  latitude: 'A latitude: text as "51.2 N" or "51°12′N", or a plain number in degrees, north positive.',
  longitude: 'A longitude: text as "4.5 W" or "4°30′W", or a plain number in degrees, east positive.',
  bearing: 'A bearing: text with a unit or a point of the compass, or a plain number in degrees from north by east.',
  'field strength': 'A field strength: text with a unit, or a plain number in volts per metre.',
  resistivity: 'A resistivity: text with a unit, or a plain number in ohm metres.',
  conductivity: 'A conductivity: text with a unit, or a plain number in siemens per metre.',
  conductance: 'A conductance: text with a unit, or a plain number in siemens.',
  ratio: 'A ratio: text in per cent, or a plain number.',
  level: 'A level: text with a unit, or a plain number in decibels.',
  mass: 'A mass: text with a unit, or a plain number in kilograms.',
};

/** How a quantity is written in a description. */
export const writtenQuantity = (kind: QuantityKind): string => WRITTEN[kind];

/** "a length". */
export const aQuantity = (kind: QuantityKind): string => A_QUANTITY[kind];

/** First digits of round figures. */
const ROUND = [1, 2, 5, 10];

/** A round figure amid a range; where that begins at 0 or below, half its greatest. */
function roundWithin([low, high]: readonly [number, number]): number {
  const amid = low > 0 ? Math.sqrt(low * high) : high / 2;
  const decade = 10 ** Math.floor(Math.log10(amid));
  const figures = ROUND.map((digit) => digit * decade);
  return figures.reduce((best, x) => (Math.abs(Math.log(x / amid)) < Math.abs(Math.log(best / amid)) ? x : best));
}

/** Ways to write a quantity of a kind, of sizes that are usual where it is asked. */
function examplesFor({ kind, usual }: QuantityOfField): readonly string[] {
  const { examples } = QUANTITY_KINDS[kind];
  if (!usual) return examples;
  const [low, high] = usual;
  const fitting = examples.filter((example) => {
    const read = parseQuantity(example, kind);
    return read.ok && read.value >= low && read.value <= high;
  });
  if (fitting.length > 0) return fitting;
  const figure = high > 0 ? roundWithin(usual) : Number.NaN;
  return figure >= low && figure <= high ? [formatQuantity(figure, kind)] : examples;
}

/** "63 mm", or "50 km" for a distance: how a quantity of a kind is written. */
export const exampleOf = (asked: QuantityOfField): string => examplesFor(asked)[0];

/** "“63 mm” or “2 1/2 in”": the ways to write a quantity of a kind, in the file's own quotes. */
export const examplesOf = (asked: QuantityOfField): string =>
  examplesFor(asked)
    .map((example) => `"${example}"`)
    .join(' or ');

/** A limit in the unit a builder would use; a temperature to whole degrees, rounded so that what is said is accepted. */
export function limitText(value: number, kind: QuantityKind, round: (x: number) => number): string {
  if (value === 0) return '0';
  return kind === 'temperature' ? `${formatNumber(round(value - ZERO_CELSIUS), 4)} °C` : formatQuantity(value, kind);
}
