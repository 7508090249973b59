import type { SetDescription } from '../../../engine/set/description.ts';
import { formatNumber, formatQuantity } from '../../../engine/units/format.ts';
import type { Built } from '../board/layout.ts';
import { layoutItems } from '../board/layout.ts';
import { lineText } from '../board/wiring.ts';
import { Flow } from '../paper/flow.ts';
import type { PaperName, Sheet } from '../paper/page.ts';

export function boardSheet(set: SetDescription, { layout }: Built, paper: PaperName): Sheet {
  const flow = new Flow({ id: 'board', title: 'Board, full size', set: set.name, paper, fullSize: true });
  flow.para(
    `The board from above, ${Math.ceil(layout.width - 1e-6)} × ${Math.ceil(layout.height - 1e-6)} mm. Prick the holes through the paper. Circles with a cross are holes, dots are where wires end. Dashed bodies are parts whose size is not known: lay yours on before you drill. Dashed lines are the wires, by their numbers in the wiring list.`,
    { small: true },
  );
  flow.template(
    layoutItems(layout),
    { w: layout.width, h: layout.height },
    `Layout of the board: ${layout.placed.map((p) => `${p.part.tag} ${p.part.words}`).join(', ')}.`,
  );
  return flow.finish();
}

export function wiringSheet(set: SetDescription, { parts, layout }: Built, paper: PaperName): Sheet {
  const flow = new Flow({ id: 'wiring', title: 'Wiring list', set: set.name, paper });
  flow.para(
    'One piece of insulated wire after another, in this order: lay it, bare both ends until they shine, fix them, tug, tick. Run each as the board sheet draws it, straight, and round what stands in between; where two must cross, the insulation of both is whole. When all are ticked the circuit is complete, and nothing else is joined to anything.',
  );
  flow.para(
    'Where a part has no terminal of its own, drive a brass pin or screw a solder tag where the board sheet has the dot: part and wires are soldered there, or clamped under a screw with two washers. No point takes more than two wires.',
    { small: true },
  );
  flow.table(
    [
      { title: 'Part', share: 0.9 },
      { title: 'What it is', share: 6 },
      { title: 'Its ends', share: 5 },
    ],
    parts.parts.map((p) => [p.tag, p.words, p.terminals.join(', ')]),
  );
  flow.table(
    [
      { title: '✓', share: 0.45 },
      { title: 'No.', share: 0.8, anchor: 'end' },
      { title: 'From → to', share: 6 },
      { title: 'Cut', share: 1.2, anchor: 'end' },
      { title: 'What for', share: 5 },
    ],
    layout.wiring.lines.map((l, i) => ['', `${i + 1}`, lineText(l), `${layout.lengths[i]} mm`, l.note]),
  );
  if (layout.wiring.free.length > 0) flow.para(`Left free, with no wire on it: ${layout.wiring.free.join(', ')}.`);
  const coils = parts.parts.filter((p) => p.kind === 'coil' || p.kind === 'loop');
  if (coils.length > 1) {
    flow.heading('How the coils stand');
    for (const [a, b] of parts.couplings)
      flow.para(
        `${a} and ${b} must reach each other: stand them as the board drawing has them, their axes in one line${tiltWords(set)}.`,
      );
    if (movable(set))
      flow.para(
        `Let the last of them slide along that line: glue it to a block that runs between two strips of wood, with a hand’s breadth of way, and make its leads of flexible wire 100 mm longer than the list has them. Nearer is louder, further parts close stations better; start where the drawing has it.`,
      );
    if (parts.couplings.length < (coils.length * (coils.length - 1)) / 2)
      flow.para('All other coils must not: keep their axes at right angles, and a hand’s breadth apart.');
  }
  if (set.detector.kind === 'valve')
    flow.para(
      `The heater is not on this list: its two pins go by a twisted pair of insulated wire straight to their own supply of ${formatQuantity(set.detector.heaterVoltage, 'voltage')}, with a fuse of about twice the heater’s current at the supply, and to nothing else here${set.detector.wiring === 'single' ? '' : '; so do those of the second'}. Which pins are heater, anode and cathode is in the data sheet of your valve: mark them on the holder, seen from below, before you solder.`,
    );
  else if (set.detector.wiring === 'single')
    flow.para(
      `${crystalWords(set)}Either way round the detector works${set.load.kind === 'amplifier' ? '' : ' with phones'}; the list has it so that ${set.load.kind === 'amplifier' ? 'its load' : 'the terminal P1'} becomes positive.`,
      { small: true },
    );
  return flow.finish(`Wiring list of ${layout.wiring.lines.length} wires.`);
}

/** Coils coupled through the air over a distance can be set apart by hand. */
const movable = ({ arrangement }: SetDescription): boolean =>
  (arrangement.kind === 'coupled' || arrangement.kind === 'two circuits') && arrangement.distance !== undefined;

/** What is meant by the ends of the detector's holder. */
const crystalWords = (set: SetDescription): string =>
  set.detector.kind === 'galena' || set.detector.kind === 'mineral'
    ? 'Its anode is the arm with the whisker, its cathode the cup with the crystal. '
    : '';

const tiltWords = (set: SetDescription): string => {
  const a = set.arrangement as { distance?: number; tilt?: number };
  if (a.distance === undefined) return '';
  return `, middles ${formatQuantity(a.distance, 'length')} apart${a.tilt ? `, the second turned by ${formatNumber(a.tilt, 3)}°` : ''}`;
};
