// Sources: reference/coils.json (published entries with their own; sums computed independently), reference/woven-coils.json.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import reference from '../../../../reference/coils.json' with { type: 'json' };
import woven from '../../../../reference/woven-coils.json' with { type: 'json' };
import { coilInductance, makeCoil } from './coil.ts';
import { ringField, ringMutual, ringSelf } from './ring.ts';
import { windingOf } from './shapes.ts';
import type { WoundSpec } from './spec.ts';
import { turnSums } from './turn-sums.ts';

const { computed, published } = reference;
const off = (got: number, want: number) => Math.abs(got / want - 1);

describe('circles', () => {
  it('Maxwell’s two circles, near and far', () => {
    for (const { r1, r2, z, M } of computed.maxwell_two_circles)
      expect(off(ringMutual(r1, r2, z), M)).toBeLessThan(1e-8);
    // Rosa & Grover 1912, example 1: 25 and 20 cm, 10 cm apart: 248.787 cm
    const { A_m, a_m, d_m, M_nH } = published.maxwell_circles_example.values;
    expect(off(ringMutual(A_m, a_m, d_m) * 1e9, M_nH)).toBeLessThan(2e-6);
  });

  it('tends to the dipole far away and to the logarithm close by, digits kept', () => {
    const mu0 = 4e-7 * Math.PI;
    const [r, z] = [0.01, 50];
    expect(off(ringMutual(r, r, z), (mu0 * Math.PI * r ** 4) / (2 * z ** 3))).toBeLessThan(1e-6);
    expect(off(ringMutual(1, 1, 1e-9), mu0 * (Math.log(8e9) - 2))).toBeLessThan(1e-8);
  });

  it('field and flux agree: H·2πr is the slope of the mutual inductance', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.01, max: 0.1, noNaN: true }),
        fc.double({ min: 0.2, max: 3, noNaN: true }),
        fc.double({ min: 0.2, max: 3, noNaN: true }),
        (ring, k, n) => {
          const [r, z] = [k * ring, n * ring];
          const out = new Float64Array(2);
          ringField(ring, r, z, out);
          const mu0 = 4e-7 * Math.PI;
          const h = 1e-4 * ring;
          const slope = (ringMutual(ring, r + h, z) - ringMutual(ring, r - h, z)) / (2 * h);
          const rise = (ringMutual(ring, r, z + h) - ringMutual(ring, r, z - h)) / (2 * h);
          const scale = mu0 * Math.hypot(out[0], out[1]) * 2 * Math.PI * r;
          expect(Math.abs(slope - mu0 * out[0] * 2 * Math.PI * r) / scale).toBeLessThan(1e-5);
          expect(Math.abs(rise + mu0 * out[1] * 2 * Math.PI * r) / scale).toBeLessThan(1e-5);
        },
      ),
    );
  });
});

describe('inductance', () => {
  it('single layers, piles and spirals equal the independent sums to 1e-8', () => {
    for (const r of computed.solenoids) {
      const L = coilInductance({
        shape: 'solenoid',
        turns: r.N,
        meanDiameter: r.D_centre,
        pitch: r.pitch,
        wire: { diameter: r.wire_d },
      });
      expect(off(L, r.L_uniform_current), `${r.N} turns`).toBeLessThan(1e-8);
    }
    for (const r of computed.multilayer) {
      const L = coilInductance({
        shape: 'multilayer',
        turnsPerLayer: r.turns_per_layer,
        layers: r.layers,
        innerDiameter: 2 * r.r_first_layer_centre,
        pitch: r.axial_pitch,
        layerPitch: r.radial_pitch,
        wire: { diameter: r.wire_d },
      });
      expect(off(L, r.L_uniform_current), `${r.layers} layers`).toBeLessThan(1e-8);
    }
    for (const r of computed.flat_spirals) {
      const L = coilInductance({
        shape: 'spiral',
        turns: r.N,
        innerDiameter: 2 * r.r_first_turn_centre,
        pitch: r.radial_pitch,
        wire: { diameter: r.wire_d },
      });
      expect(off(L, r.L_uniform_current), `spiral of ${r.N}`).toBeLessThan(1e-8);
    }
  });

  it('agrees with the handbook’s worked single-layer example', () => {
    // Circular 74, section 67: 400 turns, 12909 µH
    const { N, wire_d_m, pitch_m, radius_to_wire_centre_m, L_uH } = published.c74_solenoid_example.values;
    const L = coilInductance({
      shape: 'solenoid',
      turns: N,
      meanDiameter: 2 * radius_to_wire_centre_m,
      pitch: pitch_m,
      wire: { diameter: wire_d_m },
    });
    expect(off(L * 1e6, L_uH)).toBeLessThan(1e-4);
  });

  it('agrees with the handbook’s multilayer example once wire is counted as wire', () => {
    // Circular 74, section 69: 15 × 15 turns in a square of 15 mm, 6694 µH for a section filled with current; round wire
    // adds µ₀·a·N·(ln(pitch/d) + 0.1381 + 0.017).
    const { N, mean_radius_m: a, b_m, L_uH_printed_recalled } = published.c74_multilayer_example.values;
    const pitch = b_m / 15;
    const d = 0.8 * pitch;
    const L = coilInductance({
      shape: 'multilayer',
      turnsPerLayer: 15,
      layers: 15,
      innerDiameter: 2 * (a - 7 * pitch),
      pitch,
      layerPitch: pitch,
      wire: { diameter: d },
    });
    const correction = 4e-7 * Math.PI * a * N * (Math.log(pitch / d) + 0.1381 + 0.017);
    expect(off((L - correction) * 1e6, L_uH_printed_recalled)).toBeLessThan(4e-4);
  });

  it('woven coils agree with the integral along the wire’s own path to 0.6 %', () => {
    for (const c of woven.cases) {
      const coil = makeCoil({
        ...c,
        shape: c.kind,
        pitch: c.overall,
        wire: { diameter: c.wire },
      } as unknown as WoundSpec);
      expect(off(coil.inductance, c.L), `${c.kind} over ${c.over}`).toBeLessThan(6e-3);
      expect(off(coil.wireLength, c.length)).toBeLessThan(0.015);
    }
  });

  it('sums by symmetry equal sums over every pair', () => {
    const specs: WoundSpec[] = [
      { shape: 'solenoid', turns: 37, meanDiameter: 0.05, pitch: 6e-4, wire: { diameter: 5e-4 } },
      {
        shape: 'multilayer',
        turnsPerLayer: 7,
        layers: 30,
        innerDiameter: 0.03,
        pitch: 6e-4,
        layerPitch: 7e-4,
        wire: { diameter: 5e-4 },
      },
      { shape: 'spiral', turns: 120, innerDiameter: 0.02, pitch: 6e-4, wire: { diameter: 5e-4 } },
    ];
    for (const spec of specs) {
      const w = windingOf(spec);
      let sum = 0;
      for (let i = 0; i < w.radius.length; i++) {
        sum += ringSelf(w.radius[i], w.wireRadius);
        for (let j = 0; j < i; j++) sum += 2 * ringMutual(w.radius[i], w.radius[j], w.z[i] - w.z[j]);
      }
      expect(off(turnSums(w).total, sum)).toBeLessThan(1e-7);
      expect(off(turnSums(w).block(w.turns, w.turns), sum)).toBeLessThan(1e-9);
    }
  });

  it('scales with size, and rises with turns and with radius', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 2, max: 60 }),
        fc.double({ min: 0.02, max: 0.1, noNaN: true }),
        fc.double({ min: 0.2, max: 0.95, noNaN: true }),
        fc.double({ min: 0.3, max: 4, noNaN: true }),
        (turns, D, ds, k) => {
          const pitch = 0.02 * D;
          const L = (n: number, s: number) =>
            coilInductance({
              shape: 'solenoid',
              turns: n,
              meanDiameter: s * D,
              pitch: s * pitch,
              wire: { diameter: s * ds * pitch },
            });
          expect(off(L(turns, k), k * L(turns, 1))).toBeLessThan(1e-9);
          expect(L(turns + 1, 1)).toBeGreaterThan(L(turns, 1));
          expect(L(turns + 0.5, 1)).toBeGreaterThan(L(turns, 1));
        },
      ),
    );
  });

  it('refuses what cannot be wound', () => {
    const wire = { diameter: 5e-4 };
    expect(() => coilInductance({ shape: 'solenoid', turns: -3, meanDiameter: 0.05, pitch: 1e-3, wire })).toThrow(
      /turns/,
    );
    expect(() =>
      coilInductance({ shape: 'solenoid', turns: Number.NaN, meanDiameter: 0.05, pitch: 1e-3, wire }),
    ).toThrow(/turns/);
    expect(() => coilInductance({ shape: 'solenoid', turns: 9, meanDiameter: 1e-4, pitch: 1e-3, wire })).toThrow(
      'coil.radius',
    );
    expect(() => coilInductance({ shape: 'spider', turns: 9, innerDiameter: 0.03, slots: 3, over: 2, wire })).toThrow(
      'coil.weave',
    );
  });
});

describe('taps', () => {
  const shapes: WoundSpec[] = [
    { shape: 'solenoid', turns: 60, formerDiameter: 0.06, wire: { diameter: 4e-4, covering: 'enamel' } },
    { shape: 'bank-wound', turns: 61, layers: 3, formerDiameter: 0.05, wire: { diameter: 3e-4, covering: 'enamel' } },
    {
      shape: 'multilayer',
      turnsPerLayer: 20,
      layers: 4,
      formerDiameter: 0.02,
      wire: { diameter: 3e-4, covering: 'single silk' },
    },
    { shape: 'spiral', turns: 40, innerDiameter: 0.03, wire: { diameter: 5e-4, covering: 'enamel' } },
    { shape: 'spider', turns: 40, innerDiameter: 0.03, wire: { diameter: 5e-4, covering: 'double cotton' } },
    { shape: 'basket', turns: 40, pegCircle: 0.07, wire: { diameter: 5e-4, covering: 'double cotton' } },
  ];
  const coils = [
    ...shapes.map(makeCoil),
    makeCoil({ shape: 'core', turns: 50, perTurnSquared: 1e-7, wire: { diameter: 4e-4 } }),
    makeCoil({ shape: 'measured', inductance: 2e-4, q: 150, at: 1e6 }),
  ];

  it('parts and their mutual inductances sum to the whole; parts never couple wholly', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...coils),
        fc.array(fc.double({ min: 0.02, max: 0.98, noNaN: true }), { minLength: 1, maxLength: 4 }),
        (coil, places) => {
          const taps = places.map((p) => Math.max(1, Math.round(p * coil.turns)));
          const edges = [...new Set([0, ...taps, coil.turns])].sort((a, b) => a - b);
          const parts = edges.slice(1).map((to, i) => [edges[i], to] as const);
          const matrix = parts.map((p, i) => parts.map((q, j) => (i === j ? coil.partial(...p) : coil.mutual(p, q))));
          expect(
            off(
              matrix.flat().reduce((s, x) => s + x, 0),
              coil.inductance,
            ),
          ).toBeLessThan(1e-9);
          for (let i = 0; i < matrix.length; i++) {
            for (let j = 0; j < i; j++) {
              expect(off(matrix[i][j], matrix[j][i])).toBeLessThan(1e-9);
              expect(Math.abs(matrix[i][j]) / Math.sqrt(matrix[i][i] * matrix[j][j]), coil.shape).toBeLessThan(1);
            }
          }
        },
      ),
    );
  });

  it('a part is the coil of that many turns', () => {
    const whole = makeCoil({ shape: 'solenoid', turns: 60, meanDiameter: 0.06, pitch: 5e-4, wire: { diameter: 4e-4 } });
    const part = makeCoil({ shape: 'solenoid', turns: 22, meanDiameter: 0.06, pitch: 5e-4, wire: { diameter: 4e-4 } });
    expect(off(whole.partial(0, 22), part.inductance)).toBeLessThan(1e-12);
    expect(off(whole.partial(30, 52), part.inductance)).toBeLessThan(1e-9);
  });

  it('voltage at a tap differs from the ratio of turns as leakage says', () => {
    const [coil] = coils;
    // Near the end of a coil flux leaks, so a fifth of the turns has less than a fifth of the voltage.
    const share = (tap: number) => (coil.partial(0, tap) + coil.mutual([0, tap], [tap, coil.turns])) / coil.inductance;
    expect(share(12)).toBeLessThan(0.2);
    expect(share(30)).toBeCloseTo(0.5, 9);
  });
});
