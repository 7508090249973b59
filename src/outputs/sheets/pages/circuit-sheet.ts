import { PART } from '../../../engine/network/part-ids.ts';
import { leadVoltage } from '../../../engine/reception/path/lead-voltage.ts';
import type { Diagram } from '../../drawings/circuit/diagram.ts';
import { circuitDiagram, drawCircuit } from '../../drawings/index.ts';
import { itemBox, textBoxes } from '../../scene/boxes.ts';
import { circle, group, text } from '../../scene/build.ts';
import { boxesAlong, placeLabels } from '../../scene/labels.ts';
import type { Item, Point, Scene } from '../../scene/scene.ts';
import { boardWarning, paper as paperTexts, circuitSheetWords as texts, warningSentences } from '../../words/index.ts';
import type { BoardLayout, Built } from '../board/layout.ts';
import type { BoardParts } from '../board/parts.ts';
import { fewestPages } from '../paper/fewest-pages.ts';
import { Flow } from '../paper/flow.ts';
import { PAGE_MARGIN, PAPERS, type PaperName, type Sheet, TOP } from '../paper/page.ts';
import { bestOf } from './best.ts';
import type { SetOnBand, SetOnBands } from './set-on-band.ts';
import { putBandSwitch } from './switch-contacts.ts';

/** Room that a heading keeps with it: a table's head and its first row. */
const WITH_ROW = 30;

/** What the wiring list calls each symbol of the diagram. */
const tagsOf = ({ parts }: BoardParts): ReadonlyMap<string, string> =>
  new Map(
    parts.flatMap(({ tag, id, part }) =>
      // A capacitor of another band is not in the diagram.
      [id, ...(part?.id === id ? part.pieces : []).map((piece) => piece.id)].map((symbol) => [symbol, tag] as const),
    ),
  );

/** The diagram as large as the page allows, turned where that makes it larger, with letters at the test points. */
export function circuitSheet(bands: SetOnBands, { parts, layout }: Built, paper: PaperName): Sheet {
  const [{ set }, ...others] = bands;
  const scene = drawCircuit(set, tagsOf(parts));
  const points = testPoints(bands[0], scene.items);
  const pointsOnOthers = others.map((one) => ({ band: one.band ?? '', points: pointsOnBand(one, points) }));
  const diagram = { ...scene, items: [...scene.items, ...points.flatMap((p) => p.items)] };
  return fewestPages((sheetLayout) => {
    const flow = new Flow({ id: 'circuit', title: texts.title, set: set.name, paper, layout: sheetLayout });
    putDiagram(flow, diagram, paper);
    putMatter(flow, bands[0], parts.parts, points, pointsOnOthers, scene, layout.warnings);
    return flow.finish(scene.description);
  });
}

function putMatter(
  flow: Flow,
  { set, reception, band }: SetOnBand,
  parts: BoardParts['parts'],
  points: readonly TestPoint[],
  pointsOnOthers: readonly { readonly band: string; readonly points: readonly LetteredPoint[] }[],
  scene: Pick<Scene, 'description' | 'warnings'>,
  boardWarnings: BoardLayout['warnings'],
): void {
  const { columns, headings } = texts;
  putBandSwitch(flow, set, { parts });
  const putPoints = (heading: string, list: readonly LetteredPoint[]): void => {
    if (list.length === 0) return;
    flow.heading(heading, WITH_ROW);
    flow.table(
      [
        { title: columns.point, share: 0.8 },
        { title: columns.where, share: 3 },
        { title: columns.what, share: 6 },
      ],
      list.map((p) => [p.letter, p.where, p.what]),
    );
  };
  putPoints(band === undefined ? headings.points : headings.pointsOnBand(band), points);
  for (const other of pointsOnOthers) putPoints(headings.pointsOnBand(other.band), other.points);
  flow.heading(headings.words);
  flow.para(texts.intro, { small: true });
  flow.para(scene.description, { small: true });
  for (const warning of scene.warnings ?? []) flow.para(warning, { small: true });
  const warnings = [...new Set([...warningSentences(reception.warnings), ...boardWarnings.map(boardWarning)])];
  if (warnings.length > 0) {
    flow.heading(headings.warnings);
    flow.list(warnings.slice(0, 12));
  }
}

/** Upright where its letters are then large enough, else along the page. */
function putDiagram(flow: Flow, scene: Scene, paper: PaperName): void {
  const high = 110 * flow.layout.tight;
  const upright = Math.min(flow.width / scene.width, high / scene.height);
  const long = PAPERS[paper].height - TOP - 60;
  const turned = Math.min(long / scene.width, (flow.width - 4) / scene.height);
  if (upright * 12 >= 2.6 || turned < upright * 1.15) {
    flow.figure(scene, { height: high, scale: Math.min(upright, 0.4) });
    return;
  }
  const scale = Math.min(turned, 0.4);
  const x = PAGE_MARGIN + (flow.width + scene.height * scale) / 2;
  flow.add('Figure', [group(scene.items, { move: [x, flow.y], turn: 90, scale })], paperTexts.figure(scene));
  flow.space(scene.width * scale + 4);
}

/** A node of the diagram at which something can be measured. */
interface Measurable {
  readonly at: 'aerial' | 'before detector' | 'after detector';
  readonly node: string;
  readonly where: string;
  readonly what: string;
}
interface LetteredPoint extends Omit<Measurable, 'node'> {
  readonly letter: string;
}
interface TestPoint extends LetteredPoint {
  readonly items: readonly Item[];
}

/** What is worth measuring: the aerial lead where it is a node of its own, and both sides of the detector. */
function measurable({ set, reception, readings }: SetOnBand, diagram: Diagram): Measurable[] {
  const best = bestOf(reception);
  const detector = diagram.symbols.find((s) => s.part === PART.detector);
  const [live, out] = [detector?.terminals[0]?.node, detector?.terminals[1]?.node];
  const aerial = diagram.symbols.find((s) => s.part === PART.aerial)?.terminals[0]?.node;
  const { places, signals } = texts;
  const station = best?.name ?? '';
  const points: Measurable[] = [];
  if (aerial !== undefined && aerial !== live && aerial !== out)
    points.push({
      at: 'aerial',
      node: aerial,
      where: places.aerial,
      what: best ? signals.aerialWith({ station, voltage: leadVoltage(set, best) ?? best.emf }) : signals.aerial,
    });
  if (live !== undefined)
    points.push({
      at: 'before detector',
      node: live,
      where: places.beforeDetector,
      what: best ? signals.beforeDetectorWith({ station, voltage: best.detectorVoltage }) : signals.beforeDetector,
    });
  if (out !== undefined)
    points.push({
      at: 'after detector',
      node: out,
      where: places.afterDetector(set.load.kind),
      what: best
        ? signals.afterDetectorWith({
            station,
            direct: Math.abs(readings.directVoltage(best.index)),
            audio: best.audioVoltage,
          })
        : signals.afterDetector,
    });
  return points;
}

/** What is measured on another band at the points of the diagram. */
function pointsOnBand(onBand: SetOnBand, points: readonly TestPoint[]): LetteredPoint[] {
  return measurable(onBand, circuitDiagram(onBand.set)).flatMap(({ at, where, what }) => {
    const letter = points.find((point) => point.at === at)?.letter;
    return letter === undefined ? [] : [{ at, letter, where, what }];
  });
}

/** A letter at each test point, on its wire and clear of all else. */
function testPoints(onBand: SetOnBand, drawn: readonly Item[]): TestPoint[] {
  const diagram = circuitDiagram(onBand.set);
  const wires = diagram.wires.filter((w) => w.points.length > 1);
  const boxes = [
    ...wires.flatMap((w) => boxesAlong(w.points, 2)),
    ...textBoxes(drawn).map((t) => t.box),
    ...diagram.symbols.map((s) => ({ x: s.centre[0] - 22, y: s.centre[1] - 22, w: 44, h: 44 })),
  ];
  const points: TestPoint[] = [];
  measurable(onBand, diagram).forEach(({ at, node, where, what }, i) => {
    const letter = String.fromCharCode(0x61 + i);
    const places = placesOn(node, diagram);
    if (places.length === 0) return;
    const label = placeLabels(
      [{ item: { text: letter, size: 12, bold: true, rim: true }, must: true, places: places.flatMap(beside) }],
      { x: 0, y: 0, w: diagram.width, h: diagram.height },
      boxes,
    ).items[0];
    const to = (p: Point): number => Math.hypot(p[0] - label.at[0], p[1] - label.at[1]);
    const near = places.reduce((u, v) => (to(v) < to(u) ? v : u));
    boxes.push(itemBox(label));
    points.push({
      at,
      letter,
      where,
      what,
      items: [
        circle(near, 3.6, { stroke: 'ink', fill: 'paper', width: 1.2 }),
        text(label.at, letter, 12, { anchor: label.anchor, bold: true, rim: true }),
      ],
    });
  });
  return points;
}

/** Points on the wires of a node, those of the longest first; clear of drawn dots where there are such. */
function placesOn(node: string, { wires, dots }: Diagram): Point[] {
  const length = ([a, b]: readonly [Point, Point]): number => Math.hypot(b[0] - a[0], b[1] - a[1]);
  const places = wires
    .filter((w) => w.node === node)
    .flatMap((w) => w.points.slice(1).map((b, k) => [w.points[k], b] as const))
    .sort((one, other) => length(other) - length(one))
    .flatMap(([a, b]) => [0.5, 0.3, 0.7].map((t): Point => [a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t]));
  const clear = places.filter((q) => dots.every((d) => Math.hypot(q[0] - d[0], q[1] - d[1]) > 10));
  return clear.length > 0 ? clear : places;
}

/** Where a letter may stand by a point. */
const beside = ([x, y]: Point) => [
  { at: [x, y - 10] as Point, anchor: 'middle' as const },
  { at: [x + 9, y + 4] as Point, anchor: 'start' as const },
  { at: [x, y + 19] as Point, anchor: 'middle' as const },
];
