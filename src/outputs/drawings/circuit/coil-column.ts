import { identitiesOf } from '../../../engine/built/identity.ts';
import { coilInCircuit } from '../../../engine/kinds/arrangements/coil-sections.ts';
import type { CoilDescription } from '../../../engine/kinds/coils/coil-schema.ts';
import { EARTH } from '../../../engine/network/elements.ts';
import { type ElementId, owned, type PartId } from '../../../engine/network/ids.ts';
import { coilPart } from '../../../engine/network/part-ids.ts';
import type { SetDescription } from '../../../engine/set/description.ts';
import { partName, type SymbolLabel, symbolNames } from '../../words/index.ts';
import { turnsOf } from '../coil/coil.ts';
import { about, NO_LABEL } from './about.ts';
import type { DiagramSheet } from './diagram.ts';
import { type Levels, LINE } from './ends.ts';

interface FoundCoil {
  readonly description: CoilDescription;
  readonly part: PartId;
  readonly turns: number;
}

export function coilOf(set: SetDescription, name: string): FoundCoil {
  const index = set.coils.findIndex((c) => c.name === name);
  if (index < 0) throw new RangeError(`no coil "${name}"`);
  const description = set.coils[index];
  return { description, part: coilPart(index), turns: turnsOf(description) };
}

/** The element that an untapped coil is. */
export const windingId = ({ part, turns }: FoundCoil): ElementId => owned(part, 'winding', { turns: [0, turns] }).id;

export interface ColumnStretch {
  readonly id: ElementId;
  readonly top: string;
  readonly bottom: string;
  readonly from: number;
  readonly to: number;
}

/** The stretches between taps from the last turn down, with the circuit's own names of nodes. */
export function stretchesOf(
  id: PartId,
  turns: number,
  taps: readonly number[],
  ends: { first: string; last: string; prefix?: string },
  rename: (node: string) => string = (n) => n,
): { stretches: ColumnStretch[]; nodeAt: (turn: number) => string } {
  const nothing = () => 0;
  const wound = coilInCircuit(
    {
      id,
      turns,
      inductance: 1,
      selfCapacitance: 0,
      resistanceAt: nothing,
      partial: nothing,
      mutual: nothing,
      wireShare: nothing,
    },
    taps,
    ends,
  );
  const stretches = wound.sections
    .map((s) => ({ ...s, top: rename(wound.nodeAt(s.to)), bottom: rename(wound.nodeAt(s.from)) }))
    .toReversed();
  return { stretches, nodeAt: (turn) => rename(wound.nodeAt(turn)) };
}

interface CoilColumn {
  /** Level of a tap; of an end when it lies there. */
  readonly levelAt: (turn: number) => number;
  readonly bottom: number;
}

/** Px of lead between the line and a coil's top, and under its foot. */
export const LEAD = 16;
export const arches = (stretches: number): number => (stretches === 1 ? 5 : stretches === 2 ? 4 : 3);
export const heightOf = (stretches: number): number => stretches * arches(stretches) * 12 + 2 * LEAD;

/** "main", "main, turns 0–11". */
function stretchName(set: SetDescription, part: PartId, stretch: ColumnStretch | undefined): string {
  const name = partName(identitiesOf(set).get(part)!);
  return stretch ? symbolNames.stretch({ name, from: stretch.from, to: stretch.to }) : name;
}

/** A coil from the line down, with its words over it. */
export function drawCoilColumn(
  sheet: DiagramSheet,
  x: number,
  top: number,
  stretches: readonly ColumnStretch[],
  coil: {
    set: SetDescription;
    part: PartId;
    label: SymbolLabel;
    mirrored?: boolean;
    /** Level that the words stay over. */
    wordsOver?: number;
  },
): CoilColumn {
  const n = arches(stretches.length);
  const levels = new Map<number, number>();
  let y = top + LEAD;
  sheet.wire(stretches[0].top, [x, top], [x, y]);
  levels.set(stretches[0].to, top);
  stretches.forEach((s, i) => {
    const end = y + n * 12;
    sheet.shunt(
      'inductor',
      about(coil.set, coil.part, i === 0 ? coil.label : NO_LABEL, {
        id: s.id,
        name: stretchName(coil.set, coil.part, stretches.length > 1 ? s : undefined),
      }),
      x,
      [y, end],
      [s.top, s.bottom],
      {
        wordsAt: i === 0 ? [x, (coil.wordsOver ?? top) - 10 - 14 * (coil.label.lines.length - 1)] : undefined,
        arches: n,
        mirrored: coil.mirrored,
      },
    );
    y = end;
    levels.set(s.from, i === stretches.length - 1 ? y + LEAD : y);
  });
  const foot = stretches[stretches.length - 1].bottom;
  sheet.wire(foot, [x, y], [x, y + LEAD]);
  const ordered = [...levels.keys()];
  return {
    bottom: y + LEAD,
    levelAt: (turn) => {
      const nearest = ordered.reduce((best, t) => (Math.abs(t - turn) < Math.abs(best - turn) ? t : best));
      return levels.get(nearest)!;
    },
  };
}

/** From the foot of the aerial's coil to the rail. */
export const toRail = (sheet: DiagramSheet, x: number, from: number, levels: Levels, node: string): void =>
  sheet.wire(node, [x, from], [x, levels.rail]);

/** Where the detector joins the coil, and the coil's ends, as the circuit has them. */
export function endsOf(set: SetDescription, turns: number, detectorTap: number | undefined) {
  const full = set.detector.wiring === 'full-wave';
  return {
    first: full ? 'bottom' : EARTH,
    middle: full ? turns / 2 : undefined,
    detectorTurn: full ? turns : (detectorTap ?? turns),
  };
}

const middleName = (turns: number): string => `turn ${Number((turns / 2).toFixed(3))}`;
export const renameMiddle =
  (middle: number | undefined, turns: number) =>
  (node: string): string =>
    middle !== undefined && node === middleName(turns) ? EARTH : node;

/** High enough for the coil, and for what stands beside it. */
export const railFor = (stretches: number, split: boolean, extra = 0): number =>
  LINE + Math.max(148, heightOf(stretches) + (split ? 34 : 0), extra);
