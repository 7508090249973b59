import type { Hint, Hints } from '../../../../engine/fields/problem.ts';
import type { NameOf } from './expected.ts';
import { impossibleText } from './impossible.ts';
import { aQuantity, exampleOf, examplesOf } from './quantities.ts';
import { recordProblem } from './record.ts';
import { touchstoneProblem } from './touchstone.ts';

type Phrases<Facts> = { readonly [C in keyof Facts]: (figures: Facts[C], nameOf: NameOf) => string };

/** A way out, as it stands in brackets after a problem. */
const HINTS: Phrases<Hints> = {
  'too-long': () => 'this is too long for a quantity',
  'not-finite': () => 'write a finite number',
  'too-small': () => 'this is too small to be told from 0',
  'number-unclear': ({ number }) =>
    `"${number}" is not clear as a number; write the digits together, with a point before decimals, as in 1234.5`,
  'thousand-or-fraction': ({ number, whole, fraction }) =>
    `"${number}" could be a thousand or a fraction; write ${whole} or ${fraction}`,
  'write-example': (asked) => `write ${examplesOf(asked)}`,
  empty: () => 'nothing is written here',
  'gauge-is-a-length': ({ gauge, kind }) => `${gauge} is a wire size, not ${aQuantity(kind)}`,
  'gauge-range': ({ gauge }) => (gauge === 'SWG' ? 'SWG sizes here run from 10 to 48' : 'AWG sizes run from 0 to 44'),
  'begin-with-number': (asked) => `begin with a number, as in "${exampleOf(asked)}"`,
  'too-large-or-small': () => 'this is too large or too small to calculate with',
  'add-a-unit': (asked) => `add a unit, as in "${exampleOf(asked)}"`,
  'add-this-unit': ({ number, unit }) => `add a unit: "${number} ${unit}", not "${number}"`,
  'unit-unclear': ({ number, unit, units: [usual, other] }) =>
    `on old parts "${unit}" is ${usual}, elsewhere ${other}; write "${number} ${usual}" or "${number} ${other}"`,
  'unit-of-another-kind': ({ unit, other, ...asked }) =>
    `"${unit}" is the unit of ${aQuantity(other)}; write ${examplesOf(asked)}`,
  'unit-not-known': ({ unit, ...asked }) => `the unit "${unit}" is not known here; write ${examplesOf(asked)}`,
  'did-you-mean': ({ option }) => `did you mean "${option}"?`,
  'write-wire': () => 'write { "size": "28 SWG", "covering": "enamel" }',
  'touchstone-problems': ({ problems }) => problems.map(touchstoneProblem).join('; '),
  'record-problems': ({ problems }) => problems.map(recordProblem).join('; '),
  'touchstone-empty': () => 'it holds no points',
  'other-file': () => 'this is not a set; choose another file',
  'no-set': () => 'this is not a set',
  'start-from-example': () => 'start from one of the examples',
  'start-from-example-box': () => 'start from one of the examples in examples/boxes',
  'cut-short': () => 'the file is cut short',
  'copy-whole-link': () => 'part of the link is missing or changed; copy the whole of it',
  'link-of-newer-form': () => 'a newer version made this link; open it there and save the set as a file',
  'closing-bracket': () => 'the file is cut short: a closing } or ] is missing at its end',
  'not-json': () => 'it cannot be read as JSON',
  'breaks-at': ({ line, column }) => `it breaks at line ${line}, column ${column}`,
  'save-as-utf-8': () =>
    'save it again as UTF-8: in an editor, "Save as" with the encoding UTF-8; in a spreadsheet, "CSV UTF-8"',
  'may-have-moved': () => 'it may have been moved',
  'system-message': ({ message }) => message,
  'leave-others-out': () => 'leave the others out',
  missing: () => 'it is missing',
  misspelt: ({ written, key }) => `"${written}" is written there; did you mean "${key}"?`,
  'name-taken': ({ by }, nameOf) => `${nameOf(by)} has this name already`,
  'name-a-coil': () => 'name one of the coils, or add one',
  'add-a-coil': () => 'add a coil of this name',
  'not-on-mains': () => 'no voltage is measured on mains-powered equipment',
  'station-or-frequency': () => 'write the name as it stands in the list of stations, or a frequency such as "603 kHz"',
  'places-of-parts': () => 'write for example "load", "coils[0]" or "aerial.height"',
  'second-coil': ({ taken }, nameOf) => `${nameOf(taken)} names it already; add a second coil`,
  'taps-from-earth': () => 'taps are counted from the earthed end',
  'switch-stands-once': () =>
    'the switch stands on one band: its arrangement is the set’s own, every other band has one of its own',
  'switch-changes': () => 'a band switch changes coils, taps and capacitors of a set that is tuned by its capacitor',
  'frame-tunes': () => 'this arrangement is tuned by the frame itself',
  'rod-tunes': () => 'this arrangement is tuned by the rod’s own coil',
  'loop-is-coil': () => 'a frame or rod is its own tuning coil',
  'full-wave-needs-centre': () =>
    'a full-wave pair is fed from both ends of a coil with its centre earthed, which this arrangement does not have',
  'both-ends-on-one-node': () => 'an element with both ends on one node does nothing',
  'mutual-between-two': () => 'mutual inductance lies between two of them',
  'lower-or-raise': ({ field }, nameOf) => `lower this, or raise ${nameOf(field)}`,
  'coupling-too-close': () => 'no coils couple so closely',
  'close-or-thinner': () => 'leave it out for a close winding, or take thinner wire',
  'thinner-or-wider': () => 'take thinner wire, or wind on something wider',
  'fewer-or-larger': () => 'take fewer, a larger circle or thinner wire',
  unbuildable: ({ reason }) => impossibleText(reason),
};

/** A way out, as it stands in brackets after a problem. */
export const hintText = (hint: Hint, nameOf: NameOf = (path) => path): string =>
  (HINTS[hint.code] as (figures: Hint, nameOf: NameOf) => string)(hint, nameOf);
