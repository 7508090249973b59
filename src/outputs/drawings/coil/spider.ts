import { weavePattern } from '../../../engine/parts/coil/shapes.ts';
import { arc, path, polyline, text } from '../../scene/build.ts';
import type { Item, PathSegment, Point } from '../../scene/scene.ts';
import { coilDrawing } from '../../words/index.ts';
import { type PaperRoom, SMALL, THIN } from '../paper.ts';
import { type CoilOf, type DrawnCoil, overall, shown, type Tap } from './drawn.ts';
import { flatMeasures, flatPaper, flatTaps } from './spiral.ts';

/** Width of a saw cut, mm. */
const SLOT = 2;
/** How far the vanes reach beyond the last turn, mm. */
const RIM = 6;

/** A slotted disc: outline with its slots, x right and y up about the centre, mm; what a template is cut to. */
export function spiderOutline(coil: CoilOf<'spider'>): { outline: Point[]; hub: number; rim: number } {
  const hub = (coil.innerDiameter * 1e3) / 2;
  const rim = hub + coil.turns * overall(coil) + RIM;
  const points: Point[] = [];
  for (let k = 0; k < coil.slots; k++) {
    const a = (2 * Math.PI * k) / coil.slots;
    const half = Math.asin(Math.min(0.4, SLOT / 2 / rim));
    const next = a + (2 * Math.PI) / coil.slots;
    const [nx, ny] = [-Math.sin(a), Math.cos(a)];
    // Down one side of the slot and up the other.
    points.push(
      [rim * Math.cos(a - half), rim * Math.sin(a - half)],
      [hub * Math.cos(a) - (nx * SLOT) / 2, hub * Math.sin(a) - (ny * SLOT) / 2],
      [hub * Math.cos(a) + (nx * SLOT) / 2, hub * Math.sin(a) + (ny * SLOT) / 2],
    );
    const n = 14;
    for (let i = 0; i <= n; i++) {
      const b = a + half + ((next - half - a - half) * i) / n;
      points.push([rim * Math.cos(b), rim * Math.sin(b)]);
    }
  }
  return { outline: points, hub, rim };
}

/** Does this turn lie on the near face of this vane. */
function onNearFace(slots: number, over: number, turn: number, vane: number): boolean {
  const { wave } = weavePattern(slots, over);
  const perPost = wave.length / (2 * over);
  return wave[((turn * slots + vane) * perPost + Math.floor(perPost / 2)) % wave.length] > 0;
}

export function drawnSpider(coil: CoilOf<'spider'>, taps: readonly Tap[], room: PaperRoom): DrawnCoil {
  const { outline, hub, rim } = spiderOutline(coil);
  const pitch = overall(coil);
  const outer = hub + coil.turns * pitch;
  const paper = flatPaper(rim, room);
  const { at, mm } = paper;
  const items: Item[] = [
    polyline(
      outline.map(([x, y]) => at(x, y)),
      { fill: 'card', stroke: 'ink', width: THIN, closed: true },
    ),
  ];
  const { step, list } = shown(coil.turns, mm(pitch), 0.5);
  const width = Math.max(THIN, step > 1 ? 0.3 : mm(pitch) * 0.8);
  const slots = coil.slots;
  const centre = at(0, 0);
  for (const i of list) {
    const segments: PathSegment[] = [];
    const r = mm(hub + (i + 0.5) * pitch);
    // What is drawn of the turns left out in between follows its own number, so that the weave shows.
    const turn = step > 1 ? Math.round(i / step) : i;
    for (let v = 0; v < slots; v++) {
      const from = (-360 * (v + 1)) / slots;
      if (onNearFace(slots, coil.over, turn, v)) segments.push(...arc(centre, r, from - 2, from + 360 / slots + 2));
    }
    if (segments.length > 0) items.push(path(segments, { stroke: 'copper', width }));
  }
  items.push(
    ...flatMeasures(paper, hub, rim),
    ...flatTaps(paper, taps, rim, (t) => hub + t * pitch),
    text([2, paper.height - 2], coilDrawing.inSlots({ turns: coil.turns, slots, outer: (2 * outer) / 1e3 }), SMALL),
    paper.note,
  );
  return { items, paper };
}
