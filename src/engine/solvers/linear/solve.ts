import { type Circuit, EARTH, type Element, type Mutual, valueAt } from '../../network/elements.ts';
import type { ElementId } from '../../network/ids.ts';
import type { Port } from '../../network/port.ts';
import type { Complex } from '../../numerics/complex.ts';
import type { Hertz } from '../../units/quantities.ts';

/** The network as its ports see it at one frequency: V = open + Z·I, I flowing into each port's `from`. */
export interface PortView {
  readonly frequency: Hertz;
  /** Open-circuit voltage at each port from the circuit's own sources, peak. */
  readonly open: readonly Complex[];
  /** Open-circuit impedance matrix, Ω. Symmetric, since the elements are reciprocal. */
  readonly z: readonly (readonly Complex[])[];
}

export interface Solution {
  readonly frequency: Hertz;
  voltage(node: string): Complex;
  /** Current through an element from its `from` to its `to` node. @throws RangeError for one that is not there. */
  current(id: ElementId): Complex;
}

export interface LinearSolver {
  /** All node voltages with the circuit's own sources and nothing at the ports. */
  solve(frequency: Hertz): Solution;
  /** The network seen from the ports given when the solver was made. */
  look(frequency: Hertz): PortView;
}

/** Below this a resistor is as good as a lead, whose great admittance would drown what hangs on it in rounding, Ω. */
const LEAD = 1;
const isLead = (e: Element): boolean =>
  e.kind === 'resistor' && typeof e.resistance === 'number' && e.resistance < LEAD;

/** Stands in for a coil with no loss at all, so that a constant current has one answer, Ω. */
const SMALLEST_RESISTANCE = 1e-9;
/** Insulation of every node at frequency 0, where capacitors may leave it hanging, S: a million megohms. */
const INSULATION = 1e-12;

/**
 * Modified nodal analysis of any list of elements. Made once for a circuit; each frequency costs one factorisation.
 * At frequency 0 capacitors are open and inductors are their resistance; cells drive only there, sources only above.
 * @throws RangeError when an element or mutual names something that is not there, or the equations have no solution.
 */
export function linearSolver(circuit: Circuit, ports: readonly Port[] = []): LinearSolver {
  const elements = circuit.elements.filter((e): e is Exclude<Element, Mutual> => e.kind !== 'mutual');
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
  // Coupled inductors, sources, cells and leads carry their current as an unknown; everything else is an admittance.
  const coupled = new Set<ElementId>(mutuals.flatMap((m) => [m.first, m.second]));
  const branch = new Map<ElementId, number>();
  for (const e of elements) {
    if (e.kind === 'source' || e.kind === 'cell' || (e.kind === 'inductor' && coupled.has(e.id)) || isLead(e))
      branch.set(e.id, nodeCount + branch.size);
  }
  for (const m of mutuals) {
    for (const id of [m.first, m.second]) {
      if (elements.find((e) => e.id === id)?.kind !== 'inductor')
        throw new RangeError(`mutual "${m.id}" couples "${id}", which is not an inductor of the circuit`);
    }
  }
  const branches = elements.map((e) => branch.get(e.id) ?? -1);
  const couplings = mutuals.map((m) => [branch.get(m.first)!, branch.get(m.second)!, m.mutual] as const);
  const n = nodeCount + branch.size;
  const matrix = new Float64Array(2 * n * n);
  const rightCount = 1 + ports.length;
  const right = new Float64Array(2 * n * rightCount);

  const stamp = (row: number, column: number, re: number, im: number): void => {
    if (row < 0 || column < 0) return;
    const k = 2 * (row * n + column);
    matrix[k] += re;
    matrix[k + 1] += im;
  };
  const admit = (a: number, b: number, re: number, im: number): void => {
    stamp(a, a, re, im);
    stamp(b, b, re, im);
    stamp(a, b, -re, -im);
    stamp(b, a, -re, -im);
  };
  const inject = (row: number, column: number, re: number, im: number): void => {
    if (row < 0) return;
    const k = 2 * (row * rightCount + column);
    right[k] += re;
    right[k + 1] += im;
  };

  function build(frequency: Hertz): void {
    const w = 2 * Math.PI * frequency;
    matrix.fill(0);
    right.fill(0);
    for (let i = 0; i < elements.length; i++) {
      const e = elements[i];
      const a = ends[i][0];
      const b = ends[i][1];
      const k = branches[i];
      switch (e.kind) {
        case 'resistor': {
          const R = Math.max(valueAt(e.resistance, frequency), SMALLEST_RESISTANCE);
          if (k < 0) admit(a, b, 1 / R, 0);
          else {
            link(a, b, k);
            stamp(k, k, -R, 0);
          }
          break;
        }
        case 'capacitor': {
          const y = w * e.capacitance;
          admit(a, b, y * valueAt(e.lossTangent ?? 0, frequency), y);
          break;
        }
        case 'inductor': {
          const R = Math.max(valueAt(e.resistance, frequency), SMALLEST_RESISTANCE);
          const X = w * e.inductance;
          if (k < 0) {
            const d = R * R + X * X;
            admit(a, b, R / d, -X / d);
          } else {
            link(a, b, k);
            stamp(k, k, -R, -X);
          }
          break;
        }
        case 'impedance': {
          const y = inverse(e.impedance(frequency));
          admit(a, b, y.re, y.im);
          break;
        }
        case 'source':
        case 'cell':
          link(b, a, k);
          if (e.kind === 'source' && frequency > 0) inject(k, 0, e.emf.re, e.emf.im);
          if (e.kind === 'cell' && frequency === 0) inject(k, 0, e.voltage, 0);
          break;
        case 'detector':
          break;
      }
    }
    if (frequency === 0) for (let i = 0; i < nodeCount; i++) stamp(i, i, INSULATION, 0);
    for (const [first, second, mutual] of couplings) {
      stamp(first, second, 0, -w * mutual);
      stamp(second, first, 0, -w * mutual);
    }
    for (let p = 0; p < portEnds.length; p++) {
      inject(portEnds[p][0], 1 + p, 1, 0);
      inject(portEnds[p][1], 1 + p, -1, 0);
    }
  }
  /** Branch current k flows from a to b; its row says v_a − v_b = … */
  function link(a: number, b: number, k: number): void {
    stamp(a, k, 1, 0);
    stamp(b, k, -1, 0);
    stamp(k, a, 1, 0);
    stamp(k, b, -1, 0);
  }

  const at = (index: number, column: number): Complex =>
    index < 0
      ? { re: 0, im: 0 }
      : { re: right[2 * (index * rightCount + column)], im: right[2 * (index * rightCount + column) + 1] };

  return {
    solve(frequency) {
      build(frequency);
      eliminate(matrix, right, n, rightCount, nodeCount);
      const w = 2 * Math.PI * frequency;
      const values = Array.from({ length: n }, (_, i) => at(i, 0));
      const across = (i: number): Complex => {
        const [a, b] = ends[i];
        const va = a < 0 ? { re: 0, im: 0 } : values[a];
        const vb = b < 0 ? { re: 0, im: 0 } : values[b];
        return { re: va.re - vb.re, im: va.im - vb.im };
      };
      return {
        frequency,
        voltage(name) {
          const index = nodes.get(name);
          if (index === undefined) throw new RangeError(`no node "${name}" in the circuit`);
          return index < 0 ? { re: 0, im: 0 } : values[index];
        },
        current(id) {
          const i = elements.findIndex((e) => e.id === id);
          if (i < 0) throw new RangeError(`no element "${id}" in the circuit`);
          const k = branches[i];
          const e = elements[i];
          if (k >= 0)
            return e.kind === 'inductor' || e.kind === 'resistor'
              ? values[k]
              : { re: -values[k].re, im: -values[k].im };
          const y = admittanceOf(e, frequency, w);
          const v = across(i);
          return { re: y.re * v.re - y.im * v.im, im: y.re * v.im + y.im * v.re };
        },
      };
    },
    look(frequency) {
      build(frequency);
      eliminate(matrix, right, n, rightCount, nodeCount);
      const part = (node: number, column: number, im: 0 | 1): number =>
        node < 0 ? 0 : right[2 * (node * rightCount + column) + im];
      const between = (p: number, column: number): Complex => {
        const [a, b] = portEnds[p];
        return { re: part(a, column, 0) - part(b, column, 0), im: part(a, column, 1) - part(b, column, 1) };
      };
      return {
        frequency,
        open: ports.map((_, p) => between(p, 0)),
        z: ports.map((_, p) => ports.map((__, q) => between(p, 1 + q))),
      };
    },
  };
}

function admittanceOf(e: Exclude<Element, Mutual>, frequency: Hertz, w: number): Complex {
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

/** Gaussian elimination with row pivoting on interleaved complex arrays; `right` becomes the solution. */
function eliminate(m: Float64Array, r: Float64Array, n: number, columns: number, nodeCount: number): void {
  for (let k = 0; k < n; k++) {
    let pivot = k;
    let largest = 0;
    for (let i = k; i < n; i++) {
      const size = Math.abs(m[2 * (i * n + k)]) + Math.abs(m[2 * (i * n + k) + 1]);
      if (size > largest) [largest, pivot] = [size, i];
    }
    if (!(largest > 0)) {
      // A node that nothing but open parts touches: it stays at zero volts.
      if (k >= nodeCount)
        throw new RangeError('the circuit has no single solution: sources or lossless coils form a loop');
      m[2 * (k * n + k)] = 1;
      continue;
    }
    if (pivot !== k) {
      for (let j = 2 * k; j < 2 * n; j++) {
        const t = m[2 * k * n + j];
        m[2 * k * n + j] = m[2 * pivot * n + j];
        m[2 * pivot * n + j] = t;
      }
      for (let j = 0; j < 2 * columns; j++) {
        const t = r[2 * k * columns + j];
        r[2 * k * columns + j] = r[2 * pivot * columns + j];
        r[2 * pivot * columns + j] = t;
      }
    }
    const pr = m[2 * (k * n + k)];
    const pi = m[2 * (k * n + k) + 1];
    const d = pr * pr + pi * pi;
    const ir = pr / d;
    const ii = -pi / d;
    for (let i = k + 1; i < n; i++) {
      const a = 2 * (i * n + k);
      const br = m[a];
      const bi = m[a + 1];
      if (br === 0 && bi === 0) continue;
      const fr = br * ir - bi * ii;
      const fi = br * ii + bi * ir;
      for (let j = k + 1; j < n; j++) {
        const s = 2 * (k * n + j);
        const t = 2 * (i * n + j);
        m[t] -= fr * m[s] - fi * m[s + 1];
        m[t + 1] -= fr * m[s + 1] + fi * m[s];
      }
      for (let j = 0; j < columns; j++) {
        const s = 2 * (k * columns + j);
        const t = 2 * (i * columns + j);
        r[t] -= fr * r[s] - fi * r[s + 1];
        r[t + 1] -= fr * r[s + 1] + fi * r[s];
      }
    }
  }
  for (let k = n - 1; k >= 0; k--) {
    const pr = m[2 * (k * n + k)];
    const pi = m[2 * (k * n + k) + 1];
    const d = pr * pr + pi * pi;
    for (let c = 0; c < columns; c++) {
      const t = 2 * (k * columns + c);
      let re = r[t];
      let im = r[t + 1];
      for (let j = k + 1; j < n; j++) {
        const a = 2 * (k * n + j);
        const b = 2 * (j * columns + c);
        re -= m[a] * r[b] - m[a + 1] * r[b + 1];
        im -= m[a] * r[b + 1] + m[a + 1] * r[b];
      }
      r[t] = (re * pr + im * pi) / d;
      r[t + 1] = (im * pr - re * pi) / d;
    }
  }
}
