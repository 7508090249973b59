import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { element } from '../../../../test/support/element.ts';
import { type Circuit, EARTH, type Element } from '../../network/elements.ts';
import { elementId } from '../../network/ids.ts';
import { magnitude } from '../../numerics/complex.ts';
import { linearSolver } from './solve.ts';

const source = (emf: number): Element =>
  element({
    kind: 'source',
    name: 'emf',
    from: EARTH,
    to: 'in',
    emf: { re: emf, im: 0 },
  });
const resistor = (name: string, from: string, to: string, resistance: number): Element =>
  element({
    kind: 'resistor',
    name,
    from,
    to,
    resistance,
  });
const capacitor = (name: string, from: string, to: string, capacitance: number): Element =>
  element({
    kind: 'capacitor',
    name,
    from,
    to,
    capacitance,
  });
const inductor = (name: string, from: string, to: string, inductance: number, r = 0.1): Element =>
  element({
    kind: 'inductor',
    name,
    from,
    to,
    inductance,
    resistance: r,
  });

/** A ladder of random parts with some coupled coils: anything a bench could make. */
const value = (low: number, high: number) =>
  fc.double({ min: Math.log(low), max: Math.log(high), noNaN: true }).map(Math.exp);
const randomCircuit = fc
  .record({
    parts: fc.array(
      fc.record({
        kind: fc.integer({ min: 0, max: 2 }),
        a: fc.integer({ min: 0, max: 5 }),
        b: fc.integer({ min: 0, max: 5 }),
        R: value(3, 3e5),
        C: value(1e-12, 1e-8),
        L: value(1e-6, 1e-2),
      }),
      { minLength: 3, maxLength: 14 },
    ),
    k: fc.double({ min: -0.95, max: 0.95, noNaN: true }),
    L1: value(1e-5, 1e-2),
    L2: value(1e-5, 1e-2),
  })
  .map(({ parts, k, L1, L2 }): Circuit => {
    const name = (i: number) => (i === 0 ? EARTH : i === 1 ? 'in' : `n${i}`);
    const elements: Element[] = [
      source(1),
      inductor('first', 'in', 'n2', L1),
      inductor('second', 'n3', EARTH, L2),
      element({ kind: 'mutual', name: 'k', first: 'first', second: 'second', mutual: k * Math.sqrt(L1 * L2) }),
      ...[2, 3, 4, 5].map((i) => resistor(`leak${i}`, name(i), EARTH, 1e6)),
    ];
    parts.forEach(({ kind, a, b, R, C, L }, i) => {
      if (a === b) return;
      elements.push(
        kind === 0
          ? resistor(`p${i}`, name(a), name(b), R)
          : kind === 1
            ? capacitor(`p${i}`, name(a), name(b), C)
            : inductor(`p${i}`, name(a), name(b), L, R / 1e3),
      );
    });
    return { elements };
  });

describe('linear solver', () => {
  it('divides, resonates and transforms as elementary theory says', () => {
    const divider = linearSolver({
      elements: [source(10), resistor('a', 'in', 'mid', 3000), resistor('b', 'mid', EARTH, 1000)],
    });
    expect(divider.solve(1000).voltage('mid').re).toBeCloseTo(2.5, 12);
    // Series resonance: the capacitor's voltage is Q times the emf.
    const [L, C, R] = [200e-6, 150e-12, 10];
    const f0 = 1 / (2 * Math.PI * Math.sqrt(L * C));
    const series = linearSolver({
      elements: [source(1), inductor('l', 'in', 'top', L, R), capacitor('c', 'top', EARTH, C)],
    });
    expect(magnitude(series.solve(f0).voltage('top'))).toBeCloseTo((2 * Math.PI * f0 * L) / R, 6);
    // A perfect transformer of n:1 shows n² times its load: k → 1, large inductance.
    const pair = linearSolver(
      {
        elements: [
          inductor('p', 'in', EARTH, 100, 1e-6),
          inductor('s', 'out', EARTH, 1, 1e-6),
          element({ kind: 'mutual', name: 'm', first: 'p', second: 's', mutual: 9.9999999 }),
          resistor('load', 'out', EARTH, 50),
        ],
      },
      [{ from: 'in', to: EARTH }],
    );
    expect(pair.look(1000).z[0][0].re).toBeCloseTo(5000, -1);
  });

  it('sees an open capacitor at frequency 0, and the cell only there', () => {
    const circuit: Circuit = {
      elements: [
        element({ kind: 'cell', name: 'cell', from: EARTH, to: 'in', voltage: 1.5 }),
        source(0),
        resistor('r', 'in', 'out', 1000),
        capacitor('c', 'out', EARTH, 1e-9),
      ].filter((e) => e.kind !== 'source') as Element[],
    };
    const solver = linearSolver(circuit, [{ from: 'out', to: EARTH }]);
    expect(solver.look(0).open[0].re).toBeCloseTo(1.5, 6);
    expect(solver.look(0).z[0][0].re).toBeCloseTo(1000, 3);
    expect(solver.look(1000).open[0].re).toBe(0);
  });

  it('is reciprocal: Z12 = Z21 for any circuit', () => {
    fc.assert(
      fc.property(
        randomCircuit,
        fc.integer({ min: 2, max: 5 }),
        fc.integer({ min: 2, max: 5 }),
        value(1e4, 2e6),
        (circuit, a, b, f) => {
          const { z } = linearSolver(circuit, [
            { from: `n${a}`, to: EARTH },
            { from: `n${b}`, to: EARTH },
          ]).look(f);
          const size = Math.sqrt(magnitude(z[0][0]) * magnitude(z[1][1]));
          expect(Math.hypot(z[0][1].re - z[1][0].re, z[0][1].im - z[1][0].im)).toBeLessThanOrEqual(1e-8 * size);
        },
      ),
      { numRuns: 200 },
    );
  });

  it('balances power: what the source gives, the resistances take, to 1e-9', () => {
    fc.assert(
      fc.property(randomCircuit, value(1e4, 2e6), (circuit, f) => {
        const solution = linearSolver(circuit).solve(f);
        let taken = 0;
        for (const e of circuit.elements) {
          if (e.kind !== 'resistor' && e.kind !== 'inductor') continue;
          const i = magnitude(solution.current(e.id));
          taken += (i * i * (e.resistance as number)) / 2;
        }
        const i = solution.current(elementId('emf'));
        const given = i.re / 2;
        expect(Math.abs(given - taken)).toBeLessThanOrEqual(1e-9 * Math.max(Math.abs(given), magnitude(i) * 1e-3));
      }),
      { numRuns: 200 },
    );
  });

  it('says what is wrong with a circuit', () => {
    expect(() =>
      linearSolver({ elements: [element({ kind: 'mutual', name: 'm', first: 'a', second: 'b', mutual: 1 })] }),
    ).toThrow(/couples "a"/);
    expect(() => linearSolver({ elements: [source(1), { ...source(2), id: elementId('other') }] }).solve(1e6)).toThrow(
      /no single solution/,
    );
  });
});
