import { setCircuit } from '../../engine/circuit/set-circuit.ts';
import type { Reception } from '../../engine/reception/types.ts';
import type { SetDescription } from '../../engine/set/description.ts';
import { formatNumber, formatQuantity } from '../../engine/units/format.ts';
import { drawAerial } from '../drawings/aerial/aerial.ts';
import type { Tap } from '../drawings/coil/drawn.ts';
import { dialText } from './dial-text.ts';
import { Flow } from './flow.ts';
import type { PaperName, Sheet } from './page.ts';
import { TAIL, tally, wireToCut, wireWords } from './winding.ts';
import { cutLength, ohms, printable } from './words.ts';

/** A frame or rod, which is aerial and coil at once: how it is built, and what it should be. */
export function loopSheet(set: SetDescription, reception: Reception, paper: PaperName): Sheet {
  const { aerial } = set;
  const loop = setCircuit(set).loop!;
  const rod = aerial.kind === 'ferrite rod';
  const title = rod ? 'Ferrite rod' : 'Frame aerial';
  const flow = new Flow({ id: 'coil', title, file: rod ? 'coil-rod' : 'coil-frame', set: set.name, paper });
  const taps = loopTaps(set, loop.turns);
  const rows: string[][] = [];
  if (aerial.kind === 'frame')
    rows.push(
      [
        'Frame',
        aerial.outline === 'square'
          ? `square, ${mm(aerial.side)} a side, of dry wood: two laths crossed, with notched combs at their ends`
          : `round, ${mm(aerial.side)} across`,
      ],
      ['Wire', wireWords(aerial.wire)],
      [
        'Turns',
        `${formatNumber(aerial.turns, 4)}, ${mm(aerial.pitch)} from turn to turn: ${mm(aerial.pitch * aerial.turns)} deep in all`,
      ],
    );
  else if (aerial.kind === 'ferrite rod')
    rows.push(
      ['Rod', `${mm(aerial.length)} long, ${mm(aerial.diameter)} thick; on a paper sleeve that slides`],
      ['Wire', wireWords(aerial.wire)],
      [
        'Turns',
        `${formatNumber(aerial.turns, 4)} over ${mm(aerial.winding)}, ${aerial.position === 0 ? 'in the middle of the rod' : `${formatNumber(Math.abs(aerial.position) * 100, 2)} % of the way to one end`}`,
      ],
    );
  rows.push(['Wire to cut', cutLength(loopWire(set))]);
  flow.table(
    [
      { title: 'What', share: 1.2 },
      { title: 'This one', share: 5 },
    ],
    rows,
  );
  flow.figure(drawAerial(aerial, set.earth, { width: Math.min(flow.width, 150), height: 86 }), { height: 88 });
  flow.heading('How to wind it');
  flow.list(
    [
      `Fix the start, leaving ${Math.round(TAIL * 1e3)} mm; it goes to the earth line. Wind all turns one way, evenly spaced, and tick the tally.`,
      ...taps.map((t) => `After turn ${formatNumber(t.turn, 4)} bring out a twisted loop of 40 mm: the ${t.name} tap.`),
      'Fix the end, scrape and tin both ends and every tap.',
      rod
        ? 'Slide the sleeve along the rod until the lowest station comes where the dial has it; then fix it with a drop of wax.'
        : 'Stand it upright and free to turn: it hears best in the line of its own plane, and nothing from the side.',
    ],
    'number',
  );
  tally(flow, loop.turns, taps);
  flow.heading('What it should be, and how to check it');
  const best = reception.best.map((i) => reception.stations[i]).find((s) => s?.dial);
  flow.table(
    [
      { title: 'Figure', share: 2 },
      { title: 'Expected', share: 6 },
    ],
    [
      [
        'Inductance',
        `${formatQuantity(loop.inductance, 'inductance')} (${formatQuantity(loop.inductance * 0.95, 'inductance')} to ${formatQuantity(loop.inductance * 1.05, 'inductance')} as built by hand)`,
      ],
      [
        'Direct resistance, start to end',
        `${ohms(loop.dcResistance)} by an ordinary meter; much more: a bad joint or wire; much less: turns short-circuited or too few`,
      ],
      [
        'Range in this set',
        `${formatNumber(Math.round(reception.dial.lowest / 1e3), 5)} to ${formatNumber(Math.round(reception.dial.highest / 1e3), 5)} kHz`,
      ],
    ],
  );
  flow.list(
    [
      'Count the turns once more, and look that none crosses another.',
      `With a meter on ohms: start to end conducts${taps.length > 0 ? ', and so does the tap to either end' : ''}.`,
      ...(best
        ? [
            `In the set, ${printable(best.name)} (${formatNumber(best.frequency / 1e3, 5)} kHz) should come in near ${dialText(set, best)} on the dial. ${rod ? 'At a lower reading the coil is too large: slide it towards the end of the rod; at a higher one, towards the middle.' : 'At a lower reading the frame is too large: take off a turn or space the turns wider; at a higher one, wind them closer.'}`,
          ]
        : []),
    ],
    'box',
  );
  return flow.finish();
}

/** Wire to cut for a frame or rod, m: its turns, ends and tap, and three in a hundred for the hand; 0 where there is none. */
export function loopWire(set: SetDescription): number {
  const { loop } = setCircuit(set);
  return loop ? wireToCut(loop, loopTaps(set, loop.turns).length) : 0;
}

function loopTaps(set: SetDescription, turns: number): Tap[] {
  const tap = (set.arrangement as { detectorTap?: number }).detectorTap;
  return tap !== undefined && tap < turns ? [{ name: 'detector', turn: tap }] : [];
}

const mm = (metres: number): string => formatQuantity(metres, 'length', 3);
