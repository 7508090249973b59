import { PART } from '../../../engine/network/part-ids.ts';
import type { SetDescription } from '../../../engine/set/description.ts';
import { circle, group, line, polyline, rect, text } from '../../scene/build.ts';
import type { Item, Scene } from '../../scene/scene.ts';
import { textWidth } from '../../scene/text-width.ts';
import { diagramText, symbolNames } from '../../words/index.ts';
import { type Diagram, LETTERS, type PlacedSymbol } from './diagram.ts';
import { circuitDiagram } from './layouts.ts';
import { nodeName } from './node-names.ts';
import { arrow, loudspeaker, symbolItems } from './symbols.ts';

/**
 * The circuit diagram of a set, in the symbols of IEC 60617. Every symbol carries its part.
 * @param set as read
 * @param tags what symbols are called elsewhere, by their ids: "C1"; written before their words.
 * @returns a scene, px
 */
export function drawCircuit(set: SetDescription, tags: ReadonlyMap<string, string> = new Map()): Scene {
  const diagram = tagged(circuitDiagram(set), tags);
  return {
    unit: 'px',
    width: diagram.width,
    height: diagram.height,
    title: diagramText.title(set.name),
    description: circuitWords(set, diagram),
    items: diagramItems(diagram),
    warnings: diagram.warnings,
  };
}

function tagged(diagram: Diagram, tags: ReadonlyMap<string, string>): Diagram {
  const symbols = diagram.symbols.map((s) => {
    const tag = tags.get(s.id);
    return tag === undefined || s.words.length === 0 ? s : { ...s, words: withTag(tag, s) };
  });
  return { ...diagram, symbols };
}

/** Letters of a name that stands by itself and has room for a tag before it. */
const LONGEST_ALONE = 9;

/** The tag takes the place of a name where both are wider than what had room there. */
function withTag(tag: string, { words: [first, ...values], anchor, isFigure }: PlacedSymbol): string[] {
  // Over a symbol there is room to the sides, beside one there is room below.
  if (isFigure && anchor !== 'middle') return [tag, first, ...values];
  const both = `${tag} ${first}`;
  const room = Math.max(...[first, ...values].map((words) => textWidth(words, LETTERS)));
  const isTooWide = values.length > 0 ? textWidth(both, LETTERS) > room : first.length > LONGEST_ALONE;
  return [isTooWide ? tag : both, ...values];
}

/** The diagram in words: every symbol and what it lies between. */
function circuitWords(set: SetDescription, diagram: Diagram = circuitDiagram(set)): string {
  const between = diagram.symbols.flatMap(({ name, value, terminals: [a, b] }) =>
    a === undefined || b === undefined
      ? []
      : [
          {
            name,
            value: value === '' || value === name ? undefined : value,
            from: nodeName(a.node),
            to: nodeName(b.node),
          },
        ],
  );
  return diagramText.description(set.arrangement.kind, between);
}

function diagramItems(diagram: Diagram): Item[] {
  const items: Item[] = diagram.wires.map((w) =>
    w.points.length === 2
      ? line(w.points[0], w.points[1], { stroke: 'ink', width: 1.5 })
      : polyline(w.points, { stroke: 'ink', width: 1.5 }),
  );
  for (const c of diagram.couplings) {
    if (!c.arrow) continue;
    const [a, b] = c.arrow;
    if (c.first === c.second) {
      items.push(...arrow(a, b));
      continue;
    }
    items.push(...arrow(a, b, 'soft'), ...(a[1] === b[1] ? arrow(b, a, 'soft') : []));
    if (c.words)
      items.push(
        text([(a[0] + b[0]) / 2, a[1] - 6], c.words, LETTERS - 1, { anchor: 'middle', role: 'soft', rim: true }),
      );
  }
  items.push(...diagram.symbols.map(symbolItem));
  items.push(...diagram.dots.map((d) => circle(d, 2.8, { fill: 'ink' })));
  items.push(...diagram.remarks.map((r) => text(r.at, r.text, LETTERS, { anchor: r.anchor, role: 'soft', rim: true })));
  return items;
}

const DIRECTED = new Set(['diode', 'valve', 'cell']);

function symbolItem(s: PlacedSymbol): Item {
  const body = s.kind === 'transformer' ? coreItems(s) : symbolItems(s.kind, s.arches);
  // A mirrored coil bulges to the other side: turned half round, its ends change places and nothing else.
  // What looks the same both ways stands upright whichever end comes first.
  const upright = s.turn === -90 && !DIRECTED.has(s.kind) ? 90 : s.turn;
  const turn = upright + (s.mirrored ? 180 : 0);
  const drawn: Item[] = [group(body, { move: s.centre, turn })];
  if (s.kind === 'amplifier') {
    const at: [number, number] = [s.centre[0] + 42, s.centre[1]];
    drawn.push(
      line([s.centre[0] + 30, s.centre[1]], at, { stroke: 'ink', width: 1.5 }),
      group(loudspeaker(), { move: at }),
    );
  }
  const words = s.words.map((w, i) =>
    text([s.wordsAt[0], s.wordsAt[1] + 14 * i], w, LETTERS, {
      anchor: s.anchor,
      role: i === 0 ? 'ink' : 'soft',
      rim: true,
    }),
  );
  // A generous place to press.
  const [x, y] = s.centre;
  const touch = rect(x - 16, y - 16, 32, 32, { fill: 'paper', opacity: 0 });
  return group([touch, ...drawn, ...words], {
    part: s.at,
    title: s.value === '' || s.value === s.name ? s.name : symbolNames.withValue(s),
  });
}

/** Core of a transformer, a rod beside its coil, the outline of a frame; along the x axis like the coils themselves. */
function coreItems(s: PlacedSymbol): Item[] {
  const half = 6 * (s.arches ?? 4);
  const look = { stroke: 'ink', width: 1.5 } as const;
  if (s.id === `${PART.loop}/outline`)
    return [rect(-half - 9, -16, 2 * half + 18, 28, { stroke: 'soft', width: 1, dash: [4, 3] })];
  if (s.id === `${PART.loop}/core`) return [line([-half, -12], [half, -12], look)];
  return [line([-half, -2], [half, -2], look), line([-half, 2], [half, 2], look)];
}
