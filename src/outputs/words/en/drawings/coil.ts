import { type ByKind, byKind } from '../../../../engine/kinds/by-kind.ts';
import type { CoilDescription } from '../../../../engine/kinds/coils/coil-schema.ts';
import { formatNumber, formatQuantity } from '../../../../engine/units/format.ts';
import { kHz, mm } from '../../figures.ts';
import { printable } from '../../printable.ts';
import { listOf } from '../grammar.ts';
import { coveringNames } from '../materials.ts';
import { type TapName, tapNames, turnsText } from '../sheets/coil.ts';

type Wound = Exclude<CoilDescription, { shape: 'measured' }>;

/** "56 turns of 0.4 mm enamelled wire". */
const turnsOfWire = (turns: number, { wire }: Pick<Wound, 'wire'>): string =>
  `${turnsText(turns)} turns of ${mm(wire.size)} ${coveringNames[wire.covering]} wire`;

const COILS: ByKind<CoilDescription, string> = {
  solenoid: (coil) =>
    coil.pitch
      ? `${turnsOfWire(coil.turns, coil)} in one layer on a ${mm(coil.formerDiameter)} former, ${mm(coil.pitch)} from turn to turn.`
      : `${turnsOfWire(coil.turns, coil)} in one layer on a ${mm(coil.formerDiameter)} former, wound close.`,
  multilayer: (coil) =>
    `${turnsOfWire(coil.turnsPerLayer * coil.layers, coil)} in ${coil.layers} layers of ${turnsText(coil.turnsPerLayer)} on a ${mm(coil.formerDiameter)} former.`,
  'bank-wound': (coil) =>
    `${turnsOfWire(coil.turns, coil)} in ${coil.layers} banks on a ${mm(coil.formerDiameter)} former.`,
  spiral: (coil) => `Flat spiral of ${turnsOfWire(coil.turns, coil)} from ${mm(coil.innerDiameter)} outward.`,
  spider: (coil) =>
    coil.over === 1
      ? `${turnsOfWire(coil.turns, coil)} woven through ${coil.slots} slots, every vane, from ${mm(coil.innerDiameter)} outward.`
      : `${turnsOfWire(coil.turns, coil)} woven through ${coil.slots} slots, two vanes at a time, from ${mm(coil.innerDiameter)} outward.`,
  basket: (coil) =>
    `${turnsOfWire(coil.turns, coil)} woven round ${coil.pegs} pegs on a ${mm(coil.pegCircle)} circle, ${coil.over} at a time.`,
  core: (coil) =>
    coil.form === 'toroid'
      ? `${turnsOfWire(coil.turns, coil)} on a toroid.`
      : `${turnsOfWire(coil.turns, coil)} on a pot core.`,
  measured: (coil) =>
    `Measured coil of ${formatQuantity(coil.inductance, 'inductance')}, Q ${formatNumber(coil.q, 3)} at ${kHz(coil.at)} kHz.`,
};

interface Tapped {
  readonly name: TapName;
  /** From the earthed end. */
  readonly turn: number;
}

const turnOf = (turn: number): string => formatNumber(turn, 3);

export const coilDrawing = {
  title: (name: string): string => `Coil “${printable(name)}”`,
  description: (coil: CoilDescription, taps: readonly Tapped[]): string => {
    const winding = byKind(COILS, coil);
    if (taps.length === 0) return winding;
    return `${winding} Taps: ${listOf(taps.map((tap) => `${tapNames[tap.name].name} at ${turnOf(tap.turn)}`))}.`;
  },
  tap: ({ name, turn }: Tapped): string => `${tapNames[name].name}: ${turnOf(turn)}`,
  tapTitle: ({ name, turn }: Tapped): string => `${tapNames[name].name}, ${turnOf(turn)} turns from the earthed end`,
  start: 'start',
  end: 'end',
  cheek: 'cheek',
  turns: (turns: number): string => `${turnsText(turns)} turns`,
  turnsIn: ({ turns, length }: { readonly turns: number; readonly length: number }): string =>
    `${turnsText(turns)} turns in ${mm(length)}`,
  lengthAndTurns: ({ turns, length }: { readonly turns: number; readonly length: number }): string =>
    `${mm(length)}, ${turnsText(turns)} turns`,
  layers: (layers: number): string => `${layers} layers`,
  banks: (banks: number): string => `${banks} banks`,
  onPegs: ({ turns, pegs }: { readonly turns: number; readonly pegs: number }): string =>
    `${turnsText(turns)} turns round ${pegs} pegs`,
  inSlots: ({
    turns,
    slots,
    outer,
  }: {
    readonly turns: number;
    readonly slots: number;
    readonly outer: number;
  }): string => `${turnsText(turns)} turns, ${slots} slots; winding to ${Math.round(outer * 1e3)} mm`,
  onCore: (coil: { readonly turns: number; readonly perTurnSquared: number; readonly turnLength: number }): string =>
    `${turnsText(coil.turns)} turns, A_L ${formatQuantity(coil.perTurnSquared, 'inductance')}, ${formatQuantity(coil.turnLength, 'length')} a turn`,
  measured: (coil: { readonly inductance: number; readonly q: number; readonly at: number }): string =>
    `${formatQuantity(coil.inductance, 'inductance')}, Q ${formatNumber(coil.q, 3)} at ${formatNumber(coil.at / 1e3, 4)} kHz`,
};
