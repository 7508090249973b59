import { type Circuit, EARTH, type Element, type Mutual, valueAt } from '../../network/elements.ts';
import type { ElementId } from '../../network/ids.ts';
import type { Port } from '../../network/port.ts';
import type { Complex } from '../../numerics/complex.ts';
import type { Hertz } from '../../units/quantities.ts';

export type Branch = Exclude<Element, Mutual>;

/** Below this a resistor is as good as a lead, whose great admittance would drown what hangs on it in rounding, Ω. */
const LEAD = 1;
const isLead = (e: Element): boolean =>
  e.kind === 'resistor' && typeof e.resistance === 'number' && e.resistance < LEAD;

/** Stands in for a coil with no loss at all, so that a constant current has one answer, Ω. */
const SMALLEST_RESISTANCE = 1e-9;
/** Insulation of every node at frequency 0, where capacitors may leave it hanging, S: a million megohms. */
const INSULATION = 1e-12;

/**
 * The equations of a circuit by modified nodal analysis, numbered once: node voltages first, then the currents of coupled
 * inductors, sources, cells and leads; everything else is an admittance. -1 stands for earth and for no current.
 */
export interface Equations {
  readonly elements: readonly Branch[];
  readonly nodes: ReadonlyMap<string, number>;
  /** Unknowns at the ends of each element, of each port, and the current of each element. */
  readonly from: Int32Array;
  readonly to: Int32Array;
  readonly currents: Int32Array;
  readonly ports: readonly (readonly [from: number, to: number])[];
  readonly couplings: readonly (readonly [first: number, second: number, mutual: number])[];
  readonly nodeCount: number;
  readonly size: number;
  /** Filled for each frequency: re and im alternately, row by row. */
  readonly matrix: Float64Array;
  /** Right sides: the circuit's own sources, then 1 A into each port. */
  readonly right: Float64Array;
  readonly rightCount: number;
}

/** @throws RangeError for a coupling of something that is no inductor of the circuit. */
export function equationsOf(circuit: Circuit, ports: readonly Port[]): Equations {
  const elements = circuit.elements.filter((e): e is Branch => e.kind !== 'mutual');
  const mutuals = circuit.elements.filter((e): e is Mutual => e.kind === 'mutual');
  const nodes = new Map<string, number>([[EARTH, -1]]);
  const node = (name: string): number => {
    let index = nodes.get(name);
    if (index === undefined) nodes.set(name, (index = nodes.size - 1));
    return index;
  };
  const ends = elements.map((e) => [node(e.from), node(e.to)] as const);
  const portEnds = ports.map((p) => [node(p.from), node(p.to)] as const);
  const nodeCount = nodes.size - 1;
  const coupled = new Set<ElementId>(mutuals.flatMap((m) => [m.first, m.second]));
  const current = new Map<ElementId, number>();
  for (const e of elements) {
    if (e.kind === 'source' || e.kind === 'cell' || (e.kind === 'inductor' && coupled.has(e.id)) || isLead(e))
      current.set(e.id, nodeCount + current.size);
  }
  for (const m of mutuals) {
    for (const id of [m.first, m.second]) {
      if (elements.find((e) => e.id === id)?.kind !== 'inductor')
        throw new RangeError(`mutual "${m.id}" couples "${id}", which is not an inductor of the circuit`);
    }
  }
  const size = nodeCount + current.size;
  const rightCount = 1 + ports.length;
  return {
    elements,
    nodes,
    from: Int32Array.from(ends, ([from]) => from),
    to: Int32Array.from(ends, ([, to]) => to),
    currents: Int32Array.from(elements, (e) => current.get(e.id) ?? -1),
    ports: portEnds,
    couplings: mutuals.map((m) => [current.get(m.first)!, current.get(m.second)!, m.mutual] as const),
    nodeCount,
    size,
    matrix: new Float64Array(2 * size * size),
    right: new Float64Array(2 * size * rightCount),
    rightCount,
  };
}

/** Writes the equations of a frequency into `matrix` and `right`. */
export function fill(q: Equations, frequency: Hertz): void {
  const w = 2 * Math.PI * frequency;
  q.matrix.fill(0);
  q.right.fill(0);
  for (let i = 0; i < q.elements.length; i++) stampElement(q, i, frequency, w);
  if (frequency === 0) for (let i = 0; i < q.nodeCount; i++) stamp(q, i, i, INSULATION, 0);
  for (const [first, second, mutual] of q.couplings) {
    stamp(q, first, second, 0, -w * mutual);
    stamp(q, second, first, 0, -w * mutual);
  }
  for (let p = 0; p < q.ports.length; p++) {
    inject(q, q.ports[p][0], 1 + p, 1, 0);
    inject(q, q.ports[p][1], 1 + p, -1, 0);
  }
}

function stampElement(q: Equations, i: number, frequency: Hertz, w: number): void {
  const e = q.elements[i];
  const a = q.from[i];
  const b = q.to[i];
  const k = q.currents[i];
  switch (e.kind) {
    case 'resistor': {
      const R = Math.max(valueAt(e.resistance, frequency), SMALLEST_RESISTANCE);
      if (k < 0) admit(q, a, b, 1 / R, 0);
      else {
        link(q, a, b, k);
        stamp(q, k, k, -R, 0);
      }
      break;
    }
    case 'capacitor': {
      const y = w * e.capacitance;
      admit(q, a, b, y * valueAt(e.lossTangent ?? 0, frequency), y);
      break;
    }
    case 'inductor': {
      const R = Math.max(valueAt(e.resistance, frequency), SMALLEST_RESISTANCE);
      const X = w * e.inductance;
      if (k < 0) {
        const d = R * R + X * X;
        admit(q, a, b, R / d, -X / d);
      } else {
        link(q, a, b, k);
        stamp(q, k, k, -R, -X);
      }
      break;
    }
    case 'impedance': {
      const y = inverse(e.impedance(frequency));
      admit(q, a, b, y.re, y.im);
      break;
    }
    case 'source':
    case 'cell':
      link(q, b, a, k);
      if (e.kind === 'source' && frequency > 0) inject(q, k, 0, e.emf.re, e.emf.im);
      if (e.kind === 'cell' && frequency === 0) inject(q, k, 0, e.voltage, 0);
      break;
    case 'detector':
      break;
  }
}

function stamp({ matrix, size }: Equations, row: number, column: number, re: number, im: number): void {
  if (row < 0 || column < 0) return;
  const k = 2 * (row * size + column);
  matrix[k] += re;
  matrix[k + 1] += im;
}

function admit(q: Equations, a: number, b: number, re: number, im: number): void {
  stamp(q, a, a, re, im);
  stamp(q, b, b, re, im);
  stamp(q, a, b, -re, -im);
  stamp(q, b, a, -re, -im);
}

/** Current k flows from a to b; its row says v_a − v_b = … */
function link(q: Equations, a: number, b: number, k: number): void {
  stamp(q, a, k, 1, 0);
  stamp(q, b, k, -1, 0);
  stamp(q, k, a, 1, 0);
  stamp(q, k, b, -1, 0);
}

function inject({ right, rightCount }: Equations, row: number, column: number, re: number, im: number): void {
  if (row < 0) return;
  const k = 2 * (row * rightCount + column);
  right[k] += re;
  right[k + 1] += im;
}

/** Of an element without a current of its own among the unknowns, from `from` to `to`. */
export function admittanceOf(e: Branch, frequency: Hertz): Complex {
  const w = 2 * Math.PI * frequency;
  switch (e.kind) {
    case 'resistor':
      return { re: 1 / Math.max(valueAt(e.resistance, frequency), SMALLEST_RESISTANCE), im: 0 };
    case 'capacitor':
      return { re: w * e.capacitance * valueAt(e.lossTangent ?? 0, frequency), im: w * e.capacitance };
    case 'inductor':
      return inverse({ re: Math.max(valueAt(e.resistance, frequency), SMALLEST_RESISTANCE), im: w * e.inductance });
    case 'impedance':
      return inverse(e.impedance(frequency));
    default:
      return { re: 0, im: 0 };
  }
}

/** 1/z; of no impedance at all, that of the smallest resistance. */
function inverse(z: Complex): Complex {
  const d = z.re * z.re + z.im * z.im;
  return d > SMALLEST_RESISTANCE ** 2 ? { re: z.re / d, im: -z.im / d } : { re: 1 / SMALLEST_RESISTANCE, im: 0 };
}
