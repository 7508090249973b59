import type { AerialDescription } from '../../../../engine/kinds/aerials/aerial-schema.ts';
import type { Wire } from '../../../../engine/kinds/coils/wire-schema.ts';
import type { DetectorDescription } from '../../../../engine/kinds/detectors/detector-schema.ts';
import type { EarthDescription } from '../../../../engine/kinds/earths/earth-schema.ts';
import type { LoadDescription } from '../../../../engine/kinds/loads/load-schema.ts';
import type { TuningDescription } from '../../../../engine/kinds/tunings/tuning-schema.ts';
import { formatNumber, formatQuantity } from '../../../../engine/units/format.ts';
import { cutLength, mm } from '../../figures.ts';
import { printable } from '../../printable.ts';
import { aerialText, earthText } from '../drawings/aerial.ts';
import { detectorText } from '../drawings/detector.ts';
import { loadText } from '../drawings/load.ts';
import { optionName } from '../fields/options.ts';
import { type FormerMaterial, formerNames } from '../materials.ts';
import { wireText } from './wire.ts';

/** A row of the list of parts. */
export interface PartRow {
  readonly quantity: string;
  readonly what: string;
  readonly value: string;
  readonly instead: string;
}

const one = (what: string, value: string, instead = ''): PartRow => ({ quantity: '1', what, value, instead });

const pF = (x: number): string => formatQuantity(x, 'capacitance');
/** "any 420–600 pF": the unit once where both have it. */
function anyFrom(low: number, high: number): string {
  const [number, unit] = formatQuantity(low, 'capacitance', 2).split(' ');
  const to = formatQuantity(high, 'capacitance', 2);
  return to.endsWith(` ${unit}`) ? `any ${number}–${to}` : `any ${number} ${unit}–${to}`;
}

type Tuning<K extends TuningDescription['kind']> = Extract<TuningDescription, { kind: K }>;
/** What a home-made capacitor is made of. */
export type HomeMadeKind = 'foil' | 'tubes' | 'book' | 'vanes';
const HOME_MADE: Readonly<Record<HomeMadeKind, string>> = {
  foil: 'home-made of foil or plates: its own sheet lists what it needs',
  tubes: 'home-made of two tubes: its own sheet lists what it needs',
  book: 'home-made of two leaves: its own sheet lists what it needs',
  vanes: 'home-made of vanes: its own sheet lists what it needs',
};

/** A part of the board: its tag and what it is there for. */
interface Tagged {
  readonly tag: string;
  /** "tuning capacitor". */
  readonly words: string;
}
const tagged = ({ tag, words }: Tagged): string => `${tag}, ${words}`;

type DetectorKind = DetectorDescription['kind'];
const ANY_VALVE = 'any small-signal diode valve for the same heater voltage';
const INSTEAD: Readonly<Record<DetectorKind, string>> = {
  galena: 'a germanium diode while you learn the set, then the crystal',
  germanium: 'any point-contact germanium diode; a low-barrier Schottky diode',
  schottky: 'another Schottky diode of the same saturation current, within three times',
  valve: ANY_VALVE,
  mineral: '',
  silicon: '',
  exponential: '',
  measured: '',
};
/** Heater voltage of most small-signal valves. */
const isUsualHeater = (detector: DetectorDescription): boolean =>
  detector.kind === 'valve' && Math.abs(detector.ratedHeaterVoltage - 6.3) < 0.4;

const LOADS: Readonly<Record<LoadDescription['kind'], { readonly what: string; readonly instead: string }>> = {
  phones: { what: 'Phones', instead: 'any pair of 2 to 4 kΩ; low-resistance ones only through a transformer' },
  'moving-coil phones': { what: 'Phones', instead: '' },
  'crystal earpiece': { what: 'Crystal earpiece', instead: '' },
  amplifier: { what: 'Amplifier', instead: '' },
};

type Loop<K extends 'frame' | 'ferrite rod'> = Extract<AerialDescription, { kind: K }>;

/** Each row by what it is for. */
export const partRows = {
  aerial: (aerial: AerialDescription): PartRow =>
    one(
      'Aerial',
      aerialText(aerial),
      'any copper or bronze wire strong enough for the wind; insulators of glass, glazed china or plastic',
    ),
  earth: ({ earth, resistance }: { readonly earth: EarthDescription; readonly resistance: number }): PartRow =>
    one(
      'Earth',
      `${earthText(earth)}; about ${formatQuantity(resistance, 'resistance', 2)}`,
      'a longer rod or several are better; never the mains, never a gas pipe',
    ),
  arrester: (): PartRow => one('Lightning arrester and earthing switch', 'at the lead-in, outside', 'none: fit it'),
  measuredCoil: ({ name, inductance }: { readonly name: string; readonly inductance: number }): PartRow =>
    one(`Coil “${printable(name)}”`, `${formatQuantity(inductance, 'inductance')}, as measured`, 'one within 5 %'),
  coilWire: ({
    name,
    wire,
    length,
  }: {
    readonly name: string;
    readonly wire: Wire;
    readonly length?: number;
  }): PartRow => ({
    quantity: length === undefined ? '—' : cutLength(length),
    what: `Wire for coil “${printable(name)}”`,
    value: wireText(wire),
    instead: 'one gauge thicker or thinner with the same number of turns: check the range again',
  }),
  tube: (f: { readonly name: string; readonly former: FormerMaterial; readonly diameter: number }): PartRow =>
    one(
      `Former for coil “${printable(f.name)}”`,
      `${formerNames[f.former]}, ${mm(f.diameter)} outside`,
      'card, plastic or dry wood within 1 mm',
    ),
  core: (f: {
    readonly name: string;
    readonly form: 'toroid' | 'pot core';
    readonly perTurnSquared: number;
  }): PartRow =>
    one(
      `Core for coil “${printable(f.name)}”`,
      f.form === 'toroid'
        ? `toroid, A_L ${formatQuantity(f.perTurnSquared, 'inductance')}`
        : `pot core, A_L ${formatQuantity(f.perTurnSquared, 'inductance')}`,
      'see its sheet',
    ),
  former: ({ name, former }: { readonly name: string; readonly former: FormerMaterial }): PartRow =>
    one(`Former for coil “${printable(name)}”`, `${formerNames[former]}, see its sheet`, 'see its sheet'),
  slider: (): PartRow =>
    one(
      'Slider',
      'square brass rod a little longer than the coil, a block that runs on it, and a springy brass strip',
      'any stiff bare rod; a strip of spring bronze or a flattened phosphor-bronze wire',
    ),
  /** @param sections equal ones in parallel, as they were written */
  variable: (
    part: Tagged,
    tuning: Tuning<'variable'>,
    sections?: { readonly count: number; readonly one: string },
  ): PartRow =>
    one(
      tagged(part),
      `${
        sections
          ? `${sections.count} × ${sections.one} meshed, the sections in parallel (${pF(tuning.maximum)}): join their fixed vanes with one another`
          : `${pF(tuning.maximum)} meshed`
      }, ${formatNumber(tuning.swing, 3)}° swing, ${optionName('tuning.law', tuning.law)} vanes`,
      `${anyFrom(tuning.maximum * 0.85, tuning.maximum * 1.2)}; a smaller one loses the low end, with a larger one every station stands at a lower reading`,
    ),
  measuredVariable: (part: Tagged): PartRow =>
    one(tagged(part), 'the one measured', 'another: measure it and calculate the dial again'),
  homeMade: (part: Tagged, kind: HomeMadeKind): PartRow =>
    one(tagged(part), HOME_MADE[kind], 'a bought one of the same capacitance'),
  fixedTuning: (part: Tagged, capacitance: number): PartRow =>
    one(tagged(part), pF(capacitance), `${anyFrom(capacitance * 0.9, capacitance * 1.1)}, mica or polystyrene`),
  /** @param title what it is, at the head of a line. */
  capacitor: (f: {
    readonly title: string;
    readonly tag?: string;
    readonly capacitance: number;
    /** It tunes, and must be near its value. */
    readonly exact: boolean;
  }): PartRow =>
    one(
      f.tag === undefined ? f.title : `${f.title} ${f.tag}`,
      pF(f.capacitance),
      f.exact
        ? `${anyFrom(f.capacitance * 0.9, f.capacitance * 1.1)}, mica or polystyrene`
        : `${anyFrom(f.capacitance * 0.5, f.capacitance * 2)}, any kind`,
    ),
  resistor: (f: { readonly title: string; readonly tag: string; readonly resistance: number }): PartRow =>
    one(`${f.title} ${f.tag}`, formatQuantity(f.resistance, 'resistance'), 'within 20 %, any power rating'),
  // Type numbers and heater current from memory.
  detector: (detector: DetectorDescription): PartRow => ({
    quantity: detector.wiring === 'single' ? '1' : '2',
    what: detector.wiring === 'single' ? 'Detector D1' : 'Detectors D1 and D2',
    value: detectorText(detector),
    instead: isUsualHeater(detector)
      ? 'any small-signal diode valve with a 6.3 V heater, such as one half of a 6AL5 or EB91 (0.3 A)'
      : INSTEAD[detector.kind],
  }),
  valveHolder: (valves: number): PartRow => ({
    quantity: `${valves}`,
    what: valves > 1 ? 'Valve holders' : 'Valve holder',
    value: 'for the valve’s base, with its heater pins marked',
    instead: '',
  }),
  heaterSupply: (voltage: number): PartRow =>
    one(
      'Heater supply',
      `${formatQuantity(voltage, 'voltage')}, isolated from the mains, able to give the heater current in your valve’s data sheet, with a fuse of about twice that at its terminal`,
      'an accumulator or dry cells; within 10 %',
    ),
  detectorStand: (stands: number): PartRow => ({
    quantity: `${stands}`,
    what: stands > 1 ? 'Detector stands' : 'Detector stand',
    value:
      'a brass cup with a screw, or solder that melts at a low temperature, to hold the crystal; an arm on a ball or a stiff spring over it; a whisker of phosphor bronze or steel, 0.1 to 0.2 mm, wound to a small spiral and cut to a point',
    instead: 'a bought stand; a drawing pin, a safety pin and a bared strand of wire do to begin with',
  }),
  biasCell: ({ tag, voltage }: { readonly tag: string; readonly voltage: number }): PartRow =>
    one(
      `Bias cell ${tag}`,
      `${formatQuantity(voltage, 'voltage')}, from a 1.5 V cell and a potentiometer of 1–10 kΩ`,
      'any cell; take it off when not listening',
    ),
  transformer: (f: { readonly tag: string; readonly ratio: number; readonly primary: number }): PartRow =>
    one(
      `Transformer ${f.tag}`,
      `${formatNumber(f.ratio, 3)} to 1, primary ${formatQuantity(f.primary, 'inductance', 2)}`,
      'an output transformer for a small valve set',
    ),
  rod: ({ tag, aerial }: { readonly tag: string; readonly aerial: Loop<'ferrite rod'> }): PartRow =>
    one(
      `Ferrite rod ${tag}`,
      `${mm(aerial.length)} long, ${mm(aerial.diameter)} thick; its own sheet lists sleeve and blocks`,
      'a longer one: fewer turns',
    ),
  rodWire: (f: { readonly tag: string; readonly wire: Wire; readonly length: number }): PartRow => ({
    quantity: cutLength(f.length),
    what: `Wire for ${f.tag}`,
    value: wireText(f.wire),
    instead: 'one gauge either way; Litz is better still',
  }),
  frame: ({ tag, aerial }: { readonly tag: string; readonly aerial: Loop<'frame'> }): PartRow =>
    one(
      `Frame ${tag}`,
      aerial.outline === 'square'
        ? `square, ${mm(aerial.side)}, of dry wood: its own sheet lists laths, screws and leads`
        : `round, ${mm(aerial.side)}, of dry wood: its own sheet lists laths, screws and leads`,
      'any dry wood or plastic',
    ),
  frameWire: (f: { readonly tag: string; readonly wire: Wire; readonly length: number }): PartRow => ({
    quantity: cutLength(f.length),
    what: `Wire for ${f.tag}`,
    value: wireText(f.wire),
    instead: 'one gauge either way',
  }),
  listedCoil: ({ tag, words }: Tagged): PartRow =>
    one(`Coil ${tag}`, words, 'wind it by the coil sheets’ method; check it before use'),
  /** The resistor across an earpiece is a row of its own. */
  load: (load: LoadDescription): PartRow =>
    one(
      LOADS[load.kind].what,
      load.kind === 'crystal earpiece'
        ? `${pF(load.capacitance)}; the resistor across it is listed above`
        : loadText(load),
      LOADS[load.kind].instead,
    ),
  hookUpWire: ({ length, pieces }: { readonly length: number; readonly pieces: number }): PartRow => ({
    quantity: cutLength(length),
    what: 'Hook-up wire',
    value: `insulated copper, single strand, 0.6 to 1 mm, in ${pieces} pieces`,
    instead: 'any insulated copper wire; bare wire in sleeving',
  }),
  /** Sizes mm. */
  bandSwitch: ({ poles, ways }: { readonly poles: number; readonly ways: number }): PartRow =>
    one(
      'Band switch',
      `rotary or slide switch, ${poles === 1 ? 'one pole' : `${poles} poles`}, ${ways} ways`,
      'one with more poles or ways; or plugs and sockets, or clips moved by hand',
    ),
  board: ({ width, height }: { readonly width: number; readonly height: number }): PartRow =>
    one(
      'Board',
      `dry wood, ${Math.ceil(width - 1e-6)} × ${Math.ceil(height - 1e-6)} mm, 12 to 20 mm thick`,
      'larger does no harm',
    ),
  terminals: (count: number): PartRow => ({
    quantity: `${count}`,
    what: 'Terminals',
    value: 'screw terminals or brass screws with two washers each',
    instead: '',
  }),
  pins: (count: number): PartRow => ({
    quantity: `${count}`,
    what: 'Solder tags or brass pins',
    value: 'where parts and wires meet',
    instead: 'brass screws with two washers each',
  }),
};

/** What is used up or borrowed while building. */
export const forTheWork = ({ winding, loop }: { readonly winding: boolean; readonly loop: boolean }): string => {
  const things = [
    'solder with a rosin core',
    'fine emery paper to bare the wire',
    'wood screws and glue',
    ...(winding ? ['tape or thread and a little varnish for the coil'] : []),
    ...(loop ? ['flexible wire for the leads to the board'] : []),
    'two sheets of spare paper',
    'a 1.5 V cell and a meter to try it with',
  ];
  return `For the work: ${things.join('; ')}.`;
};
