import type { EarthDescription } from '../../../engine/kinds/earths/earth-schema.ts';
import { formatQuantity } from '../../../engine/units/format.ts';
import { circle, line, rect, text } from '../../scene/build.ts';
import type { Item, Point } from '../../scene/scene.ts';
import { BOLD, dimension, type Paper, PLAIN, SMALL, THIN } from '../paper.ts';

type At = (x: number, y: number) => Point;
const m = (metres: number): string => formatQuantity(metres, 'length', 3);

/** Where the earth lies beside the lead-in's foot, metres. */
const BESIDE = -0.9;

/** How far it goes to either side of the set. */
export function earthReach(earth: EarthDescription): { left: number; right: number } {
  switch (earth.kind) {
    case 'rods':
      return { left: -BESIDE + (earth.count - 1) * earth.spacing, right: 0 };
    case 'buried wire':
      return { left: 0, right: earth.length };
    case 'radials':
      return { left: earth.length, right: earth.length };
    case 'counterpoise':
      return { left: 0, right: earth.length };
    default:
      return { left: 1, right: 0 };
  }
}

export function earthDepth(earth: EarthDescription): number {
  switch (earth.kind) {
    case 'rod':
    case 'rods':
      return earth.length + 0.3;
    case 'plate':
      return earth.depth + 0.6 + (earth.lie === 'upright' ? earth.side / 2 : 0);
    case 'buried wire':
    case 'radials':
      return earth.depth + 0.7;
    default:
      return 0.9;
  }
}

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
        text([px, py + 2], `plate ${m(earth.side)} square`, SMALL, { sits: 'top' }),
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
        ...dimension(
          at(x, -earth.depth),
          at(x + earth.length, -earth.depth),
          `${earth.count} of ${m(earth.length)} all round`,
          -4,
        ),
      ];
    case 'counterpoise':
      return [
        line(at(foot, Math.min(0.9, earth.height)), at(foot, earth.height), { stroke: 'copper', width: PLAIN }),
        line(at(foot, earth.height), at(foot + earth.length, earth.height), { stroke: 'copper', width: BOLD }),
        circle(at(foot + earth.length, earth.height), 0.7, { fill: 'paper', stroke: 'ink', width: THIN }),
        line(at(foot + earth.length, 0), at(foot + earth.length, earth.height), { stroke: 'metal', width: PLAIN }),
        ...dimension(
          at(foot, 0),
          at(foot + earth.length, 0),
          `counterpoise, ${earth.count > 1 ? `${earth.count} of ` : ''}${m(earth.length)}`,
          -4,
        ),
      ];
    case 'measured': {
      const [px, py] = at(x, -0.3);
      return [
        ...lead,
        line(at(x, 0), at(x, -0.3), { stroke: 'copper', width: PLAIN }),
        ...[3.2, 2.1, 1].map((half, i) =>
          line([px - half, py + i * 1.1], [px + half, py + i * 1.1], { stroke: 'copper', width: BOLD }),
        ),
        text([px + 5, py + 1], `${formatQuantity(earth.resistance, 'resistance')} as measured`, SMALL, {
          sits: 'middle',
        }),
      ];
    }
  }
}

/** An earth in a sentence. */
export function earthWords(earth: EarthDescription): string {
  switch (earth.kind) {
    case 'rod':
      return `Earth rod of ${m(earth.length)}, ${m(earth.diameter)} thick.`;
    case 'rods':
      return `${earth.count} earth rods of ${m(earth.length)} in a ${earth.layout}, ${m(earth.spacing)} apart.`;
    case 'plate':
      return `Earth plate ${m(earth.side)} square, ${earth.lie}, ${m(earth.depth)} deep.`;
    case 'buried wire':
      return `Wire of ${m(earth.length)} buried ${m(earth.depth)} deep.`;
    case 'radials':
      return `${earth.count} buried radial wires of ${m(earth.length)}.`;
    case 'counterpoise':
      return `Counterpoise of ${earth.count > 1 ? `${earth.count} wires of ` : ''}${m(earth.length)} at ${m(earth.height)}.`;
    case 'measured':
      return `Earth measured as ${formatQuantity(earth.resistance, 'resistance')}.`;
  }
}
