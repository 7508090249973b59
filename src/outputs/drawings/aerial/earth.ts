import { type ByKind, byKind } from '../../../engine/kinds/by-kind.ts';
import type { EarthDescription } from '../../../engine/kinds/earths/earth-schema.ts';
import { formatQuantity } from '../../../engine/units/format.ts';
import { circle, line, rect, text } from '../../scene/build.ts';
import type { Item, Point } from '../../scene/scene.ts';
import { earthDrawing } from '../../words/index.ts';
import { BOLD, dimension, type Paper, PLAIN, SMALL, THIN } from '../paper.ts';

type At = (x: number, y: number) => Point;
const m = (metres: number): string => formatQuantity(metres, 'length', 3);

/** Where the earth lies beside the lead-in's foot, metres. */
const BESIDE = -0.9;

interface Reach {
  readonly left: number;
  readonly right: number;
}
const toTheRight = ({ length }: { readonly length: number }): Reach => ({ left: 0, right: length });
const besideOnly = (): Reach => ({ left: 1, right: 0 });

const REACHES: ByKind<EarthDescription, Reach> = {
  rod: besideOnly,
  rods: ({ count, spacing }) => ({ left: -BESIDE + (count - 1) * spacing, right: 0 }),
  plate: besideOnly,
  'buried wire': toTheRight,
  radials: ({ length }) => ({ left: length, right: length }),
  counterpoise: toTheRight,
  measured: besideOnly,
};

/** How far it goes to either side of the set, m. */
export const earthReach = (earth: EarthDescription): Reach => byKind(REACHES, earth);

/** Room below the ground where nothing of note lies in it, m. */
const SHALLOW = 0.9;

const DEPTHS: ByKind<EarthDescription, number> = {
  rod: ({ length }) => length + 0.3,
  rods: ({ length }) => length + 0.3,
  plate: ({ depth, lie, side }) => depth + 0.6 + (lie === 'upright' ? side / 2 : 0),
  'buried wire': ({ depth }) => depth + 0.7,
  radials: ({ depth }) => depth + 0.7,
  counterpoise: () => SHALLOW,
  measured: () => SHALLOW,
};

/** How far below the ground the drawing goes, m. */
export const earthDepth = (earth: EarthDescription): number => byKind(DEPTHS, earth);

/** What is in the ground, or just over it, and the lead to it. */
export function earthItems(earth: EarthDescription, at: At, foot: number, paper: Paper): Item[] {
  const x = foot + BESIDE;
  const lead: Item[] = [
    line(at(foot, 0.9), at(x, 0.9), { stroke: 'copper', width: PLAIN }),
    line(at(x, 0.9), at(x, 0), { stroke: 'copper', width: PLAIN }),
  ];
  const width = (d: number): number => Math.max(0.9, paper.mm(d * 1e3));
  const rod = (rx: number, length: number, diameter: number): Item =>
    line(at(rx, 0.1), at(rx, -length), { stroke: 'copper', width: width(diameter), cap: 'butt' });
  switch (earth.kind) {
    case 'rod':
      return [
        ...lead,
        rod(x, earth.length, earth.diameter),
        ...dimension(at(x, 0), at(x, -earth.length), m(earth.length), -4),
      ];
    case 'rods': {
      const places = Array.from({ length: earth.count }, (_, i) => x - i * earth.spacing);
      const last = places[places.length - 1];
      return [
        ...lead,
        ...places.map((rx) => rod(rx, earth.length, earth.diameter)),
        line(at(x, 0.1), at(last, 0.1), { stroke: 'copper', width: PLAIN }),
        ...dimension(at(x, 0), at(x, -earth.length), m(earth.length), 4),
        ...dimension(at(places[1], -earth.length), at(x, -earth.length), m(earth.spacing), -3),
      ];
    }
    case 'plate': {
      const [px, py] = at(x - earth.side / 2, -earth.depth);
      return [
        ...lead,
        line(at(x, 0), at(x, -earth.depth), { stroke: 'copper', width: PLAIN }),
        earth.lie === 'upright'
          ? line(at(x, -earth.depth + earth.side / 2), at(x, -earth.depth - earth.side / 2), {
              stroke: 'copper',
              width: 1,
              cap: 'butt',
            })
          : rect(px, py, paper.mm(earth.side * 1e3), 1, { fill: 'copper' }),
        ...dimension(at(x - earth.side / 2, 0), at(x - earth.side / 2, -earth.depth), m(earth.depth), 3),
        text([px, py + 2], earthDrawing.plate(earth.side), SMALL, { sits: 'top' }),
      ];
    }
    case 'buried wire':
      return [
        ...lead,
        line(at(x, 0), at(x, -earth.depth), { stroke: 'copper', width: PLAIN }),
        line(at(x, -earth.depth), at(x + earth.length, -earth.depth), { stroke: 'copper', width: BOLD }),
        ...dimension(at(x, -earth.depth), at(x + earth.length, -earth.depth), m(earth.length), -4),
      ];
    case 'radials':
      return [
        ...lead,
        line(at(x, 0), at(x, -earth.depth), { stroke: 'copper', width: PLAIN }),
        line(at(x - earth.length, -earth.depth), at(x + earth.length, -earth.depth), { stroke: 'copper', width: BOLD }),
        ...dimension(at(x, -earth.depth), at(x + earth.length, -earth.depth), earthDrawing.radials(earth), -4),
      ];
    case 'counterpoise':
      return [
        line(at(foot, Math.min(0.9, earth.height)), at(foot, earth.height), { stroke: 'copper', width: PLAIN }),
        line(at(foot, earth.height), at(foot + earth.length, earth.height), { stroke: 'copper', width: BOLD }),
        circle(at(foot + earth.length, earth.height), 0.7, { fill: 'paper', stroke: 'ink', width: THIN }),
        line(at(foot + earth.length, 0), at(foot + earth.length, earth.height), { stroke: 'metal', width: PLAIN }),
        ...dimension(at(foot, 0), at(foot + earth.length, 0), earthDrawing.counterpoise(earth), -4),
      ];
    case 'measured': {
      const [px, py] = at(x, -0.3);
      return [
        ...lead,
        line(at(x, 0), at(x, -0.3), { stroke: 'copper', width: PLAIN }),
        ...[3.2, 2.1, 1].map((half, i) =>
          line([px - half, py + i * 1.1], [px + half, py + i * 1.1], { stroke: 'copper', width: BOLD }),
        ),
        text([px + 5, py + 1], earthDrawing.measured(earth.resistance), SMALL, {
          sits: 'middle',
        }),
      ];
    }
  }
}
