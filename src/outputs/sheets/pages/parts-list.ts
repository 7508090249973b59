import { bandContacts } from '../../../engine/built/band-contacts.ts';
import type { Part } from '../../../engine/built/built-set.ts';
import { isRecord } from '../../../engine/fields/introspect.ts';
import { type ByKind, byKind } from '../../../engine/kinds/by-kind.ts';
import type { CoilDescription } from '../../../engine/kinds/coils/coil-schema.ts';
import type { DetectorDescription } from '../../../engine/kinds/detectors/detector-schema.ts';
import { isLoop } from '../../../engine/kinds/loops.ts';
import { coilModel } from '../../../engine/kinds/models.ts';
import type { TuningDescription } from '../../../engine/kinds/tunings/tuning-schema.ts';
import type { Reception } from '../../../engine/reception/path/types.ts';
import type { SetDescription } from '../../../engine/set/description.ts';
import { sectionsOf } from '../../../engine/units/parse.ts';
import { tapsOf } from '../../drawings/coil/coil.ts';
import type { CoilOf, WoundDescription } from '../../drawings/coil/drawn.ts';
import { bandSwitchSheetWords, type PartRow, partRows, partTitle } from '../../words/index.ts';
import type { BoardLayout } from '../board/layout.ts';
import type { BoardPart, BoardParts, PartKind } from '../board/parts.ts';
import { contactOf } from './detector-steps.ts';
import { loopWire } from './loop-sheet.ts';
import { wireToCut } from './winding.ts';

/** What to get together before building: every part, what it must be, and what will serve instead. */
export function partsList(
  set: SetDescription,
  reception: Reception,
  { parts }: BoardParts,
  layout: BoardLayout,
  sections: WrittenSections = {},
): PartRow[] {
  const pins = countPins(parts);
  return [
    ...outdoorRows(set, reception, parts),
    ...set.coils.flatMap((coil, i) => coilRows(set, coil, i)),
    ...(set.arrangement.kind === 'slider' ? [partRows.slider()] : []),
    ...parts.flatMap((part) => KINDS[part.kind](part, set, sections)),
    ...switchRows(set, parts),
    partRows.load(set.load),
    partRows.hookUpWire({
      length: (1.2 * layout.lengths.reduce((a, b) => a + b, 0)) / 1e3,
      pieces: layout.wiring.lines.length,
    }),
    partRows.board(layout),
    partRows.terminals(countEnds(parts, HAS_POSTS)),
    ...(pins > 0 ? [partRows.pins(pins)] : []),
  ];
}

function switchRows(set: SetDescription, parts: readonly BoardPart[]): PartRow[] {
  const contacts = bandContacts(set);
  if (!contacts) return [];
  const { bands, standing, poles } = contacts;
  const isOnBoard = parts.some(({ kind }) => kind === 'switch');
  // Where the switch is on the board, so are the capacitors of other bands.
  const others = isOnBoard
    ? []
    : poles.flatMap(({ through = [] }) =>
        through.flatMap((between, way) =>
          between?.seriesCapacitor === undefined || way === standing
            ? []
            : [
                partRows.capacitor({
                  title: bandSwitchSheetWords.seriesCapacitorTitle(bands[way]),
                  capacitance: between.seriesCapacitor,
                  exact: true,
                }),
              ],
        ),
      );
  return [...others, partRows.bandSwitch({ poles: poles.length, ways: bands.length })];
}

/** What a capacitor is called: with the band where it belongs to one. */
function titleOnBand(part: Part, role: BoardPart['role'], band: string | undefined): string {
  if (band === undefined) return partTitle(part);
  return role === 'series-capacitor'
    ? bandSwitchSheetWords.seriesCapacitorTitle(band)
    : bandSwitchSheetWords.ofBand({ words: partTitle(part), band });
}

function outdoorRows({ aerial, earth }: SetDescription, reception: Reception, parts: readonly BoardPart[]): PartRow[] {
  if (!parts.some((p) => p.kind === 'aerial terminal')) return [];
  const { resistance } = reception.parts.earth;
  return [partRows.aerial(aerial), partRows.earth({ earth, resistance }), partRows.arrester()];
}

const tubeFormer = ({ name, former, formerDiameter }: CoilOf<'solenoid' | 'multilayer' | 'bank-wound'>): PartRow =>
  partRows.tube({ name, former, diameter: formerDiameter });
const otherFormer = ({ name, former }: CoilOf<'spiral' | 'spider' | 'basket'>): PartRow =>
  partRows.former({ name, former });

const FORMERS: ByKind<WoundDescription, PartRow> = {
  solenoid: tubeFormer,
  multilayer: tubeFormer,
  'bank-wound': tubeFormer,
  spiral: otherFormer,
  spider: otherFormer,
  basket: otherFormer,
  core: partRows.core,
};

function coilRows(set: SetDescription, coil: CoilDescription, index: number): PartRow[] {
  if (coil.shape === 'measured') return [partRows.measuredCoil(coil)];
  const model = coilModel(coil);
  const { name, wire } = coil;
  const length = Number.isFinite(model.wireLength) ? wireToCut(model, tapsOf(set, index).length) : undefined;
  return [partRows.coilWire({ name, wire, length }), byKind(FORMERS, coil)];
}

/** Equal sections in parallel, as a bought capacitor was written: "2 × 365 pF". */
export interface Sections {
  readonly count: number;
  readonly one: string;
}

/** How the capacitor that tunes, and the aerial's own, were written. */
export interface WrittenSections {
  readonly tuning?: Sections;
  readonly aerialTuning?: Sections;
}

const fieldOf = (value: unknown, ...keys: readonly string[]): unknown =>
  keys.reduce((at, key) => (isRecord(at) ? at[key] : undefined), value);

/** The sections that a description was written with. @param written as it was read */
export function writtenSections(written: unknown): WrittenSections {
  const of = (...keys: readonly string[]): Sections | undefined => {
    const maximum = fieldOf(written, ...keys, 'maximum');
    const sections = typeof maximum === 'string' ? sectionsOf(maximum) : undefined;
    return sections && sections.count > 1 ? sections : undefined;
  };
  return { tuning: of('tuning'), aerialTuning: of('arrangement', 'aerialTuning') };
}

const TUNINGS: ByKind<TuningDescription, PartRow, [BoardPart, Sections?]> = {
  variable: (tuning, part, sections) => partRows.variable(part, tuning, sections),
  measured: (_, part) => partRows.measuredVariable(part),
  vanes: (_, part) => partRows.homeMade(part, 'vanes'),
  foil: (_, part) => partRows.homeMade(part, 'foil'),
  tubes: (_, part) => partRows.homeMade(part, 'tubes'),
  book: (_, part) => partRows.homeMade(part, 'book'),
  fixed: ({ capacitance }, part) => partRows.fixedTuning(part, capacitance),
};

/** Of two detectors the first has the row for both. */
function detectorRows({ role }: BoardPart, { detector }: SetDescription): PartRow[] {
  if (role !== 'detector') return [];
  const count = detector.wiring === 'single' ? 1 : 2;
  return [partRows.detector(detector), ...detectorFittings(detector, count)];
}

function detectorFittings(detector: DetectorDescription, count: number): PartRow[] {
  if (detector.kind === 'valve') return [partRows.valveHolder(count), partRows.heaterSupply(detector.heaterVoltage)];
  return contactOf(detector) ? [partRows.detectorStand(count)] : [];
}

function loopRows({ tag }: BoardPart, set: SetDescription): PartRow[] {
  const { aerial } = set;
  if (!isLoop(aerial)) return [];
  const wire = { tag, wire: aerial.wire, length: loopWire(set) };
  return aerial.kind === 'frame'
    ? [partRows.frame({ tag, aerial }), partRows.frameWire(wire)]
    : [partRows.rod({ tag, aerial }), partRows.rodWire(wire)];
}

/** It has its rows above, or with another part. */
const elsewhere = (): PartRow[] => [];

/** The rows of each part of the board. */
const KINDS: Readonly<
  Record<PartKind, (part: BoardPart, set: SetDescription, sections: WrittenSections) => PartRow[]>
> = {
  'aerial terminal': elsewhere,
  'earth terminal': elsewhere,
  outputs: elsewhere,
  variable: (part, _, { tuning, aerialTuning }) =>
    part.tuning ? [byKind(TUNINGS, part.tuning, part, part.role === 'aerial-tuning' ? aerialTuning : tuning)] : [],
  switch: elsewhere,
  capacitor: ({ part, tag, role, values, band }) =>
    part && values?.kind === 'capacitor'
      ? [
          partRows.capacitor({
            title: titleOnBand(part, role, band),
            tag,
            capacitance: values.capacitance,
            exact: role === 'series-capacitor' || role === 'trap-capacitor',
          }),
        ]
      : [],
  resistor: ({ part, tag, values }) =>
    part && values?.kind === 'resistor'
      ? [partRows.resistor({ title: partTitle(part), tag, resistance: values.resistance })]
      : [],
  detector: detectorRows,
  cell: ({ tag }, { detector }) => [partRows.biasCell({ tag, voltage: detector.bias ?? 0 })],
  transformer: ({ tag }, { load: { transformer } }) =>
    transformer
      ? [partRows.transformer({ tag, ratio: transformer.ratio, primary: transformer.primaryInductance })]
      : [],
  loop: loopRows,
  coil: (part) => (part.coil ? [] : [partRows.listedCoil(part)]),
};

/** Parts that end in terminals of their own on the board. */
const HAS_POSTS = ({ kind, role }: BoardPart): boolean =>
  kind === 'aerial terminal' || kind === 'earth terminal' || kind === 'outputs' || role === 'frame';

/** Ends on a board that have no terminal of their own. */
const HAS_PINS = ({ kind }: BoardPart): boolean =>
  kind === 'capacitor' || kind === 'resistor' || kind === 'detector' || kind === 'coil';

/** How many pins the parts of a board need. */
export const countPins = (parts: readonly BoardPart[]): number => countEnds(parts, HAS_PINS);

const countEnds = (parts: readonly BoardPart[], which: (part: BoardPart) => boolean): number =>
  parts.filter(which).flatMap((p) => p.terminals).length;
