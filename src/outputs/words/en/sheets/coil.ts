import type { CoilDescription } from '../../../../engine/kinds/coils/coil-schema.ts';
import { formatNumber, formatQuantity } from '../../../../engine/units/format.ts';
import { bandSpan, kHz, mm, ohms } from '../../figures.ts';
import { printable } from '../../printable.ts';
import { numberSpan, ohmsBeside, spanBeside } from '../../ranges.ts';
import { counted } from '../grammar.ts';
import { type FormerMaterial, formerNames } from '../materials.ts';

/** What a tap is for. */
export type TapName = 'aerial' | 'detector' | 'in use' | 'middle';

/** What a tap is called: within a sentence, and at the head of a line. */
export const tapNames: Record<TapName, { readonly name: string; readonly title: string }> = {
  aerial: { name: 'aerial', title: 'Aerial' },
  detector: { name: 'detector', title: 'Detector' },
  'in use': { name: 'end of the turns in use', title: 'End of the turns in use' },
  middle: { name: 'middle', title: 'Middle' },
};

export const turnsText = (turns: number): string => formatNumber(turns, 4);

interface Tapped {
  readonly name: TapName;
  readonly turn: number;
}

/** "tap 11, aerial". */
export const tapLabel = ({ name, turn }: Tapped): string => `tap ${turnsText(turn)}, ${tapNames[name].name}`;

export const coilSheetWords = {
  title: (name: string): string => `Coil “${printable(name)}”`,
  description: ({ name, turns }: { readonly name: string; readonly turns: number }): string =>
    `How to wind the coil “${printable(name)}” of ${turnsText(turns)} turns.`,
  columns: {
    what: 'What',
    coil: 'This coil',
    tap: 'Tap',
    afterTurn: 'After turn',
    wireFromStart: 'Wire from the start',
    figure: 'Figure',
    expected: 'Expected',
    measured: 'Measured',
  },
  rows: {
    former: 'Former',
    tube: 'Length of the tube',
    cheeks: 'Cheeks',
    wire: 'Wire',
    otherWire: 'Other wire',
    turns: 'Turns',
    winding: 'Winding',
    wireToCut: 'Wire to cut',
    inductance: 'Inductance',
    qAt: (frequency: number): string => `Q at ${formatNumber(frequency / 1e3, 4)} kHz`,
    q: 'Q (the higher, the less loss)',
    selfCapacitance: 'Self-capacitance',
    resistance: 'Direct-current resistance, start to end',
    range: 'Range in this set',
    rangeOnBand: (band: string): string => `Range on “${printable(band)}”`,
    taps: 'Taps',
  },
  headings: {
    taps: 'Taps, counted from the start',
    winding: 'How to wind it',
    checks: 'What to expect, and how to check it',
    template: 'Template, full size',
    templates: 'Templates, full size',
  },
  turns: (turns: number): string => `${turnsText(turns)}, all wound in the same direction`,
  tube: ({ tube, winding, spare }: { readonly tube: number; readonly winding: number; readonly spare: number }) =>
    `${mm(tube)}: ${mm(winding)} for the winding, ${mm(spare)} spare at either end`,
  cheeks: (sizes: { readonly thickness: number; readonly across: number; readonly hole: number }) =>
    `2 rings of stiff card or thin plywood, ${mm(sizes.thickness)} thick, ${mm(sizes.across)} across, with a hole of ${mm(sizes.hole)}: templates below`,
  /** The place of a tap, by what it is measured from. */
  places: {
    fromFirstTurn: 'From the first turn',
    layer: 'Layer, turn in it',
    height: 'Height there',
    diameter: 'Diameter there',
    counted: 'Counted only',
    inLayer: ({ layer, turn }: { readonly layer: number; readonly turn: number }): string =>
      `layer ${layer}, turn ${turnsText(turn)}`,
  },
};

/** What each shape is wound on. */
export const formerText = {
  tube: ({ former, diameter }: { readonly former: FormerMaterial; readonly diameter: number }): string =>
    `A tube of ${formerNames[former]}, ${mm(diameter)} outside. Any tube within 1 mm of this will do; a wider one needs fewer turns.`,
  dampTube: ({ former, diameter }: { readonly former: FormerMaterial; readonly diameter: number }): string =>
    `A tube of ${formerNames[former]}, ${mm(diameter)} outside. Any tube within 1 mm of this will do; a wider one needs fewer turns. Dry it, and varnish it before and after winding.`,
  airTube: ({ diameter }: { readonly diameter: number }): string =>
    `A tube of any dry insulator, ${mm(diameter)} outside, drawn out when the turns hold together, or thin ribs in its place. Any tube within 1 mm of this will do; a wider one needs fewer turns.`,
  flat: ({ former, inner }: { readonly former: FormerMaterial; readonly inner: number }): string =>
    `A flat sheet of ${formerNames[former]}; the first turn is ${mm(inner)} across.`,
  airFlat: ({ inner }: { readonly inner: number }): string =>
    `A flat sheet of any dry insulator, taken away when the turns hold together, or thin ribs in its place; the first turn is ${mm(inner)} across.`,
  spider: (disc: {
    readonly former: FormerMaterial;
    readonly thickness: number;
    readonly slots: number;
    readonly hub: number;
  }): string =>
    `A disc of ${formerNames[disc.former]}, ${mm(disc.thickness)} thick, with ${disc.slots} slots around a hub of ${mm(disc.hub)}: template below.`,
  basket: ({ pegs, peg, circle }: { readonly pegs: number; readonly peg: number; readonly circle: number }): string =>
    `${pegs} pegs of ${mm(peg)} on a circle of ${mm(circle)}, drawn out after winding: template below.`,
  core: ({
    form,
    perTurnSquared,
  }: {
    readonly form: Extract<CoilDescription, { shape: 'core' }>['form'];
    readonly perTurnSquared: number;
  }): string =>
    form === 'toroid'
      ? `A toroid of ${formatQuantity(perTurnSquared, 'inductance')} for one turn (its A_L).`
      : `A pot core of ${formatQuantity(perTurnSquared, 'inductance')} for one turn (its A_L).`,
};

interface Spaced {
  readonly pitch: number;
  readonly gap: number;
  readonly length: number;
}
interface Layers {
  readonly layers: number;
  readonly turnsPerLayer: number;
  readonly length: number;
  readonly outer: number;
}

/** How the turns of each shape lie. */
export const windingText = {
  closeLayer: ({ length }: { readonly length: number }): string =>
    `One layer, each turn touching the last: ${mm(length)} long in all.`,
  spacedLayer: ({ pitch, gap, length }: Spaced): string =>
    `One layer, ${mm(pitch)} from turn to turn, with a gap of ${mm(gap)}: ${mm(length)} long in all.`,
  layers: ({ layers, turnsPerLayer, length, outer }: Layers): string =>
    `${counted(layers, 'layer', 'layers')} of ${counted(turnsPerLayer, 'turn', 'turns')}, wound to and fro, ${mm(length)} long between the cheeks; about ${mm(outer)} outside.`,
  spacedLayers: ({ layers, turnsPerLayer, length, outer, apart }: Layers & { readonly apart: number }): string =>
    `${counted(layers, 'layer', 'layers')} of ${counted(turnsPerLayer, 'turn', 'turns')}, wound to and fro, ${mm(length)} long between the cheeks, the layers ${mm(apart)} apart; about ${mm(outer)} outside.`,
  banks: ({ banks, length, outer }: { readonly banks: number; readonly length: number; readonly outer: number }) =>
    `${banks} banks, piled up turn by turn as the winding goes along: ${mm(length)} long, about ${mm(outer)} outside.`,
  closeSpiral: ({ outer }: { readonly outer: number }): string =>
    `Outward in one plane, each turn touching the last; about ${mm(outer)} outside.`,
  spacedSpiral: ({ pitch, outer }: { readonly pitch: number; readonly outer: number }): string =>
    `Outward in one plane, ${mm(pitch)} from turn to turn; about ${mm(outer)} outside.`,
  spider: ({ over, outer }: { readonly over: number; readonly outer: number }): string =>
    over === 2
      ? `In at one slot and out at the next but one (two vanes at a time); about ${mm(outer)} outside.`
      : `In at one slot and out at the next; about ${mm(outer)} outside.`,
  basket: ({ over, height }: { readonly over: number; readonly height: number }): string =>
    `Inside ${counted(over, 'peg', 'pegs')}, outside the next ${over}, and so on; about ${mm(height)} high.`,
  core: 'Spread around the core, leaving a gap between the two ends.',
};

/** Resistance of a good winding as an ordinary meter shows it, Ω. */
export interface MeteredWinding {
  readonly value: number;
  readonly low: number;
  readonly high: number;
  /** Of the meter: within these figures, or to be subtracted from what it shows. */
  readonly leads: 'within' | 'subtracted';
}

/** What a coil should measure. */
export const coilFigures = {
  inductance: ({ value, low, high }: { readonly value: number; readonly low: number; readonly high: number }) =>
    `${formatQuantity(value, 'inductance')} ${spanBeside(value, [low, high], 'inductance')}, as wound by hand`,
  q: ({ value, low, high }: { readonly value: number; readonly low: number; readonly high: number }): string =>
    `about ${formatNumber(value, 2)} (${numberSpan([low, high])}); the higher the Q, the sharper the tuning and the louder the set`,
  selfCapacitance: (capacitance: number): string =>
    `${formatQuantity(capacitance, 'capacitance', 2)}, between the turns; it adds to the tuning capacitor`,
  resistance: ({ value, low, high, leads }: MeteredWinding): string =>
    `${ohms(value)} ${ohmsBeside(value, [low, high])} by an ordinary meter, ${leads === 'within' ? 'its leads included' : 'with the reading of its leads touched together subtracted'}; more: a bad joint or wire; less: turns short-circuited or too few`,
  range: bandSpan,
  measuredQ: ({ q, at }: { readonly q: number; readonly at: number }): string =>
    `${formatNumber(q, 3)} at ${formatNumber(at / 1e3, 4)} kHz`,
  measuredTap: ({ name, turn, turns }: Tapped & { readonly turns: number }): string =>
    `${tapNames[name].name} at ${turnsText(turn)} of ${turnsText(turns)} turns from the earthed end`,
};

interface InSet {
  readonly station: string;
  readonly frequency: number;
  /** As the dial sheet prints it. */
  readonly reading: string;
  /** By which one turn moves the station, Hz. */
  readonly perTurn: number;
}
/** How the tuning stands at a low reading. */
export type OpenSide = 'vanes' | 'sheet' | 'tube' | 'leaves';
const OPEN: Record<OpenSide, string> = {
  vanes: 'the vanes further out',
  sheet: 'the sheet drawn further out',
  tube: 'the tube drawn further out',
  leaves: 'the leaves further open',
};

/** What is expected, and between what it is right. */
interface Ranged {
  readonly value: number;
  readonly low: number;
  readonly high: number;
}
const NOT_AS_CALCULATED = 'Outside of that the wire or the spacing is not what was calculated with.';

/** What is checked before a coil goes into the set, and in it. */
export const coilChecks = {
  count: 'Count the turns again under a lens, ten at a time.',
  across: ({ value, low, high }: Ranged): string =>
    `Measure the winding: ${mm(value)} ${spanBeside(value, [low, high], 'length')} outside. ${NOT_AS_CALCULATED}`,
  along: ({ value, low, high }: Ranged): string =>
    `Measure the winding: ${mm(value)} ${spanBeside(value, [low, high], 'length')} long. ${NOT_AS_CALCULATED}`,
  ohms: 'With a meter on ohms: start to end conducts; no part of the coil conducts to the mounting screws.',
  ohmsTapped:
    'With a meter on ohms: start to end conducts, and so does every tap to either end; no part of the coil conducts to the mounting screws.',
  inSet: (open: OpenSide, { station, frequency, reading, perTurn }: InSet): string =>
    `In the set, ${printable(station)} (${kHz(frequency)} kHz) should come in near ${reading} on the dial. At a lower reading (${OPEN[open]}) the coil is too large: take off a turn. At a higher reading it is too small. One turn moves the station by about ${formatNumber(perTurn / 1e3, 2)} kHz.`,
  inSetBySlider: ({ station, frequency, reading, perTurn }: InSet): string =>
    `In the set, ${printable(station)} (${kHz(frequency)} kHz) should come in near ${reading} on the dial. If it comes in far from there, count the turns. One turn moves the station by about ${formatNumber(perTurn / 1e3, 2)} kHz.`,
  onBand: (band: string, check: string): string => `With the band switch on “${printable(band)}”: ${check}`,
  compare: (f: {
    readonly across: number;
    readonly tunesTo: number;
    readonly tooLarge: number;
    readonly tooSmall: number;
  }): string =>
    `Compare it with a coil of known inductance, with the same capacitor across each in turn: the one with more inductance tunes lower, and four times the inductance tunes to half the frequency. With ${formatQuantity(f.across, 'capacitance')} across it this coil should tune to ${formatQuantity(f.tunesTo, 'frequency')}; at ${formatQuantity(f.tooLarge, 'frequency')} its inductance is 10 % too large, at ${formatQuantity(f.tooSmall, 'frequency')} 10 % too small.`,
};

export const measuredCoilWords = {
  nothingToWind: 'You have this coil already and its figures are measured; there is nothing to wind.',
  ohms: 'With a meter on ohms: the two ends conduct, and so does every tap to either end.',
  earthedEnd: 'Find the end that is to be earthed: the one from which the taps are counted. Mark it “start”.',
};

export const tallyText = {
  everyTurn: 'Tally: tick a box for every turn',
  everyTen: 'Tally: tick a box for every ten turns',
  tap: (turn: number): string => `tap ${turnsText(turn)}`,
};
