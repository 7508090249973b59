import { PART } from '../../../engine/network/part-ids.ts';
import { leadVoltage } from '../../../engine/reception/path/lead-voltage.ts';
import type { Reception } from '../../../engine/reception/path/types.ts';
import type { SetDescription } from '../../../engine/set/description.ts';
import { formatQuantity } from '../../../engine/units/format.ts';
import { circuitDiagram, drawCircuit } from '../../drawings/index.ts';
import { itemBox, textBoxes } from '../../scene/boxes.ts';
import { circle, group, text } from '../../scene/build.ts';
import { boxesAlong, placeLabels } from '../../scene/labels.ts';
import type { Item, Point } from '../../scene/scene.ts';
import { warningSentences } from '../../words/index.ts';
import type { Built } from '../board/layout.ts';
import type { BoardParts } from '../board/parts.ts';
import { Flow } from '../paper/flow.ts';
import { MARGIN, PAPERS, type PaperName, type Sheet, TOP } from '../paper/page.ts';
import { bestOf, OUT_WORDS } from './best.ts';
import { printable } from './words.ts';

/** What the wiring list calls each symbol of the diagram. */
const tagsOf = ({ parts }: BoardParts): ReadonlyMap<string, string> =>
  new Map(
    parts.flatMap(({ tag, id, part }) =>
      [id, ...part.pieces.map((piece) => piece.id)].map((symbol) => [symbol, tag] as const),
    ),
  );

/** The diagram as large as the page allows, turned where that makes it larger, with letters at the test points. */
export function circuitSheet(
  set: SetDescription,
  reception: Reception,
  { parts, layout }: Built,
  paper: PaperName,
): Sheet {
  const flow = new Flow({ id: 'circuit', title: 'Circuit diagram', set: set.name, paper });
  const scene = drawCircuit(set, tagsOf(parts));
  const points = testPoints(set, reception, scene.items);
  const items = [...scene.items, ...points.items];
  const whole = { ...scene, items };
  const upright = Math.min(flow.width / scene.width, 110 / scene.height);
  const long = PAPERS[paper].height - TOP - 60;
  const turned = Math.min(long / scene.width, (flow.width - 4) / scene.height);
  if (upright * 12 >= 2.6 || turned < upright * 1.15)
    flow.figure(whole, { height: 110, scale: Math.min(upright, 0.4) });
  else {
    const scale = Math.min(turned, 0.4);
    const x = MARGIN + (flow.width + scene.height * scale) / 2;
    flow.add('Figure', [group(items, { move: [x, flow.y], turn: 90, scale })], `${scene.title}. ${scene.description}`);
    flow.space(scene.width * scale + 4);
  }
  if (points.rows.length > 0) {
    flow.heading('Test points');
    flow.table(
      [
        { title: 'Point', share: 0.8 },
        { title: 'Where', share: 3 },
        { title: 'What is there', share: 6 },
      ],
      points.rows,
    );
  }
  flow.heading('The diagram in words');
  flow.para(
    'For checking, and for those who cannot see it: what lies between which points. “Earth” is the bottom line, “top” the top of the tuned circuit, “out” the point behind the detector.',
    { small: true },
  );
  flow.para(scene.description, { small: true });
  for (const warning of scene.warnings ?? []) flow.para(warning, { small: true });
  const warnings = [...new Set([...warningSentences(reception.warnings), ...layout.warnings])];
  if (warnings.length > 0) {
    flow.heading('To bear in mind');
    flow.list(warnings.slice(0, 12));
  }
  return flow.finish(scene.description);
}

function testPoints(
  set: SetDescription,
  reception: Reception,
  drawn: readonly Item[],
): { items: Item[]; rows: string[][] } {
  const diagram = circuitDiagram(set);
  const best = bestOf(reception);
  const wires = diagram.wires.filter((w) => w.points.length > 1);
  const detector = diagram.symbols.find((s) => s.part === PART.detector);
  const live = detector?.terminals[0]?.node;
  const out = detector?.terminals[1]?.node;
  const aerial = diagram.symbols.find((s) => s.part === PART.aerial)?.terminals[0]?.node;
  const at = best ? ` with ${printable(best.name)} tuned in` : '';
  const wanted = [
    aerial !== undefined && aerial !== live && aerial !== out
      ? {
          node: aerial,
          where: 'aerial lead',
          what: best
            ? `${formatQuantity(leadVoltage(set, best) ?? best.emf, 'voltage', 2)} peak of signal${at}; no direct voltage`
            : 'no direct voltage',
        }
      : undefined,
    live !== undefined
      ? {
          node: live,
          where: 'before the detector',
          what: best
            ? `radio frequency, about ${formatQuantity(best.detectorVoltage, 'voltage', 2)} peak at the detector${at}; a meter on it detunes the set`
            : 'radio frequency',
        }
      : undefined,
    out !== undefined
      ? {
          node: out,
          where: `after the detector, to the ${OUT_WORDS[set.load.kind]}`,
          what: best
            ? `direct ${formatQuantity(Math.abs(best.directVoltage), 'voltage', 2)} and audio ${formatQuantity(best.audioVoltage, 'voltage', 2)} peak${at}`
            : 'direct and audio voltage',
        }
      : undefined,
  ].filter((p) => p !== undefined);
  const boxes = [
    ...wires.flatMap((w) => boxesAlong(w.points, 2)),
    ...textBoxes(drawn).map((t) => t.box),
    ...diagram.symbols.map((s) => ({ x: s.centre[0] - 22, y: s.centre[1] - 22, w: 44, h: 44 })),
  ];
  const items: Item[] = [];
  const rows: string[][] = [];
  wanted.forEach((p, i) => {
    const letter = String.fromCharCode(0x61 + i);
    const places = wires
      .filter((w) => w.node === p.node)
      .flatMap((w) => w.points.slice(1).map((b, k) => [w.points[k], b] as const))
      .sort(([a, b], [c, d]) => Math.hypot(d[0] - c[0], d[1] - c[1]) - Math.hypot(b[0] - a[0], b[1] - a[1]))
      .flatMap(([a, b]) => [0.5, 0.3, 0.7].map((t): Point => [a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t]));
    const clear = places.filter((q) => diagram.dots.every((d) => Math.hypot(q[0] - d[0], q[1] - d[1]) > 10));
    if (clear.length > 0) places.splice(0, places.length, ...clear);
    if (places.length === 0) return;
    const found = placeLabels(
      [
        {
          item: { text: letter, size: 12, bold: true, rim: true },
          must: true,
          places: places.flatMap((q) => [
            { at: [q[0], q[1] - 10] as Point, anchor: 'middle' as const },
            { at: [q[0] + 9, q[1] + 4] as Point, anchor: 'start' as const },
            { at: [q[0], q[1] + 19] as Point, anchor: 'middle' as const },
          ]),
        },
      ],
      { x: 0, y: 0, w: diagram.width, h: diagram.height },
      boxes,
    ).items[0];
    const near = places.reduce((u, v) =>
      Math.hypot(v[0] - found.at[0], v[1] - found.at[1]) < Math.hypot(u[0] - found.at[0], u[1] - found.at[1]) ? v : u,
    );
    items.push(
      circle(near, 3.6, { stroke: 'ink', fill: 'paper', width: 1.2 }),
      text(found.at, letter, 12, { anchor: found.anchor, bold: true, rim: true }),
    );
    boxes.push(itemBox(found));
    rows.push([letter, p.where, p.what]);
  });
  return { items, rows };
}
