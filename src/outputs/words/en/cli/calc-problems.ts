import type { Expected, Given, Hint } from '../../../../engine/fields/problem.ts';
import type { UnfitReason } from '../../../../engine/measure/unfit.ts';
import { expectedText } from '../fields/expected.ts';
import { givenText } from '../fields/given.ts';
import { hintText } from '../fields/hints.ts';
import { counted } from '../grammar.ts';
import { unfitText } from '../measure/unfit.ts';

/** What a calculation expects where something else stands. */
const EXPECTED = {
  'plain-object': 'a plain object',
  'sizes-together': 'sizes that go together',
  'values-together': 'values that can be worked out together',
  shape: 'an object with "shape"',
  'no-such-key': 'no such key',
  'coil-wire': 'wire: { "diameter": "0.5 mm" }',
  'aerial-wire': 'wire: { "diameter": "2 mm" }',
  'unwound-shape': '"shape", such as "solenoid"',
  unwound: 'a coil without its turns',
  turns: 'a number of turns',
  coupling: '{ "first": coil, "second": coil, "offset": "30 mm" }',
  tilt: 'a tilt of at most a whole turn, such as "75°"',
  angle: 'an angle of at most a whole turn, such as "75°", or a plain number of radians',
  wire: '{ "diameter": "0.5 mm", "frequency": "1 MHz" }',
  metres: 'metres',
  corner: '[along, across, up] in metres',
  corners: 'a list of points',
  'impedance-points': 'a list of { frequency, resistance, reactance }',
  'touchstone-text': 'the text of a one-port Touchstone file',
  range: '[lowest, highest]',
  ground: '{ conductivity, permittivity }',
  'ground-or-sections': 'either "ground" with "distance", or "sections" from the transmitter',
  distance: 'a length; with "sections" leave it out or give their sum',
  detector: 'detector: { "saturationCurrent": "0.5 µA", "ideality": 1.1 } or { "kind": "germanium" }',
  'kind-or-law': 'detector: either "kind", or both "saturationCurrent" and "ideality"',
  'detector-load': 'load: { "resistance": "10 kΩ", "capacitance": "1 nF" }',
  'detector-circuit': 'tunedCircuit: { "inductance": "220 µH", "q": 150, "frequency": "1 MHz" }',
  tap: 'a tap above 0, 1 being the top',
  'carrier-or-circuit': 'either "carrier" or "tunedCircuit", and not both',
  'power-with-circuit': 'a power such as "1 nW" with a tuned circuit',
  'capacitance-with-circuit': '"capacitance", such as "1 nF", with a tuned circuit',
  'wave-station':
    'a station such as { "frequency": "1 MHz", "emf": "10 mV", "modulation": [{ "frequency": 1000, "depth": 0.3 }] }',
  'wave-stations': 'stations: a list',
  'wave-aerial': 'aerial: { "resistance": "25 Ω", "capacitance": "200 pF" }',
  'wave-circuit': 'tunedCircuit: { "inductance": "220 µH", "capacitance": "77 pF", "parallelResistance": "207 kΩ" }',
  'wave-load': 'load: { "resistance": "47 kΩ", "capacitance": "470 pF" }',
  choices: 'choices: a list such as [{ "path": "/arrangement/detectorTap", "values": [12, 18, 24] }]',
  choice: '{ "path": "/arrangement/detectorTap", "values": [12, 18, 24] }',
  'place-in-set': 'a JSON pointer to a value that stands in "set", such as "/coils/0/turns"',
  'place-of-its-own': 'a place that no choice before it changes',
  'choice-values': 'values: a list of what may stand there',
  aims: 'aims: a list such as [{ "kind": "loudest", "station": "…" }, { "kind": "most heard" }]',
  aim: '{ "kind": "loudest" or "clearest", "station": its name } or { "kind": "most heard" }',
  'station-in-set': 'the name of a station of "set", or its place in the list, counted from 0',
  combinations: 'choices with at most 100000 combinations of values',
} as const;

/** A code of what a calculation expects. */
export type CalcExpectation = keyof typeof EXPECTED;

/** The types of JSON, as a missing or wrong value is told. */
const TYPES = {
  object: 'an object { … }',
  array: 'a list [ … ]',
  string: 'text',
  number: 'a number',
  boolean: 'true or false',
} as const;

/** A type of JSON. */
export type JsonType = keyof typeof TYPES;

/** What is wrong with the input of a calculation, as facts. */
export interface CalcProblem {
  readonly expected:
    | Expected
    | { readonly code: CalcExpectation }
    | { readonly code: 'json-type'; readonly types: readonly JsonType[] }
    | { readonly code: 'unfit'; readonly reason: UnfitReason };
  readonly given: Given;
  readonly hint?: Hint;
}

const isOwn = (code: string): code is CalcExpectation => Object.hasOwn(EXPECTED, code);

/**
 * "expected …, got …", with a reason or a way out.
 * @param problem of the input of a calculation
 * @returns one line of text
 */
export function calcProblemText({ expected, given, hint }: CalcProblem): string {
  if (expected.code === 'unfit') return unfitText(expected.reason);
  const what =
    expected.code === 'json-type'
      ? expected.types.map((type) => TYPES[type]).join(' or ')
      : isOwn(expected.code)
        ? EXPECTED[expected.code]
        : expectedText(expected as Expected);
  const text = `expected ${what}, got ${givenText(given)}`;
  return hint ? `${text}: ${hintText(hint)}` : text;
}

/** What a calculation says beside its figures. */
export const calcNotes = {
  leftOut: (name: string): string => `“${name}” is not used here and was left out.`,
  endless: (names: readonly string[]): string => `What was given leaves no finite figure for ${names.join(', ')}.`,
  combinationsRefused: (count: number): string =>
    `${counted(count, 'combination', 'combinations')} of values left out: these values cannot stand together.`,
  noSpread:
    'These turns cannot be spread to this inductance: there are too few of them, or the coil is no single layer.',
  noWire: 'No common wire reaches this inductance on so short a former.',
} as const;
