import type { Circuit } from '../../network/elements.ts';
import type { ElementId } from '../../network/ids.ts';
import type { Port } from '../../network/port.ts';
import type { Complex } from '../../numerics/complex.ts';
import type { Hertz } from '../../units/quantities.ts';
import { eliminateComplex } from './complex-elimination.ts';
import { admittanceOf, type Equations, equationsOf, fill } from './equations.ts';
import type { PortRows } from './port-rows.ts';

/** The network as its ports see it at one frequency: V = open + Z·I, I flowing into each port's `from`. */
export interface PortView {
  readonly frequency: Hertz;
  /** Open-circuit voltage at each port from the circuit's own sources, peak. */
  readonly open: readonly Complex[];
  /** Open-circuit impedance matrix, Ω. Symmetric, since the elements are reciprocal. */
  readonly z: readonly (readonly Complex[])[];
}

/** Voltages (V) and currents (A) of a circuit at one frequency, as complex numbers. */
export interface Solution {
  readonly frequency: Hertz;
  voltage(node: string): Complex;
  /** Current through an element from its `from` to its `to` node. @throws RangeError for one that is not there. */
  current(id: ElementId): Complex;
}

/** A circuit ready to be solved at any frequency. */
export interface LinearSolver {
  /** All node voltages with the circuit's own sources and nothing at the ports. */
  solve(frequency: Hertz): Solution;
  /** The network seen from the ports given when the solver was made. */
  look(frequency: Hertz): PortView;
  /** The same in one array. */
  rows(frequency: Hertz): PortRows;
}

/**
 * Modified nodal analysis of any list of elements. Made once for a circuit; each frequency costs one factorisation.
 * At frequency 0 capacitors are open and inductors are their resistance; cells drive only there, sources only above.
 * @param circuit elements between nodes; "earth" is at 0 V
 * @param ports whose impedances to calculate
 * @returns a solver; its voltages are r.m.s. as the sources are
 * @throws RangeError when an element or mutual names something that is not there, or the equations have no solution.
 */
export function linearSolver(circuit: Circuit, ports: readonly Port[] = []): LinearSolver {
  const equations = equationsOf(circuit, ports);
  return {
    solve(frequency) {
      solveAt(equations, frequency);
      const values = Array.from({ length: equations.size }, (_, i) => unknown(equations, i, 0));
      return {
        frequency,
        voltage: (node) => voltageOf(equations, values, node),
        current: (id) => currentOf(equations, values, id, frequency),
      };
    },
    look(frequency) {
      solveAt(equations, frequency);
      const open: Complex[] = [];
      const z: Complex[][] = [];
      for (let p = 0; p < equations.ports.length; p++) {
        open.push(acrossPort(equations, p, 0));
        const row: Complex[] = [];
        for (let from = 0; from < equations.ports.length; from++) row.push(acrossPort(equations, p, 1 + from));
        z.push(row);
      }
      return { frequency, open, z };
    },
    rows(frequency) {
      solveAt(equations, frequency);
      return rowsOf(equations);
    },
  };
}

function rowsOf({ right, rightCount, ports }: Equations): PortRows {
  const rows = new Float64Array(2 * ports.length * rightCount);
  for (let p = 0; p < ports.length; p++) {
    const [a, b] = ports[p];
    const width = 2 * rightCount;
    for (let k = 0; k < width; k++)
      rows[p * width + k] = (a < 0 ? 0 : right[a * width + k]) - (b < 0 ? 0 : right[b * width + k]);
  }
  return rows;
}

function solveAt(q: Equations, frequency: Hertz): void {
  fill(q, frequency);
  eliminateComplex(q.matrix, q.right, q.size, q.rightCount, q.nodeCount);
}

const NOTHING: Complex = { re: 0, im: 0 };

function unknown({ right, rightCount }: Equations, index: number, column: number): Complex {
  if (index < 0) return NOTHING;
  const k = 2 * (index * rightCount + column);
  return { re: right[k], im: right[k + 1] };
}

function acrossPort({ right, rightCount, ports }: Equations, port: number, column: number): Complex {
  const [a, b] = ports[port];
  const i = 2 * (a * rightCount + column);
  const j = 2 * (b * rightCount + column);
  return {
    re: (a < 0 ? 0 : right[i]) - (b < 0 ? 0 : right[j]),
    im: (a < 0 ? 0 : right[i + 1]) - (b < 0 ? 0 : right[j + 1]),
  };
}

function voltageOf({ nodes }: Equations, values: readonly Complex[], node: string): Complex {
  const index = nodes.get(node);
  if (index === undefined) throw new RangeError(`no node "${node}" in the circuit`);
  return index < 0 ? NOTHING : values[index];
}

function currentOf(q: Equations, values: readonly Complex[], id: ElementId, frequency: Hertz): Complex {
  const i = q.elements.findIndex((e) => e.id === id);
  if (i < 0) throw new RangeError(`no element "${id}" in the circuit`);
  const e = q.elements[i];
  const k = q.currents[i];
  if (k >= 0)
    return e.kind === 'inductor' || e.kind === 'resistor' ? values[k] : { re: -values[k].re, im: -values[k].im };
  const y = admittanceOf(e, frequency);
  const a = q.from[i] < 0 ? NOTHING : values[q.from[i]];
  const b = q.to[i] < 0 ? NOTHING : values[q.to[i]];
  const [re, im] = [a.re - b.re, a.im - b.im];
  return { re: y.re * re - y.im * im, im: y.re * im + y.im * re };
}
