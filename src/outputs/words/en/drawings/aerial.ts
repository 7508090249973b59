import type { AerialDescription } from '../../../../engine/kinds/aerials/aerial-schema.ts';
import { type ByKind, byKind } from '../../../../engine/kinds/by-kind.ts';
import type { EarthDescription } from '../../../../engine/kinds/earths/earth-schema.ts';
import type { LoopDescription } from '../../../../engine/kinds/loops.ts';
import { formatNumber, formatQuantity } from '../../../../engine/units/format.ts';
import { mm as length } from '../../figures.ts';
import { kindName } from '../fields/index.ts';
import { optionName } from '../fields/options.ts';
import { counted } from '../grammar.ts';

const flatTop = (
  name: string,
  a: { readonly length: number; readonly wires: number; readonly height: number; readonly base: number },
): string =>
  a.wires > 1
    ? `${name} aerial, ${length(a.length)} of top wire (${a.wires} side by side) at ${length(a.height)}, its lead-in at ${length(a.base)}`
    : `${name} aerial, ${length(a.length)} of top wire at ${length(a.height)}, its lead-in at ${length(a.base)}`;

const AERIALS: ByKind<AerialDescription, string> = {
  'inverted-L': (a) => flatTop('Inverted-L', a),
  T: (a) => flatTop('T', a),
  vertical: ({ base, height }) => `Vertical wire from ${length(base)} to ${length(height)}`,
  horizontal: (a) => `Horizontal wire of ${length(a.length)} at ${length(a.height)}`,
  sloping: (a) => `Sloping wire of ${length(a.length)} from ${length(a.height)} to ${length(a.farHeight)}`,
  bent: ({ points }) => `Wire of ${points.length} corners, up to ${length(Math.max(...points.map((p) => p[2])))} high`,
  frame: ({ outline, turns, side }) =>
    outline === 'square'
      ? `Square frame of ${counted(turns, 'turn', 'turns')}, ${length(side)} across`
      : `Round frame of ${counted(turns, 'turn', 'turns')}, ${length(side)} across`,
  'ferrite rod': (a) =>
    `Ferrite rod of ${length(a.length)} by ${length(a.diameter)} with ${counted(a.turns, 'turn', 'turns')}`,
  measured: (a) =>
    `Aerial measured as ${formatQuantity(a.capacitance, 'capacitance')}, effective height ${length(a.effectiveHeight)}`,
  impedance: (a) =>
    `Aerial known by its impedance at ${counted(a.points.length, 'frequency', 'frequencies')}, effective height ${length(a.effectiveHeight)}`,
};

/** An aerial in one line, as a list of parts has it. */
export const aerialText = (aerial: AerialDescription): string => byKind(AERIALS, aerial);

const EARTHS: ByKind<EarthDescription, string> = {
  rod: (e) => `Earth rod of ${length(e.length)}, ${length(e.diameter)} thick`,
  rods: (e) =>
    `${e.count} earth rods of ${length(e.length)} ${optionName('earth.layout', e.layout)}, ${length(e.spacing)} apart`,
  plate: (e) =>
    e.lie === 'upright'
      ? `Earth plate ${length(e.side)} square, upright, ${length(e.depth)} deep`
      : `Earth plate ${length(e.side)} square, flat, ${length(e.depth)} deep`,
  'buried wire': (e) => `Wire of ${length(e.length)} buried ${length(e.depth)} deep`,
  radials: (e) => `${e.count} buried radial wires of ${length(e.length)}`,
  counterpoise: (e) =>
    e.count > 1
      ? `Counterpoise of ${e.count} wires of ${length(e.length)} at ${length(e.height)}`
      : `Counterpoise of ${length(e.length)} at ${length(e.height)}`,
  measured: (e) => `Earth measured as ${formatQuantity(e.resistance, 'resistance')}`,
};

/** An earth in one line, as a list of parts has it. */
export const earthText = (earth: EarthDescription): string => byKind(EARTHS, earth);

export const aerialDrawing = {
  title: (aerial: AerialDescription): string => `Aerial and earth: ${kindName('aerial', aerial.kind)}`,
  aerial: ({ kind }: AerialDescription): string => `Aerial: ${kindName('aerial', kind)}`,
  earth: ({ kind }: EarthDescription): string => `Earth: ${kindName('earth', kind)}`,
  description: (aerial: AerialDescription, earth: EarthDescription): string =>
    `${aerialText(aerial)}. ${earthText(earth)}.`,
  mast: 'mast',
  insulator: 'insulator',
  person: 'a person of 1.75 m',
  set: 'the set',
  measured: (effectiveHeight: number): string => `as measured; effective height ${length(effectiveHeight)}`,
};

export const earthDrawing = {
  plate: (side: number): string => `plate ${length(side)} square`,
  radials: ({ count, length: each }: { readonly count: number; readonly length: number }): string =>
    `${count} of ${length(each)} all round`,
  counterpoise: ({ count, length: each }: { readonly count: number; readonly length: number }): string =>
    count > 1 ? `counterpoise, ${count} of ${length(each)}` : `counterpoise, ${length(each)}`,
  measured: (resistance: number): string => `${formatQuantity(resistance, 'resistance')} as measured`,
};

export const loopDrawing = {
  titles: { frame: 'Frame aerial', 'ferrite rod': 'Ferrite rod aerial' } satisfies Record<
    LoopDescription['kind'],
    string
  >,
  parts: { frame: 'Frame aerial', 'ferrite rod': 'Ferrite rod' } satisfies Record<LoopDescription['kind'], string>,
  description: (aerial: LoopDescription): string => `${aerialText(aerial)}.`,
  turnsApart: ({ turns, pitch }: { readonly turns: number; readonly pitch: number }): string =>
    `${formatNumber(turns, 3)} turns, ${formatQuantity(pitch, 'length')} apart`,
  turnsIn: ({ turns, winding }: { readonly turns: number; readonly winding: number }): string =>
    `${formatNumber(turns, 3)} turns in ${length(winding)}`,
  rod: ({ diameter, permeability }: { readonly diameter: number; readonly permeability: number }): string =>
    `rod ${length(diameter)} thick, permeability ${formatNumber(permeability, 3)}`,
};
