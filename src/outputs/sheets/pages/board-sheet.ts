import { type ByKind, byKind } from '../../../engine/kinds/by-kind.ts';
import type { DetectorDescription } from '../../../engine/kinds/detectors/detector-schema.ts';
import { standingBand } from '../../../engine/set/band-switch.ts';
import type { SetDescription } from '../../../engine/set/description.ts';
import { boardSheetWords as boardTexts, wiringSheetWords as wiringTexts } from '../../words/index.ts';
import type { BoardLayout, Built } from '../board/layout.ts';
import { layoutItems } from '../board/layout-drawing.ts';
import type { BoardParts } from '../board/parts.ts';
import { lineText } from '../board/wiring.ts';
import { fewestPages, SPARSE } from '../paper/fewest-pages.ts';
import { Flow } from '../paper/flow.ts';
import type { PaperName, Sheet } from '../paper/page.ts';
import { putBoardBuilding } from './board-building.ts';
import type { SetOnBands } from './set-on-band.ts';
import { putSwitchContacts } from './switch-contacts.ts';

export function boardSheet(bands: SetOnBands, { parts, layout }: Built, paper: PaperName): Sheet {
  const [{ set }] = bands;
  const [width, length] = [layout.width, layout.height].map((size) => Math.ceil(size - 1e-6) / 1e3);
  const band = standingBand(set);
  const items = layoutItems(layout);
  const about = (flow: Flow): void => {
    flow.para(boardTexts.intro({ width, length }), { small: true });
    if (band !== undefined) {
      const isOnBoard = parts.parts.some(({ kind }) => kind === 'switch');
      flow.para((isOnBoard ? boardTexts.withSwitch : boardTexts.onBand)(set.bands![band].name), { small: true });
    }
  };
  const board = (flow: Flow): void => {
    flow.template(items, { w: layout.width, h: layout.height }, boardTexts.alt(layout.placed.map(({ part }) => part)));
  };
  const mounted = (flow: Flow): void => {
    flow.heading(boardTexts.mounted);
    flow.table(
      [
        { title: '✓', share: 0.4 },
        { title: wiringTexts.columns.part, share: 0.9 },
        { title: wiringTexts.columns.what, share: 10 },
      ],
      layout.placed.map(({ part }) => ['', part.tag, part.words]),
    );
  };
  const building = (flow: Flow): void => putBoardBuilding(flow, bands, parts, layout);
  const inOrder = (...put: readonly ((flow: Flow) => void)[]): Sheet =>
    fewestPages((usual) => {
      const flow = new Flow({ id: 'board', title: boardTexts.title, set: set.name, paper, layout: usual });
      for (const one of put) one(flow);
      return flow.finish();
    });
  // A board that only just fits a page has the words about it below; before one that needs pages of its own there is room.
  const usual = inOrder(about, board);
  if (inOrder(board, about).pages.length < usual.pages.length) return inOrder(board, about, building);
  return usual.pages.length > 1 && usual.pages[0].filled < SPARSE
    ? inOrder(about, mounted, board, building)
    : inOrder(about, board, building);
}

export function wiringSheet(set: SetDescription, { parts, layout: built }: Built, paper: PaperName): Sheet {
  return fewestPages((layout) => {
    const flow = new Flow({ id: 'wiring', title: wiringTexts.title, set: set.name, paper, layout });
    putWiring(flow, set, parts, built);
    return flow.finish(wiringTexts.description(built.wiring.lines.length));
  });
}

function putWiring(flow: Flow, set: SetDescription, parts: BoardParts, layout: BoardLayout): void {
  const { columns } = wiringTexts;
  flow.para(wiringTexts.intro);
  flow.para(wiringTexts.terminals, { small: true });
  flow.heading(wiringTexts.headings.ends);
  flow.table(
    [
      { title: columns.part, share: 0.9 },
      { title: columns.what, share: 6 },
      { title: columns.ends, share: 5 },
    ],
    parts.parts.map((p) => [p.tag, p.words, p.terminals.join(', ')]),
  );
  flow.heading(wiringTexts.headings.wires, 30);
  flow.table(
    [
      { title: '✓', share: 0.45 },
      { title: columns.number, share: 0.8, anchor: 'end' },
      { title: columns.fromTo, share: 6 },
      { title: columns.cut, share: 1.2, anchor: 'end' },
      { title: columns.use, share: 5 },
    ],
    layout.wiring.lines.map((l, i) => [
      '',
      `${i + 1}`,
      lineText(l),
      wiringTexts.length(layout.lengths[i] / 1e3),
      [...(l.use === undefined ? [] : [wiringTexts.uses[l.use]]), ...(l.keepShort ? [wiringTexts.keepShort] : [])].join(
        ': ',
      ),
    ]),
  );
  if (layout.wiring.free.length > 0) flow.para(wiringTexts.free(layout.wiring.free));
  putSwitchContacts(flow, set, parts);
  coilsStanding(flow, parts);
  const note = byKind(DETECTOR_NOTE, set.detector, set);
  if (note) flow.para(note.words, { small: note.small });
}

function coilsStanding(flow: Flow, { parts, standing }: BoardParts): void {
  const coils = parts.filter((p) => p.kind === 'coil' || p.kind === 'loop').length;
  if (coils < 2) return;
  flow.heading(wiringTexts.coils);
  for (const pair of standing) flow.para(wiringTexts.coupled(pair));
  // Coils coupled through the air over a distance can be set apart by hand.
  if (standing.some(({ distance }) => distance !== undefined)) flow.para(wiringTexts.movable);
  if (standing.length < (coils * (coils - 1)) / 2) flow.para(wiringTexts.uncoupled);
}

/** What is to be known of a detector when it is wired. */
interface DetectorNote {
  readonly words: string;
  readonly small: boolean;
}
type Note = (detector: DetectorDescription, set: SetDescription) => DetectorNote | undefined;

/** Which way round the detector stands; where there are two the list alone tells. */
const polarity =
  (device: 'crystal' | 'diode'): Note =>
  ({ wiring }, { load }) => {
    if (wiring !== 'single') return undefined;
    const texts = wiringTexts[device];
    return { words: load.kind === 'amplifier' ? texts.amplifier : texts.phones, small: true };
  };

const DETECTOR_NOTE: ByKind<DetectorDescription, DetectorNote | undefined, [SetDescription]> = {
  galena: polarity('crystal'),
  mineral: polarity('crystal'),
  germanium: polarity('diode'),
  schottky: polarity('diode'),
  silicon: polarity('diode'),
  exponential: polarity('diode'),
  measured: polarity('diode'),
  valve: ({ heaterVoltage, wiring }) => ({
    words: wiring === 'single' ? wiringTexts.heater(heaterVoltage) : wiringTexts.heaters(heaterVoltage),
    small: false,
  }),
};
