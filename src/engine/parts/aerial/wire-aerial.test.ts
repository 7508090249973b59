import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import fullWave from '../../../../reference/aerial-full-wave.json' with { type: 'json' };
import reference from '../../../../reference/aerials.json' with { type: 'json' };
import { EPSILON_0, LIGHT_SPEED } from '../../units/quantities.ts';
import type { WireAerialShape } from './shapes.ts';
import { wireAerial } from './wire-aerial.ts';

const wire = { diameter: 0.002 };
const within = (got: number, want: number, tolerance: number, label: string) => {
  const error = Math.abs(got / want - 1);
  expect(error <= tolerance, `${label}: got ${got}, want ${want}, off by ${error}`).toBe(true);
};

describe('static charge, against 400-segment moments (reference/aerials.json)', () => {
  for (const row of reference.aerials) {
    const shape = row.kind.replace(' only', '');
    it(`${shape} ${row.h_top} m high, ${row.l_top} m long`, () => {
      const spec = {
        shape,
        height: row.h_top,
        length: row.l_top,
        base: row.z_base,
        wire: { diameter: 2 * row.wire_radius },
      };
      const model = wireAerial(spec as WireAerialShape);
      within(model.capacitance, row.C_n400, 5e-4, 'capacitance');
      within(model.effectiveHeight, row['h_eff_static=sum(q z)/Q'], 5e-4, 'effective height');
    });
  }

  it('and the seventeen capacitances of the same method listed beside Howe’s', () => {
    const howe = reference.published.find((entry) => entry.id === 'howe_average_potential')!;
    const rows = (howe.recomputed_check as unknown as { howe_vs_moment_method: (typeof reference.aerials)[number][] })
      .howe_vs_moment_method;
    expect(rows.length).toBe(17);
    for (const row of rows) {
      const shape = row.kind.replace(' only', '');
      const spec = {
        shape,
        height: row.h_top,
        length: row.l_top,
        base: row.z_base,
        wire: { diameter: 2 * row.wire_radius },
      };
      within(wireAerial(spec as WireAerialShape).capacitance, row.C_n400, 5e-4, `${shape} ${row.h_top} ${row.l_top}`);
    }
  });

  it('a wire far above ground has the capacitance of one alone (same reference)', () => {
    const alone = wireAerial({ shape: 'horizontal', height: 2000, length: 10, wire });
    within(alone.capacitance, reference.isolated_wire_10m_r1mm_no_ground['400'], 3e-3, 'capacitance');
  });

  it('a long low wire approaches 2πε₀/arcosh(h/a) per metre (textbook, image of a line charge)', () => {
    const [short, long] = [200, 400].map(
      (length) => wireAerial({ shape: 'horizontal', height: 1, length, wire }).capacitance,
    );
    within((long - short) / 200, (2 * Math.PI * EPSILON_0) / Math.acosh(1 / 0.001), 2e-3, 'per metre');
  });
});

describe('at frequency, against a full-wave sum (reference/aerial-full-wave.json)', () => {
  for (const row of fullWave.rows) {
    const spec = { ...row, wire: { diameter: 2 * row.wireRadius } } as unknown as WireAerialShape;
    const model = wireAerial(spec, { resistancePerMetre: () => 0 });
    const ratio = row.frequency / model.naturalFrequency;
    if (!(ratio < 1.8)) continue;
    it(`${row.shape} at ${row.frequency / 1e3} kHz, ${ratio.toFixed(2)} of its own frequency`, () => {
      const z = model.impedanceAt(row.frequency);
      const capacitive = 1 / (2 * Math.PI * row.frequency * model.capacitance);
      // Of the reactance of its capacitance: near resonance the two parts nearly cancel.
      const error = Math.abs(z.im - row.reactance) / Math.max(capacitive, Math.abs(row.reactance));
      expect(error).toBeLessThan(ratio < 0.9 ? 5e-3 : 0.035);
      within(z.re, row.resistance, 0.03, 'radiation resistance');
      within(
        model.effectiveHeightAt(row.frequency),
        row.effectiveHeight,
        ratio < 1.4 ? 5e-3 : 0.02,
        'effective height',
      );
    });
  }

  it('says so when it is too long to trust', () => {
    const model = wireAerial({ shape: 'inverted-L', height: 20, length: 60, base: 1, wire });
    expect(model.warningsAt(3e6)).toContainEqual(expect.objectContaining({ code: 'aerial.half-wave' }));
    expect(model.warningsAt(5e5)).toEqual(model.warnings);
  });
});

describe('laws of aerials', () => {
  const height = fc.double({ min: 3, max: 20, noNaN: true });
  const length = fc.double({ min: 3, max: 60, noNaN: true });
  const invertedL = (h: number, l: number, thickness = 0.002) =>
    wireAerial({ shape: 'inverted-L', height: h, length: l, base: 1, wire: { diameter: thickness } });
  const few = { numRuns: 15 };

  it('capacitance rises with length and thickness; a level wire’s falls with height', () => {
    fc.assert(
      fc.property(height, length, (h, l) => {
        const { capacitance } = invertedL(h, l);
        expect(invertedL(h, l * 1.1).capacitance).toBeGreaterThan(capacitance);
        expect(invertedL(h, l, 0.004).capacitance).toBeGreaterThan(capacitance);
        const level = (z: number) => wireAerial({ shape: 'horizontal', height: z, length: l, wire }).capacitance;
        expect(level(h * 1.1)).toBeLessThan(level(h));
      }),
      few,
    );
  });

  it('a level wire has its quarter-wave resonance at any height, and one far above ground that of a wire alone', () => {
    const anyHeight = fc.double({ min: Math.log(0.1), max: Math.log(2000), noNaN: true }).map(Math.exp);
    const anyLength = fc.double({ min: Math.log(0.5), max: Math.log(500), noNaN: true }).map(Math.exp);
    const at = (z: number, l: number) => wireAerial({ shape: 'horizontal', height: z, length: l, wire });
    fc.assert(
      fc.property(anyHeight, anyLength, (z, l) => {
        const quarterWave = LIGHT_SPEED / (4 * l);
        expect(at(z, l).naturalFrequency / quarterWave).toBeGreaterThan(0.95);
        expect(at(z, l).naturalFrequency / quarterWave).toBeLessThan(1.1);
      }),
      { numRuns: 40 },
    );
    within(at(2000, 10).inductance, at(1000, 10).inductance, 1e-3, 'inductance 2 km above ground, as 1 km above');
  });

  it('has an inductance above 0 and a natural frequency wherever its foot is', () => {
    const part = fc.double({ min: 0, max: 1, noNaN: true });
    fc.assert(
      fc.property(part, part, part, fc.integer({ min: 0, max: 200 }), (a, b, c, base) => {
        const up = base + 10 ** (3 * a - 1);
        const long = 10 ** (3 * b - 1);
        const far = Math.max(0.05, up + (2 * c - 1) * long);
        const shapes: WireAerialShape[] = [
          { shape: 'vertical', height: up, base, wire },
          { shape: 'T', height: up, length: long, base, wire },
          { shape: 'inverted-L', height: up, length: long, base, wire },
          {
            shape: 'sloping',
            height: up,
            length: 1.2 * Math.max(long, Math.abs(far - up)),
            farHeight: far,
            base,
            wire,
          },
        ];
        for (const shape of shapes) {
          const { inductance, naturalFrequency } = wireAerial(shape);
          expect(inductance, JSON.stringify(shape)).toBeGreaterThan(0);
          expect(naturalFrequency, JSON.stringify(shape)).toBeLessThan(1e9);
        }
      }),
      { numRuns: 30 },
    );
  });

  it('effective height lies between the middle of the wire and its top, and grows with the top wire', () => {
    fc.assert(
      fc.property(height, length, (h, l) => {
        const he = invertedL(h, l).effectiveHeight;
        expect(he).toBeGreaterThan((h + 1) / 2 - 0.02 * h);
        expect(he).toBeLessThan(h);
        expect(invertedL(h, 1.2 * l).effectiveHeight).toBeGreaterThan(he);
      }),
      few,
    );
  });

  it('a model twice the size has twice the capacitance and height, and half the frequency', () => {
    fc.assert(
      fc.property(height, length, (h, l) => {
        const make = (k: number) =>
          wireAerial(
            { shape: 'T', height: k * h, length: k * l, base: k, wire: { diameter: 0.002 * k } },
            { resistancePerMetre: () => 0 },
          );
        const [one, two] = [make(1), make(2)];
        expect(two.capacitance / one.capacitance).toBeCloseTo(2, 9);
        expect(two.effectiveHeight / one.effectiveHeight).toBeCloseTo(2, 9);
        expect(two.naturalFrequency / one.naturalFrequency).toBeCloseTo(0.5, 9);
        expect(two.impedanceAt(3e5).im / one.impedanceAt(6e5).im).toBeCloseTo(1, 8);
      }),
      few,
    );
  });

  it('tends to its static figures at low frequency', () => {
    const model = invertedL(10, 30);
    const z = model.impedanceAt(1000);
    within(-1 / (2 * Math.PI * 1000 * z.im), model.capacitance, 1e-5, 'capacitance');
    within(model.effectiveHeightAt(1000), model.effectiveHeight, 1e-5, 'effective height');
    const k = (2 * Math.PI * 1000) / LIGHT_SPEED;
    within(model.radiationResistanceAt(1000), 40 * (k * model.effectiveHeight) ** 2, 1e-4, 'radiation resistance');
  });

  it('the same wire described three ways is the same aerial', () => {
    const points = [
      [0, 0, 1],
      [0, 0, 9],
      [20, 0, 9],
    ] as const;
    const ways: WireAerialShape[] = [
      { shape: 'inverted-L', height: 9, length: 20, base: 1, wire },
      { shape: 'bent', points, wire },
      { shape: 'branched', points, joins: [0, 1], wire },
      { shape: 'sloping', height: 9, length: 20, farHeight: 9, base: 1, wire },
    ];
    const [first, ...rest] = ways.map((way) => wireAerial(way).capacitance);
    for (const c of rest) expect(c / first).toBeCloseTo(1, 12);
  });

  it('more wires side by side hold more, but less than in proportion', () => {
    const wires = (n: number) =>
      wireAerial({ shape: 'inverted-L', height: 10, length: 30, base: 1, wires: n, spacing: 1, wire }).capacitance;
    expect(wires(2)).toBeGreaterThan(1.2 * wires(1));
    expect(wires(2)).toBeLessThan(2 * wires(1));
    expect(wires(4)).toBeGreaterThan(wires(3));
  });
});

describe('what it refuses', () => {
  it('says what is wrong with sizes that cannot be built', () => {
    const bad: WireAerialShape[] = [
      { shape: 'inverted-L', height: -1, length: 20, base: 1, wire },
      { shape: 'inverted-L', height: 5, length: Number.NaN, base: 1, wire },
      { shape: 'vertical', height: 5, base: 6, wire },
      { shape: 'sloping', height: 10, farHeight: 2, length: 5, base: 1, wire },
      {
        shape: 'bent',
        points: [
          [0, 0, 1],
          [0, 0, 1],
        ],
        wire,
      },
      {
        shape: 'branched',
        points: [
          [0, 0, 1],
          [0, 0, 2],
        ],
        joins: [1],
        wire,
      },
      { shape: 'T', height: 5, length: 5, base: 1, wires: 1.5, wire },
      { shape: 'vertical', height: 5, base: 1, wire: { diameter: 0 } },
    ];
    for (const spec of bad) expect(() => wireAerial(spec), JSON.stringify(spec)).toThrow(RangeError);
    expect(() => wireAerial({ shape: 'vertical', height: 5, base: 1, wire }).impedanceAt(0)).toThrow(RangeError);
  });
});
