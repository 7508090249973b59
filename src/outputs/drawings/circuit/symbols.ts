import { arc, circle, line, path, polyline, rect } from '../../scene/build.ts';
import type { Item, Point } from '../../scene/scene.ts';

/**
 * Symbols of IEC 60617, drawn from the standard's own shapes (from memory): each lies along the x axis about the origin,
 * first terminal to the left, px.
 */
export type SymbolKind =
  | 'resistor'
  | 'capacitor'
  | 'variable capacitor'
  | 'inductor'
  | 'diode'
  | 'valve'
  | 'cell'
  | 'phones'
  | 'earpiece'
  | 'amplifier'
  | 'transformer'
  | 'aerial'
  | 'earth'
  | 'impedance';

/** From the middle of the body to a terminal. */
export const HALF: Readonly<Record<SymbolKind, number>> = {
  resistor: 15,
  capacitor: 3,
  'variable capacitor': 3,
  inductor: 24,
  diode: 9,
  valve: 15,
  cell: 3,
  phones: 22,
  earpiece: 11,
  amplifier: 0,
  transformer: 24,
  aerial: 0,
  earth: 0,
  impedance: 15,
};

/** Boxes that bodies fill about their centre when they lie: half width and half height. */
export const BODY: Readonly<Record<SymbolKind, readonly [number, number]>> = {
  resistor: [15, 6],
  capacitor: [3, 11],
  'variable capacitor': [13, 13],
  inductor: [24, 7],
  diode: [9, 8],
  valve: [15, 15],
  cell: [3, 10],
  phones: [22, 12],
  earpiece: [11, 11],
  amplifier: [22, 18],
  transformer: [24, 14],
  aerial: [12, 15],
  earth: [12, 8],
  impedance: [15, 8],
};

const INK = { stroke: 'ink', width: 1.5 } as const;
const FILLED = { stroke: 'ink', fill: 'paper', width: 1.5 } as const;

const plates = (): Item[] => [
  line([-3, -11], [-3, 11], { stroke: 'ink', width: 2, cap: 'butt' }),
  line([3, -11], [3, 11], { stroke: 'ink', width: 2, cap: 'butt' }),
];

/** An arrow from one point to another with a filled head. */
export function arrow(from: Point, to: Point, role: 'ink' | 'soft' = 'ink'): Item[] {
  const d = Math.hypot(to[0] - from[0], to[1] - from[1]);
  const [ux, uy] = [(to[0] - from[0]) / d, (to[1] - from[1]) / d];
  const back: Point = [to[0] - 6 * ux, to[1] - 6 * uy];
  return [
    line(from, back, { stroke: role, width: 1.2 }),
    polyline([to, [back[0] - 2.4 * uy, back[1] + 2.4 * ux], [back[0] + 2.4 * uy, back[1] - 2.4 * ux]], {
      fill: role,
      closed: true,
    }),
  ];
}

export function symbolItems(kind: SymbolKind, arches = 4): Item[] {
  switch (kind) {
    case 'resistor':
      return [rect(-15, -5.5, 30, 11, FILLED)];
    case 'impedance':
      return [rect(-15, -7, 30, 14, FILLED), line([-9, 4], [9, -4], { stroke: 'ink', width: 1 })];
    case 'capacitor':
      return plates();
    case 'variable capacitor':
      return [...plates(), ...arrow([12, 13], [-12, -13])];
    case 'inductor':
      return [
        path(Array.from({ length: arches }, (_, i) => arc([-6 * arches + 6 + 12 * i, 0], 6, 180, 360)).flat(), {
          stroke: 'copper',
          width: 2,
        }),
      ];
    case 'diode':
      return [
        polyline(
          [
            [-9, -8],
            [9, 0],
            [-9, 8],
          ],
          { ...FILLED, closed: true },
        ),
        line([9, -8], [9, 8], INK),
        line([-9, 0], [9, 0], { stroke: 'ink', width: 1 }),
      ];
    case 'valve':
      return [
        circle([0, 0], 15, FILLED),
        line([-15, 0], [-6, 0], INK),
        line([-6, -7], [-6, 7], { stroke: 'ink', width: 2.5 }),
        polyline(
          [
            [15, 0],
            [13.5, 0],
            [13.5, -8],
            [4, -8],
            [4, 7],
          ],
          INK,
        ),
        // The heater, a hairpin behind the cathode; its supply is no part of the signal's circuit.
        polyline(
          [
            [6.5, 23],
            [6.5, 6],
            [8.5, 2.5],
            [10.5, 6],
            [10.5, 23],
          ],
          { stroke: 'warning', width: 1.2 },
        ),
        circle([6, 24.5], 1.6, { stroke: 'warning', fill: 'paper', width: 1 }),
        circle([11, 24.5], 1.6, { stroke: 'warning', fill: 'paper', width: 1 }),
      ];
    case 'cell':
      return [
        line([-3, -5], [-3, 5], { stroke: 'ink', width: 3, cap: 'butt' }),
        line([3, -10], [3, 10], { stroke: 'ink', width: 1.5, cap: 'butt' }),
      ];
    case 'earpiece':
      return [
        path([['M', -11, 0], ['A', 11, false, true, 11, 0], ['Z']], FILLED),
        line([-3, -2.5], [3, -2.5], { stroke: 'ink', width: 1 }),
        line([-3, -5.5], [3, -5.5], { stroke: 'ink', width: 1 }),
      ];
    case 'phones':
      return [
        path([['M', -22, 0], ['A', 10, false, true, -2, 0], ['Z']], FILLED),
        path([['M', 2, 0], ['A', 10, false, true, 22, 0], ['Z']], FILLED),
        line([-2, 0], [2, 0], INK),
      ];
    case 'amplifier':
      return [
        polyline(
          [
            [0, -18],
            [30, 0],
            [0, 18],
          ],
          { ...FILLED, closed: true },
        ),
      ];
    case 'aerial':
      return [line([0, 0], [0, -26], INK), line([-11, -26], [0, -12], INK), line([11, -26], [0, -12], INK)];
    case 'earth':
      return [
        line([0, 0], [0, 10], INK),
        line([-11, 10], [11, 10], { stroke: 'ink', width: 2 }),
        line([-7, 14], [7, 14], { stroke: 'ink', width: 2 }),
        line([-3, 18], [3, 18], { stroke: 'ink', width: 2 }),
      ];
    case 'transformer':
      return [];
  }
}

/** Loudspeaker whose mouth is to the right; its driver's left edge at the origin. */
export const loudspeaker = (): Item[] => [
  rect(0, -7, 8, 14, FILLED),
  polyline(
    [
      [8, -7],
      [18, -15],
      [18, 15],
      [8, 7],
    ],
    { ...FILLED, closed: true },
  ),
];
