// Sources beside each check; values from reference/capacitors.json.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import reference from '../../../../reference/capacitors.json' with { type: 'json' };
import { EPSILON_0 } from '../../units/quantities.ts';
import type { VaneLaw } from './law.ts';
import type { VariableSpec } from './variable.ts';
import { variableCapacitor } from './variable.ts';

const variable = (maximum: number, minimum?: number) => variableCapacitor({ kind: 'variable', maximum, minimum });
const LAWS: VaneLaw[] = ['semicircular', 'square-law', 'straight-line frequency', 'logarithmic'];
const entry = (id: string) => reference.entries.find((e) => e.id === id)!;
const position = fc.double({ min: 0, max: 1, noNaN: true });
const law = fc.constantFrom(...LAWS);

describe('variable capacitor by its vanes', () => {
  it('agrees with the handbook’s semicircular formula (NBS Circular 74, from memory, recomputed) within 0.01 %', () => {
    const { example } = (
      entry('parallel_plate_and_rotor') as never as { recomputed_check: { example: Record<string, number> } }
    ).recomputed_check;
    const c = variableCapacitor({
      kind: 'vanes',
      vanes: example.N_plates,
      outerRadius: example.r1_cm / 100,
      innerRadius: example.r2_cm / 100,
      gap: example.gap_cm / 100,
      minimum: 12e-12,
      law: 'semicircular',
    });
    // The tabulated example takes K = 1; air is 1.000585.
    expect((c.max - c.min) / 1.000585 / (example.C_pF * 1e-12)).toBeCloseTo(1, 4);
  });

  it('follows each law as it is defined (definition, exact)', () => {
    for (const name of LAWS) {
      const c = variableCapacitor({ kind: 'variable', maximum: 365e-12, minimum: 14e-12, law: name });
      const measure = {
        semicircular: (C: number) => C,
        'square-law': (C: number) => Math.sqrt(C),
        'straight-line frequency': (C: number) => 1 / Math.sqrt(C),
        logarithmic: Math.log,
      }[name];
      const [a, b] = [measure(c.min), measure(c.max)];
      for (const p of [0.1, 0.37, 0.5, 0.9]) expect((measure(c.capacitanceAt(p)) - a) / (b - a)).toBeCloseTo(p, 12);
      expect(c.angleAt(0.25)).toBeCloseTo(45, 12);
    }
  });

  it('keeps the law for the whole circuit when its strays were designed in', () => {
    const stray = 30e-12;
    const c = variableCapacitor({
      kind: 'variable',
      maximum: 365e-12,
      minimum: 14e-12,
      law: 'straight-line frequency',
      lawStray: stray,
      stray,
    });
    const f = (p: number) => 1 / Math.sqrt(c.capacitanceAt(p));
    expect((f(0.5) - f(0)) / (f(1) - f(0))).toBeCloseTo(0.5, 12);
  });

  it('draws the vane whose meshed area is the capacitance, at every angle', () => {
    fc.assert(
      fc.property(law, fc.integer({ min: 2, max: 31 }), position, (name, vanes, p) => {
        const spec = {
          kind: 'vanes',
          vanes,
          outerRadius: 0.03,
          innerRadius: 0.007,
          gap: 6e-4,
          minimum: 15e-12,
          law: name,
        } as const;
        const c = variableCapacitor(spec);
        const outline = c.rotorOutline(2001);
        // Sectors of the drawn edge from the leading edge to the angle turned, less the cut-out.
        let area = 0;
        for (let i = 1; i < 2001 && outline[i].angle <= Math.PI * p + 1e-12; i++)
          area +=
            0.5 *
            (((outline[i].radius + outline[i - 1].radius) / 2) ** 2 - 0.007 ** 2) *
            (outline[i].angle - outline[i - 1].angle);
        const C = (EPSILON_0 * 1.000585 * (vanes - 1) * area) / 6e-4;
        const step = (Math.PI / 2000) * 0.5 * 0.03 ** 2 * ((EPSILON_0 * (vanes - 1)) / 6e-4);
        expect(Math.abs(c.capacitanceAt(p) - c.min - C)).toBeLessThan(1.01 * step);
        expect(Math.max(...outline.map((q) => q.radius))).toBeCloseTo(0.03, 9);
      }),
      { numRuns: 40 },
    );
  });

  it('takes an area instead of a radius, and gives the same capacitor back', () => {
    for (const name of LAWS) {
      const a = variableCapacitor({ kind: 'vanes', vanes: 15, outerRadius: 0.025, gap: 5e-4, law: name });
      const area = ((a.max - a.min) * 5e-4) / (EPSILON_0 * 1.000585 * 14);
      const b = variableCapacitor({ kind: 'vanes', vanes: 15, area, gap: 5e-4, law: name });
      expect(b.max / a.max).toBeCloseTo(1, 9);
      expect(Math.max(...b.rotorOutline().map((q) => q.radius))).toBeCloseTo(0.025, 9);
    }
  });
});

describe('any variable capacitor', () => {
  const specs: VariableSpec[] = [
    { kind: 'vanes', vanes: 15, outerRadius: 0.025, gap: 5e-4, law: 'logarithmic', stray: 8e-12 },
    {
      kind: 'measured',
      points: [0, 40, 90, 130, 180].map((s, i) => ({ scale: s, capacitance: [12, 60, 170, 290, 372][i] * 1e-12 })),
      trimmer: 10e-12,
    },
    {
      kind: 'measured',
      points: [0, 40, 90, 130, 180].map((s, i) => ({ scale: s, capacitance: [372, 290, 170, 60, 12][i] * 1e-12 })),
    },
    { kind: 'foil', length: 0.2, width: 0.15, thickness: 1e-4 },
    { kind: 'plates', length: 0.1, width: 0.1, thickness: 1e-3, sheets: 5, padder: 300e-12, stray: 5e-12 },
    { kind: 'tubes', length: 0.15, innerDiameter: 0.02, gap: 2e-4, dielectric: 'polythene' },
    { kind: 'book', length: 0.15, width: 0.1, thickness: 2e-4, opening: 40 },
  ];
  for (const spec of specs)
    it(`${spec.kind}: meshing raises capacitance (common practice, no source) and the position can be found again`, () => {
      const c = variableCapacitor(spec);
      fc.assert(
        fc.property(position, position, (p, q) => {
          const [low, high] = p < q ? [p, q] : [q, p];
          expect(c.capacitanceAt(high)).toBeGreaterThanOrEqual(c.capacitanceAt(low) * (1 - 1e-12));
          const C = c.capacitanceAt(p);
          expect(c.capacitanceAt(c.positionFor(C)!) / C).toBeCloseTo(1, 9);
          expect(c.lossTangentAt(p)).toBeGreaterThanOrEqual(0);
          expect(c.lossTangentAt(p)).toBeLessThan(0.2);
        }),
      );
      expect(c.positionFor(c.min)).toBe(0);
      expect(c.positionFor(c.max)).toBe(1);
      expect(c.positionFor(c.max * 1.01)).toBeUndefined();
      expect(c.positionFor(c.min * 0.99)).toBeUndefined();
      expect(c.minRange[0]).toBeLessThan(c.min);
      expect(c.minRange[1]).toBeGreaterThan(c.min);
      expect(c.maxRange[0]).toBeLessThan(c.max);
      expect(c.maxRange[1]).toBeGreaterThan(c.max);
      expect(() => c.capacitanceAt(Number.NaN)).toThrow(RangeError);
    });

  it('reads a scale that runs backwards', () => {
    const c = variableCapacitor(specs[2]);
    expect(c.angleAt(0)).toBe(180);
    expect(c.capacitanceAt(0)).toBeCloseTo(12e-12, 20);
    expect(c.capacitanceAt(0.5)).toBeCloseTo(170e-12, 20);
  });

  it('says when measured points turn back', () => {
    const points = [10, 80, 70, 200].map((C, i) => ({ scale: 60 * i, capacitance: C * 1e-12 }));
    expect(variableCapacitor({ kind: 'measured', points }).warnings).toContainEqual({
      code: 'capacitor.measured-turns-back',
      from: 60,
      to: 120,
    });
  });

  it('guesses the minimum of a plain 500 pF variable within 10–30 pF and says so (common practice, no source)', () => {
    const c = variable(500e-12);
    expect(c.min).toBeGreaterThan(10e-12);
    expect(c.min).toBeLessThan(30e-12);
    expect(c.warnings[0].code).toBe('capacitor.minimum-typical');
    expect(variable(500e-12, 20e-12).warnings).toEqual([]);
    expect(c.outlineAssumed).toBe(true);
  });

  it('puts trimmer and strays across, the padder in series', () => {
    const c = variableCapacitor({
      kind: 'variable',
      maximum: 400e-12,
      minimum: 20e-12,
      trimmer: 15e-12,
      stray: 5e-12,
      padder: 400e-12,
    });
    expect(c.max).toBeCloseTo(220e-12, 20);
    expect(c.min).toBeCloseTo(20e-12 + (20 * 400e-12) / 420, 20);
  });

  it('refuses what cannot be', () => {
    expect(() => variable(Number.NaN)).toThrow(RangeError);
    expect(() => variable(10e-12, 20e-12)).toThrow(RangeError);
    expect(() => variableCapacitor({ kind: 'vanes', vanes: 1, outerRadius: 0.02, gap: 1e-3 })).toThrow(RangeError);
    expect(() => variableCapacitor({ kind: 'vanes', vanes: 9, outerRadius: 0.005, gap: 1e-3 })).toThrow(RangeError);
    expect(() => variableCapacitor({ kind: 'foil', length: -1, width: 0.1, thickness: 1e-4 })).toThrow(RangeError);
  });
});
