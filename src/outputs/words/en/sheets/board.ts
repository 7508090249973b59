import { formatNumber, formatQuantity } from '../../../../engine/units/format.ts';
import { printable } from '../../printable.ts';
import { counted, listOf } from '../grammar.ts';

/** What a board of a given size cannot hold. Sizes m. */
export type BoardWarning =
  | { readonly code: 'board.too-narrow'; readonly width: number }
  | { readonly code: 'board.too-short'; readonly length: number };

const millimetres = (metres: number): string => `${Math.round(metres * 1e3)} mm`;

export function boardWarning(warning: BoardWarning): string {
  switch (warning.code) {
    case 'board.too-narrow':
      return `The board must be ${millimetres(warning.width)} wide: its widest part would not fit on it.`;
    case 'board.too-short':
      return `The board must be ${millimetres(warning.length)} long: laid out in the usual order, the parts need that much.`;
  }
}

interface Named {
  readonly tag: string;
  readonly words: string;
}

export const boardSheetWords = {
  title: 'Board, full size',
  mounted: 'Parts on the board',
  onBand: (band: string): string =>
    `With the band switch on “${printable(band)}”: the switch and its wires are not on this board plan; the wiring list says what they join.`,
  withSwitch: (band: string): string =>
    `S1 is the band switch: its contacts are marked by pole and way, as 1, 1a, 1b; lay yours on and mark its own contacts so. The checks below are made with the switch on each band; “${printable(band)}” comes first.`,
  intro: ({ width, length }: { readonly width: number; readonly length: number }): string =>
    `The board from above, ${Math.round(width * 1e3)} × ${millimetres(length)}. Prick the holes through the paper. Circles with a cross are holes, dots are where wires end. Dashed bodies are parts whose size is not known: lay yours on before you drill. Heavy lines are the wires, by their numbers in the wiring list.`,
  alt: (parts: readonly Named[]): string =>
    `Layout of the board: ${listOf(parts.map(({ tag, words }) => `${tag} ${words}`))}.`,
  edge: 'edge of the board',
  sizeAssumed: '(size assumed)',
  /** On the drawing: the tag and what the part is. */
  part: ({ tag, words }: Named): string => `${tag}  ${words}`,
  partTitle: ({ tag, words }: Named): string => `${tag}: ${words}`,
};

/** The view of the whole set. */
export const setViewWords = {
  title: 'What it will look like',
  name: ({ tag, words }: Named): string => `${tag}  ${words}`,
  note: 'To scale, from the sizes of the parts and of the board. Bodies with dashed edges, and the heights of bought parts, are assumed. The heavier lines on the board are the wires.',
  description: ({
    parts,
    width,
    length,
  }: {
    readonly parts: readonly Named[];
    readonly width: number;
    readonly length: number;
  }): string =>
    `The set seen from above and to one side, on a board of ${Math.round(width * 1e3)} × ${millimetres(length)}: ${listOf(parts.map(({ tag, words }) => `${tag} ${words}`))}.`,
  turn: 'Turn the set',
  tilt: 'Look from higher or lower',
  degrees: (angle: number): string => `${formatNumber(angle, 3)}°`,
};

/** What the first wire of a net is for. */
export type WireUse = 'earth' | 'aerial' | 'output' | 'band switch' | 'detector' | 'tuned circuit';

/** How two coils that reach each other stand. Distance m, tilt °. */
interface Standing {
  readonly first: string;
  readonly second: string;
  readonly distance?: number;
  readonly tilt?: number;
}

export const wiringSheetWords = {
  title: 'Wiring list',
  description: (wires: number): string => `Wiring list of ${counted(wires, 'wire', 'wires')}.`,
  intro:
    'Lay one piece of insulated wire after another, in this order: lay it, bare both ends until they shine, fix them, tug, tick. Run each as the board sheet draws it, straight, and around what stands in between; where two must cross, check that the insulation of both is whole. A wire marked “keep short” carries the signal before the detector: cut it no longer than it must be, and keep it away from other wires. When all are ticked the circuit is complete, and nothing else is joined to anything.',
  terminals:
    'Where a part has no terminal of its own, drive a brass pin or screw a solder tag where the board sheet has the dot: part and wires are soldered there, or clamped under a screw with two washers. No point takes more than two wires.',
  headings: { ends: 'Parts and their ends', wires: 'Wires, in the order in which they are laid' },
  columns: {
    part: 'Part',
    what: 'What it is',
    ends: 'Its ends',
    number: 'No.',
    fromTo: 'From → to',
    cut: 'Cut',
    use: 'What for',
  },
  uses: {
    earth: 'the earth line: these wires make one chain',
    aerial: 'from the aerial',
    output: 'from the detector to the output terminals',
    'band switch': 'to the band switch',
    detector: 'to the detector',
    'tuned circuit': 'the tuned circuit',
  } satisfies Record<WireUse, string>,
  keepShort: 'keep short',
  length: millimetres,
  free: (terminals: readonly string[]): string => `Left free, with no wire on it: ${listOf(terminals)}.`,
  coils: 'How the coils stand',
  coupled: ({ first, second, distance, tilt = 0 }: Standing): string => {
    const pair = `${first} and ${second} are coupled: stand them as the board drawing has them, their axes in one line`;
    if (distance === undefined) return `${pair}.`;
    const apart = `${pair}, their middles ${formatQuantity(distance, 'length')} apart`;
    return tilt === 0 ? `${apart}.` : `${apart}, the second turned by ${formatNumber(tilt, 3)}°.`;
  },
  movable:
    'Let the last of them slide along that line: glue it to a block that runs between two strips of wood, with about 10 cm of travel, and make its leads of flexible wire 100 mm longer than the list has them. Nearer is louder, further apart separates close stations better; start where the drawing has it.',
  uncoupled: 'No other coils may couple: keep their axes at right angles, and about 10 cm apart.',
  heater: (voltage: number): string =>
    `The heater is not on this list: its two pins go by a twisted pair of insulated wire straight to their own supply of ${formatQuantity(voltage, 'voltage')}, with a fuse of about twice the heater current at the supply, and to nothing else here. Which pins are heater, anode and cathode is in the data sheet of your valve: mark them on the holder, seen from below, before you solder.`,
  heaters: (voltage: number): string =>
    `The heaters are not on this list: the two pins of each valve go by a twisted pair of insulated wire straight to their own supply of ${formatQuantity(voltage, 'voltage')}, with a fuse of about twice the heater current at the supply, and to nothing else here. Which pins are heater, anode and cathode is in the data sheet of your valve: mark them on the holder, seen from below, before you solder.`,
  crystal: {
    phones:
      'The anode is the arm with the whisker, the cathode the cup with the crystal. The detector works either way round with phones; the list has it so that the terminal P1 becomes positive.',
    amplifier:
      'The anode is the arm with the whisker, the cathode the cup with the crystal. The detector works either way round; the list has it so that its load becomes positive.',
  },
  diode: {
    phones:
      'The detector works either way round with phones; the list has it so that the terminal P1 becomes positive.',
    amplifier: 'The detector works either way round; the list has it so that its load becomes positive.',
  },
};
