import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import reference from '../../../../reference/aerials.json' with { type: 'json' };
import { MU_0 } from '../../units/quantities.ts';
import { coaxialSquares, type FrameSpec, frameAerial, towards } from './frame.ts';

const within = (got: number, want: number, tolerance: number, label: string) => {
  const error = Math.abs(got / want - 1);
  expect(error <= tolerance, `${label}: got ${got}, want ${want}, off by ${error}`).toBe(true);
};
const wire = { diameter: 0.0005 };

describe('inductance of frames', () => {
  it('round ones are sums of coaxial rings (reference/aerials.json, round_frames and flat_spirals)', () => {
    for (const row of reference.round_frames.rows) {
      const spec = {
        outline: 'round',
        side: row.D_centre,
        turns: row.N,
        pitch: row.pitch,
        wire: { diameter: row.wire_d },
      } as const;
      within(frameAerial(spec).inductance, row.L_uniform_current, 1e-6, `${row.N} turns of ${row.D_centre} m`);
    }
    for (const row of reference.flat_spirals) {
      const side = 2 * (row.r_first_turn_centre + (row.N - 1) * row.radial_pitch);
      const spec = {
        outline: 'round',
        winding: 'spiral',
        side,
        turns: row.N,
        pitch: row.radial_pitch,
        wire: { diameter: row.wire_d },
      } as const;
      within(frameAerial(spec).inductance, row.L_uniform_current, 1e-6, `spiral of ${row.N}`);
    }
  });

  it('one square turn is (2µ₀s/π)(ln(s/a) − 0.52401) (Grover 1946, from memory)', () => {
    for (const side of [0.3, 0.6, 1.2]) {
      const a = wire.diameter / 2;
      const want = ((2 * MU_0 * side) / Math.PI) * (Math.log(side / a) - 0.52401);
      within(frameAerial({ outline: 'square', side, turns: 1, pitch: 0, wire }).inductance, want, 1e-3, `${side} m`);
    }
  });

  it('two squares are Neumann’s closed form (Grover 1946, from memory) and its double integral', () => {
    for (const [s, d] of [
      [1, 0.005],
      [0.6, 0.1],
      [0.5, 0.5],
    ]) {
      const near = Math.hypot(s, d);
      const far = Math.hypot(s, s, d);
      const closed =
        ((2 * MU_0) / Math.PI) * (s * Math.log((((s + near) / (s + far)) * near) / d) + far - 2 * near + d);
      within(coaxialSquares(s, s, d), closed, 1e-9, 'closed form');
    }
    // Unequal, concentric and apart: straight midpoint sum over sides.
    const [s, t, z, n] = [0.8, 0.5, 0.1, 400];
    let sum = 0;
    for (let i = 0; i < n; i++) {
      for (let j = 0; j < n; j++) {
        const x = (s - t) / 2 + ((j + 0.5) * t) / n - ((i + 0.5) * s) / n;
        sum += 1 / Math.hypot(x, (s - t) / 2, z) - 1 / Math.hypot(x, (s + t) / 2, z);
      }
    }
    within(coaxialSquares(s, t, z), ((MU_0 / Math.PI) * sum * s * t) / n ** 2, 1e-4, 'double integral');
  });

  it('a square frame lies between the round ones it holds and is held by', () => {
    const make = (outline: FrameSpec['outline'], side: number) =>
      frameAerial({ outline, side, turns: 12, pitch: 0.006, wire }).inductance;
    expect(make('square', 0.6)).toBeGreaterThan(make('round', 0.6));
    expect(make('square', 0.6)).toBeLessThan(make('round', 0.6 * Math.SQRT2));
  });
});

describe('laws of frames', () => {
  const frame: fc.Arbitrary<FrameSpec> = fc.record({
    outline: fc.constantFrom('square' as const, 'round' as const),
    winding: fc.constantFrom('box' as const, 'spiral' as const),
    side: fc.double({ min: 0.3, max: 2, noNaN: true }),
    turns: fc.integer({ min: 1, max: 12 }),
    pitch: fc.double({ min: 0.002, max: 0.01, noNaN: true }),
    wire: fc.constant(wire),
  });
  it('twice the size is twice the inductance and four times the height; no turns couple fully', () => {
    fc.assert(
      fc.property(frame, (spec) => {
        const one = frameAerial(spec);
        const two = frameAerial({
          ...spec,
          side: 2 * spec.side,
          pitch: 2 * spec.pitch,
          wire: { diameter: 2 * wire.diameter },
        });
        expect(two.inductance / one.inductance).toBeCloseTo(2, 9);
        expect(two.effectiveHeightAt(1e6) / one.effectiveHeightAt(1e6)).toBeCloseTo(4, 9);
        const single = frameAerial({ ...spec, turns: 1 }).inductance;
        expect(one.inductance).toBeLessThanOrEqual(single * spec.turns ** 2 * (1 + 1e-12));
      }),
      { numRuns: 30 },
    );
  });

  it('a part of a turn lies between the whole ones', () => {
    const at = (turns: number) => frameAerial({ outline: 'square', side: 0.5, turns, pitch: 0.005, wire }).inductance;
    expect(at(10.5)).toBeGreaterThan(at(10));
    expect(at(10.5)).toBeLessThan(at(11));
  });

  it('hears in its plane, not across it', () => {
    const model = frameAerial({ outline: 'square', side: 1, turns: 10, pitch: 0.005, wire });
    // 2πNA/λ with λ = 299.79 m: 0.2096 m.
    expect(model.effectiveHeightAt(1e6)).toBeCloseTo(0.20958, 5);
    expect(towards(0)).toBe(1);
    expect(towards(model.nullDirection)).toBeCloseTo(0, 12);
    expect(model.warningsAt(1e6)).toEqual([{ code: 'aerial.frame-wire-long' }]);
    expect(model.warningsAt(2e5)).toEqual([]);
    expect(model.resistanceAt(0)).toBeCloseTo(model.dcResistance, 12);
  });

  it('refuses what cannot be wound', () => {
    const good: FrameSpec = { outline: 'square', side: 0.5, turns: 10, pitch: 0.005, wire };
    const bad: Partial<FrameSpec>[] = [
      { side: 0 },
      { turns: 0.5 },
      { turns: Number.NaN },
      { pitch: 1e-4 },
      { wire: { diameter: 0.1 } },
      { winding: 'spiral', turns: 60 },
    ];
    for (const change of bad)
      expect(() => frameAerial({ ...good, ...change }), JSON.stringify(change)).toThrow(RangeError);
  });
});
