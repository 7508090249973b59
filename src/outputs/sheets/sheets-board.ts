import type { SetDescription } from '../../engine/set/description.ts';
import { formatNumber, formatQuantity } from '../../engine/units/format.ts';
import type { Built } from './build/layout.ts';
import { layoutItems } from './build/layout.ts';
import { lineText } from './build/wiring.ts';
import { Flow } from './flow.ts';
import type { PaperName, Sheet } from './page.ts';

export function boardSheet(set: SetDescription, { layout }: Built, paper: PaperName): Sheet {
  const flow = new Flow({ id: 'board', title: 'Board, full size', set: set.name, paper, fullSize: true });
  flow.para(
    `The board from above, ${Math.ceil(layout.width - 1e-6)} × ${Math.ceil(layout.height - 1e-6)} mm. Prick the holes through the paper. Dashed bodies are parts whose size is not known: lay yours on before you drill. Dashed lines are the wires, by their numbers in the wiring list.`,
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
    'One piece of wire after another, in this order: lay it, fix it at both ends, tug it, tick it. Run each as the board sheet draws it, straight, and round what stands in between; keep wires off each other, and bare every end until it shines. When all are ticked the circuit is complete, and nothing else is joined to anything.',
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
    if (parts.couplings.length < (coils.length * (coils.length - 1)) / 2)
      flow.para('All other coils must not: keep their axes at right angles, and a hand’s breadth apart.');
  }
  if (set.detector.kind === 'valve')
    flow.para(
      `The heater is not on this list: its two pins go by a twisted pair straight to their own supply of ${formatQuantity(set.detector.heaterVoltage, 'voltage')}, fused, and to nothing else here${set.detector.wiring === 'single' ? '' : '; so do those of the second'}.`,
    );
  else if (set.detector.wiring === 'single')
    flow.para(
      `Either way round the detector works${set.load.kind === 'amplifier' ? '' : ' with phones'}; the list has it so that ${set.load.kind === 'amplifier' ? 'its load' : 'the terminal P1'} becomes positive.`,
      { small: true },
    );
  return flow.finish(`Wiring list of ${layout.wiring.lines.length} wires.`);
}

const tiltWords = (set: SetDescription): string => {
  const a = set.arrangement as { distance?: number; tilt?: number };
  if (a.distance === undefined) return '';
  return `, middles ${formatQuantity(a.distance, 'length')} apart${a.tilt ? `, the second turned by ${formatNumber(a.tilt, 3)}°` : ''}`;
};
