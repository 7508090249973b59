import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { anyCircuit, NODES } from '../../../../test/support/any-circuit.ts';
import { element } from '../../../../test/support/element.ts';
import type { Circuit, Element } from '../../network/elements.ts';
import { solveComplexInPlace } from '../../numerics/lu-complex.ts';
import { linearSolver } from '../linear/solve.ts';
import { modesOf } from './modes.ts';
import { type OutputRow, type StateSpace, stateSpace } from './state-space.ts';
import { impedanceSections } from './state-space-impedance.ts';

/** Answer of an output row to one drive at angular frequency w. */
function response(s: StateSpace, row: OutputRow, drive: 'emf' | 'detector', k: number, w: number) {
  const n = s.order;
  const M = { re: s.A.map((a) => -a), im: new Float64Array(n * n) };
  for (let i = 0; i < n; i++) M.im[i * n + i] = w;
  const [input, width] = drive === 'emf' ? [s.B, s.emfs.length] : [s.G, s.detectors.length];
  const x = { re: Float64Array.from({ length: n }, (_, i) => input[i * width + k]), im: new Float64Array(n) };
  solveComplexInPlace(M, n, x, 1);
  let re = drive === 'emf' ? row.emfs[k] : row.detectors[k];
  let im = 0;
  for (let i = 0; i < n; i++) {
    re += row.states[i] * x.re[i];
    im += row.states[i] * x.im[i];
  }
  return { re, im };
}

describe('state space', () => {
  it('gives the two-pole circuit of the textbook', () => {
    const s = stateSpace(
      {
        elements: [
          element({ kind: 'source', name: 'emf', from: 'earth', to: 'a', emf: { re: 1, im: 0 } }),
          element({ kind: 'inductor', name: 'coil', from: 'a', to: 'top', inductance: 200e-6, resistance: 10 }),
          element({ kind: 'capacitor', name: 'c', from: 'top', to: 'earth', capacitance: 126.65e-12 }),
        ],
      },
      { frequency: 1e6 },
    );
    const { re, im, real, count } = modesOf(s, [2 * Math.PI * 1e6]);
    expect([real, count]).toEqual([0, 1]);
    // λ = −R/2L ± j√(1/LC − (R/2L)²)
    expect(re[0]).toBeCloseTo(-10 / 400e-6, 5);
    expect(im[0] / Math.sqrt(1 / (200e-6 * 126.65e-12) - 25e3 ** 2)).toBeCloseTo(1, 12);
    expect(s.current('coil').states.some((v) => v !== 0)).toBe(true);
  });

  it('agrees with the frequency solver on any circuit at any frequency', () => {
    let tried = 0;
    fc.assert(
      fc.property(anyCircuit, fc.double({ min: 3, max: 7, noNaN: true }), (any, decade) => {
        const leaks = NODES.slice(1).map(
          (from): Element => element({ kind: 'resistor', name: `leak ${from}`, from, to: 'earth', resistance: 1e6 }),
        );
        const circuit = { elements: [...any.elements, ...leaks] };
        const f = 10 ** decade;
        const w = 2 * Math.PI * f;
        const d = circuit.elements.find((e) => e.kind === 'detector')!;
        let s: StateSpace;
        try {
          s = stateSpace(circuit, { frequency: f });
        } catch (e) {
          expect((e as Error).message).toMatch(/short-circuited|decades/);
          return;
        }
        if (s.warnings.length > 0) return; // has a capacitor of its own that the solver was not told of
        let open: { re: number; im: number };
        let z: { re: number; im: number };
        try {
          const view = linearSolver(circuit, [{ from: d.from, to: d.to }]).look(f);
          open = view.open[0];
          z = view.z[0][0];
        } catch {
          return; // the solver has no answer for a part that floats
        }
        tried++;
        const row = s.detectors[0].row;
        const got = response(s, row, 'emf', 0, w);
        const gotZ = response(s, row, 'detector', 0, w);
        const near = (a: { re: number; im: number }, b: { re: number; im: number }, floor: number) =>
          Math.hypot(a.re - b.re, a.im - b.im) <= 1e-5 * Math.hypot(b.re, b.im) + floor;
        expect(near(got, open, 1e-6), `open ${JSON.stringify([got, open])}`).toBe(true);
        expect(near(gotZ, { re: -z.re, im: -z.im }, 1e-3), `z ${JSON.stringify([gotZ, z])}`).toBe(true);
      }),
      { numRuns: 400, seed: 5 },
    );
    expect(tried).toBeGreaterThan(100);
  });

  it('never gains energy, and its modes give back its own response', () => {
    fc.assert(
      fc.property(anyCircuit, (circuit) => {
        let s: StateSpace;
        try {
          s = stateSpace(circuit, { frequency: 1e6 });
        } catch (e) {
          expect((e as Error).message).toMatch(/short-circuited|decades/);
          return;
        }
        const modes = modesOf(s, [2 * Math.PI * 1e6, 2 * Math.PI * 1e3]);
        expect(modes.residual).toBeLessThan(1e-4);
        for (let m = 0; m < modes.count; m++) expect(modes.re[m]).toBeLessThanOrEqual(0);
        const n = s.order;
        const rounding = 0.1 + 1e-12 * s.A.reduce((most, a) => Math.max(most, Math.abs(a)), 0); // 1/s
        for (let i = 0; i < n; i++) expect(s.A[i * n + i]).toBeLessThanOrEqual(rounding);
      }),
      { numRuns: 400, seed: 5 },
    );
  });

  it('separates two tuned circuits that are exactly alike, and one damped to the very edge', () => {
    const tank = (n: string): Element[] => [
      element({ kind: 'inductor', name: `l${n}`, from: n, to: 'earth', inductance: 200e-6, resistance: 8 }),
      element({ kind: 'capacitor', name: `c${n}`, from: n, to: 'earth', capacitance: 100e-12 }),
    ];
    const alike: Circuit = {
      elements: [
        ...tank('a'),
        ...tank('b'),
        element({ kind: 'source', name: 'emf', from: 'earth', to: 's', emf: { re: 1, im: 0 } }),
        element({ kind: 'resistor', name: 'ra', from: 's', to: 'a', resistance: 1e6 }),
        element({ kind: 'detector', name: 'd', from: 'b', to: 'earth' }),
      ],
    };
    expect(modesOf(stateSpace(alike, { frequency: 1e6 }), [2 * Math.PI * 1.1e6]).residual).toBeLessThan(1e-9);
    const edge: Circuit = {
      elements: [
        element({ kind: 'source', name: 'emf', from: 'earth', to: 's', emf: { re: 1, im: 0 } }),
        element({ kind: 'inductor', name: 'l', from: 's', to: 'a', inductance: 1, resistance: 2000 }),
        element({ kind: 'capacitor', name: 'c', from: 'a', to: 'earth', capacitance: 1e-6 }),
        element({ kind: 'detector', name: 'd', from: 'a', to: 'earth' }),
      ],
    };
    expect(modesOf(stateSpace(edge, { frequency: 1e3 }), [1e3, 2 * Math.PI * 1e3]).residual).toBeLessThan(1e-6);
  });

  it('says what is wrong', () => {
    const shorted: Circuit = {
      elements: [
        element({ kind: 'source', name: 'aerial emf', from: 'earth', to: 'a', emf: { re: 1, im: 0 } }),
        element({ kind: 'resistor', name: 'wire', from: 'a', to: 'earth', resistance: 0 }),
      ],
    };
    expect(() => stateSpace(shorted, { frequency: 1e6 })).toThrow('"aerial emf" is short-circuited');
    const coils: Circuit = {
      elements: [
        element({ kind: 'inductor', name: 'p', from: 'a', to: 'earth', inductance: 1e-4, resistance: 1 }),
        element({ kind: 'inductor', name: 's', from: 'b', to: 'earth', inductance: 1e-4, resistance: 1 }),
        element({ kind: 'mutual', name: 'loose coupler', first: 'p', second: 's', mutual: 1.1e-4 }),
      ],
    };
    expect(() => stateSpace(coils, { frequency: 1e6 })).toThrow('"loose coupler"');
    expect(() => stateSpace({ elements: [] }, { frequency: Number.NaN })).toThrow('above 0 Hz');
  });
});

describe('impedance as a passive string', () => {
  it('is exact for what it is made of and close for a wire near its quarter wave', () => {
    const series = impedanceSections(
      (f) => ({ re: 25, im: 2 * Math.PI * f * 12e-6 - 1 / (2 * Math.PI * f * 220e-12) }),
      9e5,
    );
    expect(series.misfit).toBeLessThan(1e-6);
    const value = (kind: string) => series.sections.find((s) => s.kind === kind)?.value;
    expect(value('inductance')! / 12e-6).toBeCloseTo(1, 3);
    expect(value('capacitance')! / 220e-12).toBeCloseTo(1, 3);
    // Lossy open line of 60 m: Z = Z0·coth(γl)
    const line = impedanceSections((f) => {
      const b = (2 * Math.PI * f * 60) / 3e8;
      const a = 0.05;
      const d = Math.sin(b) ** 2 + Math.sinh(a) ** 2;
      return { re: (500 * Math.sinh(a) * Math.cosh(a)) / d, im: (-500 * Math.sin(b) * Math.cos(b)) / d };
    }, 1e6);
    expect(line.misfit).toBeLessThan(0.05);
  });
});
