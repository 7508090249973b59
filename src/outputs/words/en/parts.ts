import type { Part, Terminal } from '../../../engine/built/built-set.ts';
import type { PartIdentity, PartRole } from '../../../engine/built/identity.ts';
import type { SetDescription } from '../../../engine/set/description.ts';
import { capital, formatNumber, formatQuantity } from '../../../engine/units/format.ts';
import { printable } from '../printable.ts';
import { outputNames } from './sheets/circuit.ts';

const own = ({ displayName = '' }: PartIdentity): string => printable(displayName);
const numbered = ({ index = 0 }: PartIdentity): string => `trap ${index + 1}`;

/** What a part is called, by what it is there for. */
const PART: Record<PartRole, (part: PartIdentity) => string> = {
  aerial: () => 'aerial',
  earth: () => 'earth',
  'tuning-coil': own,
  'aerial-coil': own,
  rotor: own,
  'spare-coil': own,
  frame: () => 'frame',
  rod: () => 'rod',
  tuning: () => 'tuning capacitor',
  'aerial-tuning': () => 'aerial tuning capacitor',
  'series-capacitor': () => 'series capacitor',
  'parallel-capacitor': () => 'parallel capacitor',
  'pump-capacitor': () => 'pump capacitor',
  'by-pass': () => 'by-pass capacitor',
  'trap-coil': (part) => `${numbered(part)} coil`,
  'trap-capacitor': (part) => `${numbered(part)} capacitor`,
  detector: () => 'detector',
  'second-detector': () => 'second detector',
  'bias-cell': () => 'bias cell',
  'equaliser-resistor': () => 'equalising resistor',
  'equaliser-capacitor': () => 'its by-pass',
  transformer: () => 'transformer',
  'load-resistor': () => 'load resistor',
  'coupling-capacitor': () => 'coupling capacitor',
  load: ({ load = 'phones' }) => outputNames[load],
  listed: own,
};

/** "series capacitor", "trap 1 coil"; of a coil the user's own name for it. */
export const partName = (part: PartIdentity): string => PART[part.role](part);

/** At the head of a line: the user's own names stand as they are. */
export const partTitle = (part: PartIdentity): string =>
  part.displayName === undefined ? capital(partName(part)) : partName(part);

/** A part in a list of parts, with what it measures: "coil “main”", "by-pass capacitor, 1 nF". */
export function partWords(part: Part, set: SetDescription): string {
  const name = partName(part);
  const { values } = part;
  switch (values.kind) {
    case 'outdoors':
      return `${name} terminal`;
    case 'coil': {
      if (part.role === 'frame') return 'frame aerial';
      if (part.role === 'rod') return 'ferrite rod';
      if (values.coil !== undefined) return `coil “${printable(set.coils[values.coil].name)}”`;
      return `${name}, ${formatQuantity(values.inductance, 'inductance')}`;
    }
    case 'capacitor':
      return `${name}, ${formatQuantity(values.capacitance, 'capacitance')}`;
    case 'resistor':
      return `${name}, ${formatQuantity(values.resistance, 'resistance')}`;
    case 'variable':
      return name;
    case 'detector': {
      const { kind } = set.detector;
      return kind === 'galena' || kind === 'valve' ? `${name}, ${kind}` : name;
    }
    case 'cell':
      return `${name}, ${formatQuantity(values.voltage, 'voltage')}`;
    case 'transformer':
      return `${name}, ${formatNumber(values.ratio, 3)} to 1`;
    case 'load':
      return set.load.kind === 'amplifier' ? 'amplifier terminals (P2: the braid)' : 'terminals for the phones';
  }
}

/** A terminal as it is marked at its part: "tap 11", "fixed vanes". */
export function terminalWords({ is, turn = 0, side }: Terminal, { values }: Pick<Part, 'values'>): string {
  switch (is) {
    case 'tap':
      return `tap ${formatNumber(turn, 4)}`;
    case 'fixed':
    case 'moving': {
      const kind = values.kind === 'variable' ? values.tuning.kind : undefined;
      return `${is} ${kind === 'variable' || kind === 'vanes' || kind === 'measured' ? 'vanes' : 'side'}`;
    }
    case 'one':
    case 'other':
      return `${side ? `${side} ` : ''}${is} end`;
    default:
      return is;
  }
}
