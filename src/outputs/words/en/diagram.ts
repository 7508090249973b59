import type { AerialDescription } from '../../../engine/kinds/aerials/aerial-schema.ts';
import type { ArrangementDescription } from '../../../engine/kinds/arrangements/arrangement-schema.ts';
import type { NodeOf, Nodes } from '../../../engine/kinds/arrangements/nodes.ts';
import type { ByKind } from '../../../engine/kinds/by-kind.ts';
import type { DetectorDescription } from '../../../engine/kinds/detectors/detector-schema.ts';
import type { EarthDescription } from '../../../engine/kinds/earths/earth-schema.ts';
import { formatNumber, formatQuantity } from '../../../engine/units/format.ts';
import { mm } from '../figures.ts';
import { kindName } from './fields/kinds.ts';
import { optionName } from './fields/options.ts';
import { plural } from './grammar.ts';
import type { SentencesFor } from './warnings/sentences-for.ts';

/** What is written at a symbol: a line each, and what it measures in one line. */
export interface SymbolLabel {
  readonly lines: readonly string[];
  readonly value: string;
  /** Nothing but a figure, with no name before it. */
  readonly isFigure?: boolean;
}
const label = (name: string, ...values: string[]): SymbolLabel => ({
  lines: [name, ...values],
  value: values.join(', ') || name,
});

const turns = (n: number): string => formatNumber(n, n >= 100 ? 4 : 3);
const turnsOf = (n: number): string => `${turns(n)} ${plural(n, 'turn', 'turns')}`;
const inductance = (L: number): string => formatQuantity(L, 'inductance');
const capacitance = (C: number): string => formatQuantity(C, 'capacitance');
const resistance = (R: number): string => formatQuantity(R, 'resistance');

/** "13–365 pF": the unit once where both have it. */
function fromTo(min: number, max: number): string {
  const [low, high] = [capacitance(min), capacitance(max)];
  const [number, unit] = low.split(' ');
  return high.endsWith(` ${unit}`) ? `${number}–${high}` : `${low}–${high}`;
}

interface Measured {
  readonly name: string;
  readonly inductance: number;
}

const hung = (name: string, { length, height }: { readonly length: number; readonly height: number }): SymbolLabel =>
  label(name, `${mm(length)}, ${mm(height)} up`);
const buried = (name: string, { length }: { readonly length: number }): SymbolLabel => label(`${name}, ${mm(length)}`);

/** What is written at the symbols of a circuit diagram. */
export const symbolLabels = {
  aerial: {
    'inverted-L': (aerial) => hung('inverted-L', aerial),
    T: (aerial) => hung('T', aerial),
    horizontal: (aerial) => hung('horizontal', aerial),
    sloping: (aerial) => hung('sloping', aerial),
    vertical: ({ height }) => label('vertical', `${mm(height)} up`),
    bent: () => label('aerial', 'bent wire'),
    measured: (aerial) => label('aerial', capacitance(aerial.capacitance)),
    impedance: () => label('aerial', 'as measured'),
    frame: (aerial) => label('frame', `${mm(aerial.side)} across`, turnsOf(aerial.turns)),
    'ferrite rod': (aerial) => label('ferrite rod', mm(aerial.length), turnsOf(aerial.turns)),
  } satisfies ByKind<AerialDescription, SymbolLabel>,
  earth: {
    rod: (earth) => buried('earth rod', earth),
    rods: ({ count, length }) => label(`${count} earth rods, ${mm(length)}`),
    plate: ({ side }) => label(`earth plate, ${mm(side)}`),
    'buried wire': (earth) => buried('buried wire', earth),
    radials: (earth) => buried('radials', earth),
    counterpoise: (earth) => buried('counterpoise', earth),
    measured: (earth) => label(`earth, ${resistance(earth.resistance)}`),
  } satisfies ByKind<EarthDescription, SymbolLabel>,
  detector: {
    galena: () => label('galena'),
    mineral: ({ mineral }) => label(optionName('detector.mineral', mineral)),
    germanium: () => label('germanium'),
    schottky: ({ type }) => label(type),
    silicon: () => label('silicon'),
    valve: ({ heaterVoltage }) => label('valve', `heater ${formatQuantity(heaterVoltage, 'voltage')}`),
    exponential: () => label('detector'),
    measured: () => label('detector'),
  } satisfies ByKind<DetectorDescription, SymbolLabel>,
  coil: ({ name, inductance: L, turns: n }: Measured & { readonly turns: number }): SymbolLabel =>
    label(name, inductance(L), turnsOf(n)),
  measuredCoil: ({ name, inductance: L }: Measured): SymbolLabel => label(name, inductance(L)),
  inductor: ({ name, inductance: L, q }: Measured & { readonly q: number }): SymbolLabel =>
    label(name, inductance(L), `Q ${formatNumber(q, 3)}`),
  tuning: ({ min, max }: { readonly min: number; readonly max: number }): SymbolLabel =>
    label('tuning', fromTo(min, max)),
  fixedTuning: (C: number): SymbolLabel => label('tuning', capacitance(C)),
  unknownTuning: label('tuning'),
  aerialTuning: ({ min, max }: { readonly min: number; readonly max: number }): SymbolLabel => ({
    lines: ['aerial', 'tuning', fromTo(min, max)],
    value: fromTo(min, max),
  }),
  unknownAerialTuning: label('aerial', 'tuning'),
  fixedAerialTuning: (C: number): SymbolLabel => ({
    lines: ['aerial', 'tuning', capacitance(C)],
    value: capacitance(C),
  }),
  trap: ({ number, inductance: L }: { readonly number: number; readonly inductance: number }): SymbolLabel =>
    label(`trap ${number}`, inductance(L)),
  /** An absorption trap's capacitor, at which all of the trap is written. */
  absorption: (trap: {
    readonly number: number;
    readonly inductance: number;
    readonly capacitance: number;
    readonly coupling: number;
  }): SymbolLabel =>
    label(
      `trap ${trap.number}`,
      inductance(trap.inductance),
      capacitance(trap.capacitance),
      `k ${formatQuantity(trap.coupling, 'ratio', 2)}`,
    ),
  byPass: (C: number): SymbolLabel => label('by-pass', capacitance(C)),
  pump: (C: number): SymbolLabel => label('pump', capacitance(C)),
  bias: (V: number): SymbolLabel => label('bias', formatQuantity(V, 'voltage')),
  phones: (R: number): SymbolLabel => label('phones', resistance(R)),
  earpiece: (C: number): SymbolLabel => label('earpiece', capacitance(C)),
  amplifier: (R: number): SymbolLabel => label('amplifier', resistance(R)),
};

/** Symbols that stand for a part of a part. */
export const symbolNames = {
  stretch: ({ name, from, to }: { readonly name: string; readonly from: number; readonly to: number }): string =>
    `${name}, turns ${Number(from.toFixed(3))}–${Number(to.toFixed(3))}`,
  primary: 'transformer primary',
  secondary: 'transformer secondary',
  core: 'transformer core',
  outline: 'frame outline',
  rod: 'rod core',
  withValue: ({ name, value }: { readonly name: string; readonly value: string }): string => `${name}: ${value}`,
};

/** Nodes, as the description of a diagram names them. */
const NODES: SentencesFor<Nodes> = {
  earth: () => 'earth',
  aerial: () => 'aerial',
  out: () => 'out',
  top: () => 'top',
  bottom: () => 'bottom',
  middle: () => 'middle',
  foot: () => 'foot',
  'far end': () => 'far end',
  'aerial coil': () => 'aerial coil',
  pump: () => 'pump',
  biased: () => 'behind the bias cell',
  equalised: () => 'behind the equaliser',
  'detector tap': () => 'detector tap',
  'load secondary': () => 'transformer secondary',
  'load in': () => 'amplifier input',
  tap: ({ turn }) => `turn ${turn}`,
  'aerial tap': ({ turn }) => `aerial turn ${turn}`,
  'after trap': ({ trap }) => `behind trap ${trap}`,
  'trap middle': ({ trap }) => `middle of trap ${trap}`,
  'trap loop': ({ trap }) => `trap ${trap}`,
  listed: ({ name }) => name,
  inside: () => 'inside a part',
};

/** What a node of the circuit is called in the description of its diagram. */
export const nodeText = (node: NodeOf): string => (NODES[node.code] as (figures: NodeOf) => string)(node);

interface Between {
  readonly name: string;
  /** What it measures; none where that is its name. */
  readonly value?: string;
  readonly from: string;
  readonly to: string;
}

export const diagramText = {
  title: (set: string): string => `Circuit diagram: ${set}`,
  description: (kind: ArrangementDescription['kind'], symbols: readonly Between[]): string =>
    `Arrangement: ${kindName('arrangement', kind)}. ${symbols
      .map(({ name, value, from, to }) =>
        value === undefined ? `${name} from ${from} to ${to}` : `${name} (${value}) from ${from} to ${to}`,
      )
      .join('; ')}.`,
  turn: (turn: number): string => `turn ${turns(turn)}`,
  slider: 'slider',
  coupling: ({ distance, tilt }: { readonly distance: number; readonly tilt: number }): string =>
    tilt > 0 ? `${formatQuantity(distance, 'length', 2)}, ${turns(tilt)}°` : formatQuantity(distance, 'length', 2),
  mutual: ({ first, second, mutual }: { readonly first: string; readonly second: string; readonly mutual: number }) =>
    `${first} and ${second} coupled: M ${inductance(mutual)}`,
  transformer: (ratio: number): string => `${formatNumber(ratio, 3)} : 1`,
  noDetector: 'The list has no detector: nothing will be heard.',
  bothEnds: ({ name, node }: { readonly name: string; readonly node: string }): string =>
    `“${name}” has both ends at “${node}” and has no effect.`,
};
