import fc from 'fast-check';
import { type Circuit, EARTH, type Element } from '../../src/engine/network/elements.ts';
import type { Port } from '../../src/engine/network/port.ts';
import type { Complex } from '../../src/engine/numerics/complex.ts';
import { coilInductance } from '../../src/engine/parts/coil/coil.ts';
import { linearSolver, type PortView } from '../../src/engine/solvers/linear/solve.ts';
import { anyCircuit } from '../support/any-circuit.ts';
import { element } from '../support/element.ts';
import { trial } from './trial.ts';

/** Parts of six decades in one circuit leave so much of sixteen digits. */
const CLOSE = 1e-6;
/** What admittances and impedances of one circuit may come to, multiplied: sixteen digits are not enough for more. */
const WIDEST = 1e8;
/** Of 1 V across the part that conducts best, so much of a power is lost to rounding. */
const ROUNDING = 1e-14;

const cases = fc.record({
  circuit: anyCircuit,
  frequency: fc.double({ min: 4, max: 7, noNaN: true }).map((decades) => 10 ** decades),
  factor: fc.double({ min: -2, max: 2, noNaN: true }).map((decades) => 10 ** decades),
});
type Case = typeof cases extends fc.Arbitrary<infer T> ? T : never;

const size = ({ re, im }: Complex): number => Math.hypot(re, im);
const largest = (z: PortView['z']): number => Math.max(...z.flat().map(size));
const apart = (a: Complex, b: Complex): number => Math.hypot(a.re - b.re, a.im - b.im);

/** Whether every part is joined to earth, and not only by the solver's own leakage. */
function hangsTogether({ elements }: Circuit): boolean {
  const joined = new Set([EARTH]);
  const parts = elements.flatMap((e) => ('from' in e ? [e] : []));
  const conducting = parts.filter(({ kind }) => kind !== 'detector');
  for (let size = 0; size < joined.size; ) {
    size = joined.size;
    for (const { from, to } of conducting) if (joined.has(from) || joined.has(to)) joined.add(from).add(to);
  }
  return parts.every(({ from, to }) => joined.has(from) && joined.has(to));
}

const portsOf = ({ elements }: Circuit): Port[] =>
  elements
    .flatMap((e) => (e.kind === 'detector' || e.kind === 'capacitor' ? [{ from: e.from, to: e.to }] : []))
    .slice(-2);

/** Of the part that conducts best, S. */
function largestAdmittance({ elements }: Circuit, frequency: number): number {
  const w = 2 * Math.PI * frequency;
  const all = elements.map((e) => {
    if (e.kind === 'resistor') return 1 / (e.resistance as number);
    if (e.kind === 'capacitor') return w * e.capacitance;
    return e.kind === 'inductor' ? 1 / Math.hypot(e.resistance as number, w * e.inductance) : 0;
  });
  return Math.max(...all);
}

/** At the detector and a capacitor; undefined for a circuit with no single solution, in pieces, or beyond sixteen digits. */
function lookAt(circuit: Circuit, frequency: number, ports = portsOf(circuit)): PortView | undefined {
  if (!hangsTogether(circuit)) return undefined;
  try {
    const view = linearSolver(circuit, ports).look(frequency);
    return largest(view.z) * largestAdmittance(circuit, frequency) < WIDEST ? view : undefined;
  } catch (error) {
    if (error instanceof RangeError) return undefined;
    throw error;
  }
}

/** Every impedance of the circuit times one factor, every frequency of it times another. */
const scaled = (circuit: Circuit, impedance: number, frequency: number): Circuit => ({
  elements: circuit.elements.map((e): Element => {
    switch (e.kind) {
      case 'resistor':
        return { ...e, resistance: impedance * (e.resistance as number) };
      case 'capacitor':
        return { ...e, capacitance: e.capacitance / impedance / frequency };
      case 'inductor':
        return {
          ...e,
          inductance: (e.inductance * impedance) / frequency,
          resistance: impedance * (e.resistance as number),
        };
      case 'mutual':
        return { ...e, mutual: (e.mutual * impedance) / frequency };
      default:
        return e;
    }
  }),
});

function mustAgree(one: PortView, other: PortView, factor: number, what: string): void {
  const most = largest(one.z);
  for (const [i, row] of one.z.entries())
    for (const [k, z] of row.entries()) {
      const seen = { re: other.z[i][k].re / factor, im: other.z[i][k].im / factor };
      if (!(apart(z, seen) <= CLOSE * most)) throw new Error(`${what}: ${JSON.stringify({ z, seen, most })}`);
    }
}

function checkReciprocity({ circuit, frequency }: Case): void {
  const view = lookAt(circuit, frequency);
  fc.pre(view !== undefined && view.z.length > 1);
  const [[, there], [back]] = view.z;
  if (!(apart(there, back) <= CLOSE * largest(view.z))) throw new Error(`${JSON.stringify({ there, back })}`);
}

function checkPassivity({ circuit, frequency }: Case): void {
  const view = lookAt(circuit, frequency);
  fc.pre(view !== undefined);
  const least = -CLOSE * largest(view.z);
  for (const [i, row] of view.z.entries())
    if (!(row[i].re >= least)) throw new Error(`a resistance of ${row[i].re} Ω among ${largest(view.z)} Ω`);
}

function checkEnergy({ circuit, frequency }: Case): void {
  fc.pre(lookAt(circuit, frequency) !== undefined);
  const solution = linearSolver(circuit).solve(frequency);
  let taken = 0;
  let given = 0;
  let moved = 0;
  for (const e of circuit.elements) {
    if (e.kind === 'mutual' || e.kind === 'detector') continue;
    const current = solution.current(e.id);
    const voltage = { re: 0, im: 0 };
    for (const [node, sign] of [
      [e.from, 1],
      [e.to, -1],
    ] as const) {
      const at = solution.voltage(node);
      voltage.re += sign * at.re;
      voltage.im += sign * at.im;
    }
    moved += size(voltage) * size(current);
    if (e.kind === 'resistor' || e.kind === 'inductor') taken += (e.resistance as number) * size(current) ** 2;
    if (e.kind === 'source') given -= voltage.re * current.re + voltage.im * current.im;
  }
  const close = CLOSE * moved + ROUNDING * largestAdmittance(circuit, frequency);
  if (!(Math.abs(given - taken) <= close)) throw new Error(`${given} W are given, ${taken} W taken, of ${moved} VA`);
}

function checkScaling({ circuit, frequency, factor }: Case): void {
  const view = lookAt(circuit, frequency);
  fc.pre(view !== undefined);
  const higher = lookAt(scaled(circuit, factor, 1), frequency);
  if (higher) mustAgree(view, higher, factor, 'impedances');
  const faster = lookAt(scaled(circuit, 1, factor), frequency * factor);
  if (faster) mustAgree(view, faster, 1, 'frequencies');
}

function checkLimits({ circuit, frequency }: Case): void {
  const view = lookAt(circuit, frequency);
  fc.pre(view !== undefined);
  const nodes = circuit.elements.flatMap((e) => ('from' in e && e.kind !== 'detector' ? [e.from, e.to] : []));
  const added = [
    element({ kind: 'resistor', name: 'next to open', from: nodes[0], to: nodes.at(-1)!, resistance: 1e18 }),
    element({ kind: 'capacitor', name: 'next to none', from: nodes[1], to: nodes.at(-1)!, capacitance: 1e-30 }),
  ].filter(({ from, to }) => from !== to);
  const with_ = lookAt({ elements: [...circuit.elements, ...added] }, frequency, portsOf(circuit));
  if (with_) mustAgree(view, with_, 1, 'next to nothing');
}

const laws = {
  reciprocity: [checkReciprocity, 'what a port does to another, the other does to it'],
  passivity: [checkPassivity, 'no port of a circuit without sources gives power'],
  energy: [checkEnergy, 'what the source gives, the resistances take'],
  scaling: [checkScaling, 'all impedances times a factor, or all frequencies, and the figures follow'],
  limits: [checkLimits, 'a next to infinite resistance and a next to no capacitance change nothing'],
} as const;

const sizes = fc.record({
  meanDiameter: fc.double({ min: 0.01, max: 0.2, noNaN: true }),
  turns: fc.integer({ min: 5, max: 300 }),
  diameter: fc.double({ min: 1e-4, max: 1e-3, noNaN: true }),
  spread: fc.double({ min: 1.05, max: 3, noNaN: true }),
  factor: fc.double({ min: 0.5, max: 3, noNaN: true }),
});

/** A coil with every size times a factor has the inductance times that factor, whatever its shape. */
const checkSizes = ({
  meanDiameter,
  turns,
  diameter,
  spread,
  factor,
}: typeof sizes extends fc.Arbitrary<infer T> ? T : never) => {
  const inductance = (k: number): number =>
    coilInductance({
      shape: 'solenoid',
      turns,
      meanDiameter: k * meanDiameter,
      pitch: k * spread * diameter,
      wire: { diameter: k * diameter },
    });
  const [one, other] = [inductance(1), inductance(factor) / factor];
  if (!(one > 0 && Math.abs(one - other) <= CLOSE * one)) throw new Error(`${one} H and ${other} H`);
};

export const LAW_TRIALS = [
  ...Object.entries(laws).map(([name, [check, says]]) =>
    trial({ name, group: 'laws', says: `random circuits: ${says}`, cases, check, batch: 2000, share: 1, longest: 20 }),
  ),
  trial({
    name: 'sizes',
    group: 'laws',
    says: 'a coil with every size times a factor has its inductance times that factor',
    cases: sizes,
    check: checkSizes,
    batch: 500,
    share: 1,
    longest: 20,
  }),
];
