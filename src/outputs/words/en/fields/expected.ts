import type { DescriptionExpectations, Expected } from '../../../../engine/fields/problem.ts';
import type { ListOf } from '../../../../engine/fields/refusal.ts';
import { formatQuantity } from '../../../../engine/units/format.ts';
import { QUANTITY_KINDS } from '../../../../engine/units/parse.ts';
import { counted } from '../grammar.ts';
import { aQuantity, exampleOf, limitText } from './quantities.ts';

const length = (metres: number): string => formatQuantity(metres, 'length');
const quoted = (options: readonly string[]): string => options.map((option) => `"${option}"`).join(', ');

const LISTS: { readonly [L in ListOf]: { readonly list: string; readonly one: string; readonly other: string } } = {
  corners: { list: 'a list of corners [along, across, up] in metres', one: 'corner', other: 'corners' },
  'impedance-points': { list: 'a list of { frequency, resistance, reactance }', one: 'point', other: 'points' },
  traps: { list: 'a list of traps', one: 'trap', other: 'traps' },
  elements: { list: 'a list of elements', one: 'element', other: 'elements' },
  'detector-points': { list: 'a list of { voltage, current }', one: 'measured point', other: 'measured points' },
  'scale-points': { list: 'a list of { scale, capacitance }', one: 'measured point', other: 'measured points' },
  coils: { list: 'a list of coils', one: 'coil', other: 'coils' },
  sections: { list: 'a list of sections', one: 'section', other: 'sections' },
  stations: { list: 'a list of stations', one: 'station', other: 'stations' },
  rows: { list: 'a list of rows', one: 'row', other: 'rows' },
  bands: { list: 'a list of bands', one: 'band', other: 'bands' },
  wants: { list: 'a list of wants', one: 'want', other: 'wants' },
  kept: { list: 'a list of parts and places', one: 'part or place', other: 'parts and places' },
  assumed: { list: 'a list of places of the description', one: 'place', other: 'places' },
  scenes: { list: 'a list of scenes', one: 'scene', other: 'scenes' },
  readings: { list: 'a list of measurements', one: 'measurement', other: 'measurements' },
  correlations: { list: 'a list of correlations', one: 'correlation', other: 'correlations' },
  formers: { list: 'a list of formers', one: 'former', other: 'formers' },
  reels: { list: 'a list of reels of wire', one: 'reel', other: 'reels' },
  capacitors: { list: 'a list of capacitors', one: 'capacitor', other: 'capacitors' },
  sheets: { list: 'a list of sheets', one: 'sheet', other: 'sheets' },
  detectors: { list: 'a list of detectors', one: 'detector', other: 'detectors' },
  loads: { list: 'a list of phones, earpieces and amplifiers', one: 'load', other: 'loads' },
  transformers: { list: 'a list of transformers', one: 'transformer', other: 'transformers' },
  switches: { list: 'a list of switches', one: 'switch', other: 'switches' },
  aerials: { list: 'a list of aerials', one: 'aerial', other: 'aerials' },
  earths: { list: 'a list of earths', one: 'earth', other: 'earths' },
  arrangements: { list: 'a list of arrangements', one: 'arrangement', other: 'arrangements' },
};

/** How a place of the description is called: as the file has it, or by its labels. */
export type NameOf = (path: string) => string;

type Phrases<Facts> = { readonly [C in keyof Facts]: (figures: Facts[C], nameOf: NameOf) => string };

/** What would be accepted, as the object of "expected". */
const EXPECTED: Phrases<DescriptionExpectations> = {
  quantity: (asked) => `${aQuantity(asked.kind)} such as "${exampleOf(asked)}"`,
  'quantity.at-least': ({ kind, min }) => `${aQuantity(kind)} of at least ${limitText(min, kind, Math.ceil)}`,
  'quantity.above': ({ kind, above }) => `${aQuantity(kind)} above ${limitText(above, kind, Math.ceil)}`,
  'quantity.at-most': ({ kind, max }) => `${aQuantity(kind)} of at most ${limitText(max, kind, Math.floor)}`,
  'quantity.not-tiny': ({ kind, least }) =>
    `${aQuantity(kind)} that is 0 or no smaller than ${`${least} ${QUANTITY_KINDS[kind].unit}`.trimEnd()}`,
  'whole-number': ({ min, max }) => `a whole number from ${min} to ${max}`,
  number: ({ min, max }) => `a number from ${min} to ${max}`,
  'at-least': ({ min }) => `at least ${min}`,
  'at-most': ({ max }) => `at most ${max}`,
  'one-of': ({ options }) => `one of ${quoted(options)}`,
  'one-of-or-object': ({ options, keys }) => `one of ${quoted(options)}, or { ${keys.join(', ')} }`,
  kind: ({ key, options }) => `"${key}" to be one of ${quoted(options)}`,
  'object-with': ({ key }) => `an object with "${key}"`,
  object: () => 'an object { … }',
  literal: ({ value }) => `"${value}"`,
  value: () => 'a value',
  'another-value': () => 'another value',
  'any-list': () => 'a list [ … ]',
  list: ({ of }) => LISTS[of].list,
  'list.at-least': ({ of, count }) => `at least ${counted(count, LISTS[of].one, LISTS[of].other)}`,
  'list.at-most': ({ of, count }) => `at most ${counted(count, LISTS[of].one, LISTS[of].other)}`,
  'items.at-least': ({ count }) => `at least ${count} of them`,
  'items.at-most': ({ count }) => `at most ${count} of them`,
  'list-of': ({ keys }) => (keys.length > 0 ? `a list of { ${keys.join(', ')} }` : 'a list of numbers'),
  'object-of': ({ keys }) => `{ ${keys.join(', ')} }`,
  rising: ({ lower, upper }) => `a ${upper} above the ${lower}`,
  'finite-number': () => 'a finite number',
  text: () => 'text',
  'text.at-most': ({ characters }) => `at most ${characters} characters`,
  'a-name': () => 'a name',
  'true-or-false': () => 'true or false',
  'rising-scale': () => 'scale readings that rise from point to point',
  'rising-voltages': () => 'voltages that rise, and currents that never fall, from point to point',
  'touchstone-file': () => 'a one-port Touchstone file',
  'record-file': () => 'a table of time and volts',
  'network-file': () => 'the text of a Touchstone file of one or two ports',
  'field-or-power': () => 'a field strength, or a power with a distance or a position',
  'scene-content': () => 'something to see: rows with at least one point, or a picture',
  'file.at-most': ({ megabytes }) => `a description of at most ${megabytes} MB`,
  description: () => 'a description: { "format": … }',
  box: () => 'a box of parts: { "format": "faintwave-box/1", … }',
  readings: () => 'readings: { "format": "faintwave-readings/1", "measurements": […] }, or a table',
  'set-link': () => 'a link of a set, with all that follows #set1=',
  json: () => 'JSON',
  'utf-8': () => 'text in UTF-8',
  'readable-file': () => 'a file that can be read',
  'name-of-its-own': () => 'a name of its own',
  'coil-of-its-own': () => 'a coil of its own',
  'trap-coil': () => 'the trap’s coil: the name of one of the coils, or an inductance',
  'trap-capacitor': () => 'the station that the trap stops, or its capacitance',
  'coil-name': ({ names }) =>
    names.length > 0 ? `the name of a coil (${quoted(names)})` : 'the name of a coil (there is none yet)',
  'station-name': ({ names, more }) =>
    names.length > 0
      ? `the name or the frequency of a station (${quoted(names)}${more > 0 ? ` and ${more} more` : ''})`
      : 'the name or the frequency of a station (there is none yet)',
  'another-station': () => 'another station',
  'part-or-place': ({ parts }) => `one of ${quoted(parts)}, or a place in one of them`,
  'turns.at-most': ({ turns }) => `at most the coil’s ${turns} turns`,
  'band-arrangement': () => 'the arrangement of this band',
  'standing-band': () => 'one band without an arrangement of its own',
  'another-node': () => 'another node than its "from"',
  winding: ({ another }) =>
    another ? 'the name of another inductor or coil of the list' : 'the name of an inductor or coil of the list',
  'less-than-field': ({ max, field }, nameOf) =>
    `less than ${formatQuantity(max, 'capacitance')}, the value of ${nameOf(field)}`,
  'mutual.less-than': ({ max }) =>
    `less than ${formatQuantity(max, 'inductance')}, the geometric mean of its two coils, and less still beside other coils`,
  buildable: () => 'sizes that can be built',
  'turn-spacing.at-least': ({ wire }) => `at least ${length(wire)}, the thickness of the bare wire`,
  'size-for-wire.at-least': ({ size }) => `at least ${length(size)} for wire this thick`,
  'posts.at-most': ({ count, circle }) =>
    `at most ${count} on a circle of ${length(circle)}, with the wire between them`,
};

/** What would be accepted, as the object of "expected". */
export const expectedText = (expected: Expected, nameOf: NameOf = (path) => path): string =>
  (EXPECTED[expected.code] as (figures: Expected, nameOf: NameOf) => string)(expected, nameOf);
