import type { Element, Mutual } from '../../network/elements.ts';
import { type ElementId, elementId, type Owner, owned, type PartId, turnsInId } from '../../network/ids.ts';
import type { Farads, Henries, Hertz, Ohms } from '../../units/quantities.ts';

/** Between two counts of turns. */
export type Stretch = readonly [from: number, to: number];

/** What an arrangement needs of a coil; turns are counted from its earthed end. */
export interface SectionedCoil {
  readonly id: PartId;
  readonly turns: number;
  readonly inductance: Henries;
  readonly selfCapacitance: Farads;
  /** Series resistance of the whole. */
  readonly resistanceAt: (frequency: Hertz) => Ohms;
  /** Inductance of the turns between two counts. */
  readonly partial: (fromTurn: number, toTurn: number) => Henries;
  /** Mutual inductance of two stretches of turns that do not overlap. */
  readonly mutual: (first: Stretch, second: Stretch) => Henries;
  /** Share of the wire between two counts. */
  readonly wireShare: (fromTurn: number, toTurn: number) => number;
}

export interface CoilInCircuit {
  readonly elements: readonly Element[];
  /** The inductors from the first turn on, with their stretches of turns. */
  readonly sections: readonly {
    readonly id: ElementId;
    readonly owner: Owner;
    readonly from: number;
    readonly to: number;
  }[];
  readonly nodeAt: (turn: number) => string;
}

/** Taps closer than this are one tap: no wire can be told so finely. */
export const SAME_TURN = 0.02;

/**
 * A coil with taps as an autotransformer: one inductor for each stretch between taps, every pair coupled, so that the
 * parts and mutuals add up to the whole. Its self-capacitance lies across the whole.
 * @param ends node of turn 0 and node of the last turn.
 */
export function coilInCircuit(
  coil: SectionedCoil,
  taps: readonly number[],
  ends: { readonly first: string; readonly last: string; readonly prefix?: string },
): CoilInCircuit {
  const N = coil.turns;
  const marks = [0];
  for (const tap of [...taps].sort((a, b) => a - b)) {
    if (tap - marks[marks.length - 1] > SAME_TURN && N - tap > SAME_TURN) marks.push(tap);
  }
  marks.push(N);
  const nodeAt = (turn: number): string => {
    const mark = marks.reduce((best, m) => (Math.abs(m - turn) < Math.abs(best - turn) ? m : best));
    return mark === 0 ? ends.first : mark === N ? ends.last : `${ends.prefix ?? ''}turn ${turnsInId(mark)}`;
  };
  const sections = marks.slice(1).map((to, i) => ({
    ...owned(coil.id, 'winding', { turns: [marks[i], to] }),
    from: marks[i],
    to,
  }));
  const elements: Element[] = sections.map(({ id, owner, from, to }) => {
    const share = coil.wireShare(from, to);
    return {
      kind: 'inductor',
      id,
      owner,
      from: nodeAt(to),
      to: nodeAt(from),
      inductance: sections.length === 1 ? coil.inductance : coil.partial(from, to),
      resistance: (f) => share * coil.resistanceAt(f),
    };
  });
  for (let i = 0; i < sections.length; i++) {
    for (let j = i + 1; j < sections.length; j++) {
      const [a, b] = [sections[i], sections[j]];
      const m: Mutual = {
        kind: 'mutual',
        id: mutualId(a.id, b.id),
        first: a.id,
        second: b.id,
        mutual: coil.mutual([a.from, a.to], [b.from, b.to]),
      };
      elements.push(m);
    }
  }
  if (coil.selfCapacitance > 0) {
    elements.push({
      kind: 'capacitor',
      ...owned(coil.id, 'self-capacitance'),
      from: ends.last,
      to: ends.first,
      capacitance: coil.selfCapacitance,
    });
  }
  return { elements, sections, nodeAt };
}

/** The same coil with one of its nodes, where it has it, joined to another. */
export function withNodeJoined(coil: CoilInCircuit, node: string, to: string): CoilInCircuit {
  const renamed = (name: string): string => (name === node ? to : name);
  return {
    ...coil,
    elements: coil.elements.map((e) => (e.kind === 'mutual' ? e : { ...e, from: renamed(e.from), to: renamed(e.to) })),
    nodeAt: (turn) => renamed(coil.nodeAt(turn)),
  };
}

export const mutualId = (first: ElementId, second: ElementId): ElementId => elementId(`${first} with ${second}`);

/** Couple every section of one coil with every section of another by a function of their stretches. */
export function coupleCoils(
  first: CoilInCircuit,
  second: CoilInCircuit,
  mutual: (a: Stretch, b: Stretch) => Henries,
): Mutual[] {
  return first.sections.flatMap((a) =>
    second.sections.map(
      (b): Mutual => ({
        kind: 'mutual',
        id: mutualId(a.id, b.id),
        first: a.id,
        second: b.id,
        mutual: mutual([a.from, a.to], [b.from, b.to]),
      }),
    ),
  );
}
