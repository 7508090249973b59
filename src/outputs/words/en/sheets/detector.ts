import type { DetectorDescription } from '../../../../engine/kinds/detectors/detector-schema.ts';
import { formatQuantity } from '../../../../engine/units/format.ts';
import { kHz, mm, ohms } from '../../figures.ts';
import { printable } from '../../printable.ts';
import { ohmsBeside, spanBeside } from '../../ranges.ts';
import type { Contact } from './bring-up-steps.ts';
import { outputNames } from './circuit.ts';

/** Short lines, one thing to do in each. */
type Lines = readonly string[];
type Row = readonly [part: string, number: string, size: string];

interface Block {
  readonly length: number;
  readonly width: number;
  readonly apart: number;
  readonly hole: number;
}
const volts = (v: number): string => formatQuantity(Math.abs(v), 'voltage', 2);

/** A figure with the range of sound samples. */
interface Sampled {
  readonly value: number;
  readonly range: readonly [number, number];
}
const isSpread = ({ range: [low, high] }: Sampled): boolean => high > 1.02 * low;
/** @param overload above it a meter shows nothing, Ω. */
function ohmsText(reading: Sampled, overload: number): string {
  const {
    value,
    range: [low, high],
  } = reading;
  if (low > overload) return `No reading: above ${formatQuantity(overload, 'resistance', 2)}.`;
  const figure = value > overload ? 'No reading' : `About ${ohms(value)}`;
  if (!isSpread(reading)) return `${figure}.`;
  if (high > overload) return `${figure} (from ${ohms(low)} upward).`;
  return `${figure} ${ohmsBeside(value, [low, high])}.`;
}

/** The detector made or fitted, and what it should read. SI. */
export const detectorSheetWords = {
  title: 'Detector',
  description: 'How to make or fit the detector, step by step, with expected readings.',
  headings: {
    cautions: 'Take care',
    materials: 'What it is made of',
    steps: { make: 'How to make it', fit: 'How to fit it' },
    checks: 'When it is finished, before it is wired',
    inSet: 'When the set is finished',
  },
  columns: {
    part: 'Part',
    number: 'Number',
    size: 'Size and material',
    check: 'Check',
    expected: 'Expected',
    otherwise: 'If not',
  },
  two: 'The set has two detectors: make both alike, and check each.',
};

const BLOCK = ({ length, width }: Block): Row => [
  'Block',
  '1',
  `dry hard wood or plastic, ${mm(length)} by ${mm(width)}, about 8 mm thick`,
];
const FITTINGS: readonly Row[] = [
  ['Screws', '2', 'brass, 3 mm, each with two nuts and three washers'],
  [
    'Arm',
    '1',
    'brass wire or strip, 1.5 to 2 mm, 50 mm long, in a clamp or a hole of its post; a post about 20 mm high',
  ],
  ['Handle', '1', 'a bead or a piece of plastic tube over the end of the arm'],
];
const CUP: Row = ['Cup', '1', 'brass cap or short tube, 10 to 14 mm across, with a hole in its bottom'];
const PACKING: Row = [
  'Packing',
  '1',
  'tinfoil or aluminium foil, crumpled; or low-melting metal: see the cautions first',
];

const WHISKERS: Record<Contact, string> = {
  whisker: 'springy bronze or brass wire, 0.2 to 0.3 mm, about 60 mm',
  'firm whisker': 'springy steel wire, 0.3 to 0.5 mm, about 60 mm, its tip firm',
  'pair of crystals': 'a second cup, in the arm, with its crystal',
};

type MineralKind = Extract<DetectorDescription, { kind: 'mineral' }>['mineral'];
const CRYSTALS: Record<'galena' | MineralKind, string> = {
  galena: 'galena, the size of a pea, freshly broken, bright and flat on one face',
  'iron pyrites': 'iron pyrites, the size of a pea, freshly broken and bright',
  'zincite-bornite': 'zincite in the fixed cup, bornite in the moving one, each the size of a pea',
  carborundum: 'carborundum, the size of a pea, with a sharp edge up',
  'silicon crystal': 'fused silicon, the size of a pea, bright on one face',
};

/** Each kind's parts and steps. */
export const detectorMaking = {
  crystalMaterials: ({
    block,
    crystal,
    contact,
  }: {
    readonly block: Block;
    readonly crystal: 'galena' | MineralKind;
    readonly contact: Contact;
  }): readonly Row[] => [
    BLOCK(block),
    ['Crystal', contact === 'pair of crystals' ? '2' : '1', CRYSTALS[crystal]],
    CUP,
    PACKING,
    [contact === 'pair of crystals' ? 'Second cup' : 'Whisker', '1', WHISKERS[contact]],
    ...FITTINGS,
  ],
  block: ({ apart, hole }: Block): Lines => [
    `Cut the block and drill two holes of ${mm(hole)}, ${mm(apart)} apart; drill the board through them.`,
    'Screw the post of the arm on one and the cup on the other; a nut below each takes its wire.',
  ],
  cup: [
    'Hold the crystal in tweezers or paper: grease from fingers makes dead spots.',
    'Try its faces with the meter first, if you can; the face that works best goes up.',
    'Pack it into the cup with crumpled foil, pressed down hard all round, so that it stands out by half.',
  ],
  whisker: [
    'Wind four turns of the wire on a 3 mm rod, slip them off, and draw them a little apart: they are the spring.',
    'Cut the tip at a slant with sharp cutters, so that it has one fine point. Wear glasses: the end flies.',
    'Solder the other end to the arm, or clamp it there.',
  ],
  pair: ['Pack the second crystal into the cup of the arm in the same way, its edge downward.'],
  set: {
    whisker: [
      'Turn the arm until the tip rests on the crystal with little more than its own weight.',
      'Touch only the handle while you listen: your hand on the metal detunes the set.',
    ],
    'firm whisker': [
      'Turn the arm until the tip presses firmly on the crystal: this one needs the pressure.',
      'Touch only the handle while you listen: your hand on the metal detunes the set.',
    ],
    'pair of crystals': [
      'Turn the arm until the two crystals touch lightly.',
      'Touch only the handle while you listen: your hand on the metal detunes the set.',
    ],
  } satisfies Record<Contact, Lines>,
  diodeMaterials: (pins: number): readonly Row[] => [
    ['Diode', '1', 'as the list of parts has it; its band marks the cathode'],
    ['Pins', '2', `brass pins or solder tags in the board, ${mm(pins)} apart`],
  ],
  bend: (away: number): Lines => [
    'Find the band: the lead beside it is the cathode.',
    `Hold each lead in pliers next to the body and bend it beyond them, ${mm(away)} or more from the body: glass cracks.`,
    'Lay it on its pins with the band where the board sheet has the cathode.',
  ],
  solder: [
    'Tin the pins first.',
    'Hold the lead with pliers between body and joint, and solder for three seconds at most: heat destroys a diode.',
    'Let the joint cool before you take the pliers off; do the other end in the same way.',
  ],
  valveMaterials: ({ voltage, current }: { readonly voltage: number; readonly current: number }): readonly Row[] => [
    ['Valve', '1', 'as the list of parts has it, with its data sheet'],
    ['Holder', '1', 'for the valve’s own base; the board sheet has a hole of 16 mm: enlarge it to your holder'],
    [
      'Heater supply',
      '1',
      `${formatQuantity(voltage, 'voltage')} at ${formatQuantity(current, 'current', 2)}, isolated from the mains`,
    ],
    ['Fuse', '1', `about ${formatQuantity(2 * current, 'current', 1)}, with its holder, at the supply`],
    ['Heater leads', '2', 'insulated stranded wire for twice that current, 0.5 m each'],
  ],
  holder: [
    'Fix the holder in its hole.',
    'Find heater, anode and cathode in the data sheet of your valve: pins are counted clockwise from the gap or key, seen from below.',
    'Write “heater”, “anode” and “cathode” beside the tags before you solder.',
  ],
  heater: [
    'Twist the two heater leads and solder them to the heater tags; they go to nothing else on the board.',
    'Put the fuse in one lead at the supply, and connect the supply last.',
    'Solder the wires of the wiring list to anode and cathode; leave the valve out until the first check is done.',
  ],
  plug: ['Switch the supply off, and plug the valve in straight, without force.'],
};

type Check = readonly [check: string, expected: string, otherwise: string];
const DEAD_SPOT: Record<Contact, string> = {
  whisker: 'The same both ways: pressed too hard, or a dead spot; try another.',
  'firm whisker': 'The same both ways: a dead spot; try another.',
  'pair of crystals': 'The same both ways: a dead place; turn one crystal a little.',
};
const OTHER_METERS = 'Other meters show from a quarter to five times as much.';

interface Ohmic {
  readonly forward: Sampled;
  readonly reverse: Sampled;
  readonly overload: number;
}

const tunedIn = (station: string, frequency: number, band: string | undefined): string =>
  `In the finished set${band === undefined ? '' : ` on “${printable(band)}”`}, ${printable(station)} (${kHz(frequency)} kHz) tuned in:`;

/** Checks of a finished detector, each with its expected reading. */
export const detectorChecks = {
  crystalForward: ({ forward, overload, contact }: Ohmic & { readonly contact: Contact }): Check => [
    'Meter on its 20 kΩ range, never its highest (that voltage can spoil the spot): red lead on the arm, black on the cup.',
    `${ohmsText(forward, overload)} ${OTHER_METERS}`,
    DEAD_SPOT[contact],
  ],
  crystalReverse: ({ reverse, overload, contact }: Ohmic & { readonly contact: Contact }): Check => [
    'The leads swapped.',
    ohmsText(reverse, overload),
    DEAD_SPOT[contact],
  ],
  crystalApart: (overload: number): Check => [
    'The same with the contact lifted off.',
    `No reading: above ${formatQuantity(overload, 'resistance', 2)}.`,
    'The block is damp, or metal of the arm touches the cup.',
  ],
  drop: (drop: Sampled): Check => [
    'Meter on its diode range: red lead on the anode, black on the cathode (the band).',
    isSpread(drop)
      ? `${volts(drop.value)} ${spanBeside(drop.value, drop.range, 'voltage', 2)}.`
      : `${volts(drop.value)}.`,
    'No reading: the band is at the other end, or the diode is dead. 0 V: short-circuited.',
  ],
  diodeReverse: ({ reverse, overload }: Ohmic): Check => [
    'Meter on its 20 kΩ range, leads swapped: red on the cathode.',
    ohmsText(reverse, overload),
    'As low as the other way round: overheated; take another.',
  ],
  heaterVoltage: (voltage: number): Check => [
    'Valve out, supply on: meter on volts across the heater tags. Then switch off.',
    `${volts(voltage)}, within 5 %.`,
    'Nothing: the fuse, or a lead. More: the wrong supply; do not plug the valve in.',
  ],
  heaterCold: (cold: number): Check => [
    'Valve out of its holder and cold: meter on ohms across its heater pins.',
    `${ohms(cold)} ${ohmsBeside(cold, [cold * 0.7, cold * 1.3])}, the leads’ own reading subtracted.`,
    'No reading: a broken heater, or the wrong pins.',
  ],
  heaterApart: (overload: number): Check => [
    'From either heater pin to the cathode pin, and from anode to cathode, both ways.',
    `No reading: above ${formatQuantity(overload, 'resistance', 2)}.`,
    'The wrong pins, or a valve with an internal short circuit.',
  ],
  heaterHot: ({ voltage, current }: { readonly voltage: number; readonly current: number }): Check => [
    'Valve in, supply on, half a minute: volts across the heater tags; amperes in one lead if your meter has them.',
    `${volts(voltage)}, within 5 %; ${formatQuantity(current, 'current', 2)}, within 15 %; a dull red glow.`,
    'Dark: the fuse, the pins, the socket. Bright: too high a voltage; switch off.',
  ],
  standing: ({ voltage, load }: { readonly voltage: number; readonly load: keyof typeof outputNames }): Check => [
    'In the finished set, no station tuned in: meter on volts across P1 and P2.',
    `About ${volts(voltage)} ${spanBeside(Math.abs(voltage), [Math.abs(voltage) / 2, Math.abs(voltage) * 2], 'voltage', 2)} with the ${outputNames[load]} connected: the hot cathode sends it.`,
    'Nothing: a cold heater, or anode and cathode swapped.',
  ],
  onStation: ({
    band,
    station,
    frequency,
    voltage,
    load,
    contact,
  }: {
    /** Of a set with a band switch. */
    readonly band?: string;
    readonly station: string;
    readonly frequency: number;
    readonly voltage?: number;
    readonly load: keyof typeof outputNames;
    readonly contact?: Contact;
  }): Check => [
    contact
      ? `${tunedIn(station, frequency, band)} listen while you move the contact from spot to spot.`
      : voltage === undefined
        ? `${tunedIn(station, frequency, band)} listen.`
        : `${tunedIn(station, frequency, band)} listen, and meter on volts across P1 and P2.`,
    [
      contact ? `A rustle in the ${outputNames[load]} at each touch, and the station at good spots.` : 'The station.',
      voltage === undefined
        ? 'The direct voltage is too small for an ordinary meter.'
        : `Direct voltage across P1 and P2 about ${volts(voltage)}; its range is on the bring-up sheet.`,
    ].join(' '),
    'Silent: see the fault sheet.',
  ],
};
