import type { Element, Mutual } from '../../network/elements.ts';
import type { Farads, Henries, Hertz, Ohms } from '../../units/quantities.ts';

/** What an arrangement needs of a coil; turns are counted from its earthed end. */
export interface SectionedCoil {
  readonly name: string;
  readonly turns: number;
  readonly inductance: Henries;
  readonly selfCapacitance: Farads;
  /** Series resistance of the whole. */
  readonly resistanceAt: (frequency: Hertz) => Ohms;
  /** Inductance of the turns between two counts. */
  readonly partial: (fromTurn: number, toTurn: number) => Henries;
  /** Mutual inductance of two stretches of turns that do not overlap. */
  readonly mutual: (first: readonly [number, number], second: readonly [number, number]) => Henries;
  /** Share of the wire between two counts. */
  readonly wireShare: (fromTurn: number, toTurn: number) => number;
}

export interface CoilInCircuit {
  readonly elements: readonly Element[];
  /** Names of the inductors, from the first turn on, with their stretches of turns. */
  readonly sections: readonly { readonly name: string; readonly from: number; readonly to: number }[];
  readonly nodeAt: (turn: number) => string;
}

/** Taps closer than this are one tap: no wire can be told so finely. */
const SAME_TURN = 0.02;

/**
 * A coil with taps as an autotransformer: one inductor for each stretch between taps, every pair coupled, so that the
 * parts and mutuals add up to the whole. Its self-capacitance lies across the whole.
 * @param ends node of turn 0 and node of the last turn.
 */
export function coilInCircuit(
  coil: SectionedCoil,
  taps: readonly number[],
  ends: { readonly first: string; readonly last: string; readonly prefix?: string; readonly part?: string },
): CoilInCircuit {
  const N = coil.turns;
  const marks = [0];
  for (const tap of [...taps].sort((a, b) => a - b)) {
    if (tap - marks[marks.length - 1] > SAME_TURN && N - tap > SAME_TURN) marks.push(tap);
  }
  marks.push(N);
  const nodeAt = (turn: number): string => {
    const mark = marks.reduce((best, m) => (Math.abs(m - turn) < Math.abs(best - turn) ? m : best));
    return mark === 0 ? ends.first : mark === N ? ends.last : `${ends.prefix ?? ''}turn ${Number(mark.toFixed(3))}`;
  };
  const sections = marks.slice(1).map((to, i) => ({
    name:
      marks.length === 2 ? coil.name : `${coil.name}, turns ${Number(marks[i].toFixed(3))}–${Number(to.toFixed(3))}`,
    from: marks[i],
    to,
  }));
  const elements: Element[] = sections.map(({ name, from, to }) => {
    const share = coil.wireShare(from, to);
    return {
      kind: 'inductor',
      name,
      from: nodeAt(to),
      to: nodeAt(from),
      part: ends.part,
      inductance: sections.length === 1 ? coil.inductance : coil.partial(from, to),
      resistance: (f) => share * coil.resistanceAt(f),
    };
  });
  for (let i = 0; i < sections.length; i++) {
    for (let j = i + 1; j < sections.length; j++) {
      const [a, b] = [sections[i], sections[j]];
      const m: Mutual = {
        kind: 'mutual',
        name: `${a.name} with ${b.name}`,
        first: a.name,
        second: b.name,
        mutual: coil.mutual([a.from, a.to], [b.from, b.to]),
      };
      elements.push(m);
    }
  }
  if (coil.selfCapacitance > 0) {
    elements.push({
      kind: 'capacitor',
      name: `${coil.name}’s own capacitance`,
      from: ends.last,
      to: ends.first,
      capacitance: coil.selfCapacitance,
      part: ends.part,
    });
  }
  return { elements, sections, nodeAt };
}

/** Couple every section of one coil with every section of another by a function of their stretches. */
export function coupleCoils(
  first: CoilInCircuit,
  second: CoilInCircuit,
  mutual: (a: readonly [number, number], b: readonly [number, number]) => Henries,
): Mutual[] {
  return first.sections.flatMap((a) =>
    second.sections.map(
      (b): Mutual => ({
        kind: 'mutual',
        name: `${a.name} with ${b.name}`,
        first: a.name,
        second: b.name,
        mutual: mutual([a.from, a.to], [b.from, b.to]),
      }),
    ),
  );
}
