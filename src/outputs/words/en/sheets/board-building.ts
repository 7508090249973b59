import { formatQuantity } from '../../../../engine/units/format.ts';
import { ohms } from '../../figures.ts';
import { printable } from '../../printable.ts';
import { ohmsBeside } from '../../ranges.ts';
import { counted, listOf } from '../grammar.ts';

/** Short lines, one thing to do in each. */
type Lines = readonly string[];

interface Holes {
  /** m. */
  readonly diameter: number;
  readonly count: number;
}

/** Resistance between two points as an ordinary meter shows it, Ω. */
interface Metered {
  readonly value: number;
  readonly low: number;
  readonly high: number;
  readonly leads: 'within' | 'subtracted';
}

/** How the board is built, and what it should read when it is wired. SI. */
export const boardBuilding = {
  headings: {
    steps: 'How to build it',
    checks: 'When it is wired, before anything is plugged in',
    onBand: (band: string): string => `With the band switch on “${printable(band)}”`,
  },
  cut: ({ width, length }: { readonly width: number; readonly length: number }): Lines => [
    `Cut a board ${Math.round(width * 1e3)} × ${Math.round(length * 1e3)} mm of dry wood or plastic, 8 to 12 mm thick; wood is dried and varnished.`,
    'Cut the drawing out, or tape its parts together, and tape it on the board edge to edge.',
    'Prick through every cross and every dot; write each tag beside its place.',
  ],
  assumed: 'For every part drawn dashed, lay your own on its place and mark its holes first.',
  drill: (holes: readonly Holes[]): string =>
    `Drill: ${listOf(holes.map(({ diameter, count }) => `${counted(count, 'hole', 'holes')} of ${formatQuantity(diameter, 'length', 2)}`))}. Wear glasses, and clamp the board.`,
  terminals: [
    'Screw in the terminals first, a washer above the board and one below.',
    'A wire goes in a loop between two washers under the nut.',
  ],
  mount: (pins: number): Lines => [
    ...(pins > 0 ? [`Drive a brass pin in at each dot that has no terminal, ${pins} in all.`] : []),
    'Mount small parts, then coils, then heavy parts; the detector last.',
  ],
  loop: [
    'Lay the wires in the order of the wiring list, straight, and along the drawn way.',
    'Under a screw: bare 10 mm, bend it round the screw clockwise, and tighten.',
  ],
  solder: [
    'On a pin: heat pin and wire together, then touch the solder to them, not to the iron.',
    'A good joint is bright and runs out thin; tug each when it is cold.',
  ],
  cross: ['Where two wires must cross, cross them at a right angle, both insulated.'],
  before: {
    plain: 'Aerial, earth and phones are off. The meter is on ohms, the pointer anywhere.',
    heater: 'Aerial, earth and phones are off, and the heater supply too. The meter is on ohms, the pointer anywhere.',
    crystal:
      'Aerial, earth and phones are off, and the contact is lifted off the crystal. The meter is on ohms, the pointer anywhere.',
  },
  columns: { from: 'Red lead on', to: 'Black lead on', expected: 'Expected', otherwise: 'If not' },
  eachWire: {
    from: 'every wire of the list, one end',
    to: 'its other end',
    expected: 'Under 0.5 Ω',
    otherwise: 'An end not bared, or a joint that does not hold.',
  },
  open: (overload: number): string => `No reading: above ${formatQuantity(overload, 'resistance', 2)}`,
  openOtherwise: 'A wire on the wrong point, or a capacitor that conducts.',
  joined: 'Under 0.1 Ω, the leads’ own reading subtracted',
  joinedOtherwise: 'A wire left out.',
  winding: ({ value, low, high, leads }: Metered): string =>
    leads === 'within'
      ? `${ohms(value)} ${ohmsBeside(value, [low, high])}`
      : `${ohms(value)} ${ohmsBeside(value, [low, high])}, the leads’ own reading subtracted`,
  windingOtherwise: 'No reading: a wire left out. Another value: a wire on another tap or point.',
  diode: ({ value, low, high }: Omit<Metered, 'leads'>): string =>
    `About ${ohms(value)} ${ohmsBeside(value, [low, high])}, with other samples and meters`,
  diodeOtherwise: 'The detector the other way round, or a wire left out.',
};
