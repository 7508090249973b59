// Sources: definitions (exact); reference/loads.json for published figures; circuit theory for the transformer.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import reference from '../../../../reference/loads.json' with { type: 'json' };
import { type Element, valueAt } from '../../network/elements.ts';
import { type Complex, complex, magnitude, reciprocal, subtract } from '../../numerics/complex.ts';
import { solveLinear } from '../../numerics/linear-solve.ts';
import type { LoadSpec } from './load.ts';
import { audioLoad } from './load.ts';
import { type Load, meanImpedance } from './model.ts';

const values = (id: string) => reference.entries.find((e) => e.id === id)!.values as never as Record<string, number>;
const PHONES: LoadSpec = { kind: 'phones', resistance: 2000 };
const EVERY: LoadSpec[] = [
  PHONES,
  { kind: 'phones', make: 'balanced armature', resistance: 65, capacitance: 0 },
  { kind: 'phones', resistance: 4000, eddyFactor: 0, impedance: 15000 },
  { kind: 'crystal earpiece', capacitance: 15e-9, resistor: 68e3 },
  { kind: 'moving-coil phones', impedance: 32 },
  { kind: 'amplifier', inputResistance: 1e5, couplingCapacitor: 1e-7, loadResistor: 1e5, soundAtFullInput: 80 },
  { kind: 'amplifier', inputResistance: 47e3, soundAtFullInput: 80, supply: 'mains' },
  {
    kind: 'moving-coil phones',
    impedance: 32,
    transformer: {
      ratio: 20,
      primaryResistance: 400,
      secondaryResistance: 2,
      primaryInductance: 25,
      leakage: 0.02,
      windingCapacitance: 2e-10,
    },
  },
  {
    kind: 'crystal earpiece',
    capacitance: 2e-9,
    resistor: 1e5,
    transformer: { ratio: 0.5, primaryResistance: 300, primaryInductance: 40 },
  },
  { kind: 'moving-coil phones', impedance: 64, transformer: { ratio: 15 } },
];

/** A small nodal solver of its own: 1 V between "a" and "earth". */
function solve(elements: readonly Element[], f: number) {
  const w = 2 * Math.PI * f;
  const two = elements.filter((e) => e.kind !== 'mutual');
  const names = [...new Set(two.flatMap((e) => [e.from, e.to]))].filter((n) => n !== 'earth');
  const coils = two.filter((e) => e.kind === 'inductor');
  const n = names.length + coils.length + 1;
  const re = Array.from({ length: n }, () => new Array<number>(n).fill(0));
  const im = Array.from({ length: n }, () => new Array<number>(n).fill(0));
  const put = (i: number, j: number, z: Complex) => {
    if (i < 0 || j < 0) return;
    re[i][j] += z.re;
    im[i][j] += z.im;
  };
  const node = (name: string) => names.indexOf(name);
  const one = complex(1);
  const minus = complex(-1);
  for (const e of two) {
    if (e.kind !== 'resistor' && e.kind !== 'capacitor') continue;
    const y =
      e.kind === 'resistor'
        ? complex(1 / valueAt(e.resistance, f))
        : complex(w * e.capacitance * valueAt(e.lossTangent ?? 0, f), w * e.capacitance);
    const [a, b] = [node(e.from), node(e.to)];
    put(a, a, y);
    put(b, b, y);
    put(a, b, subtract(complex(0), y));
    put(b, a, subtract(complex(0), y));
  }
  const row = (name: string) => names.length + coils.findIndex((c) => c.id === name);
  for (const c of coils) {
    const i = row(c.id);
    const scale = 1 / (w * c.inductance);
    put(node(c.from), i, one);
    put(node(c.to), i, minus);
    put(i, node(c.from), complex(scale));
    put(i, node(c.to), complex(-scale));
    put(i, i, complex(-valueAt(c.resistance, f) * scale, -1));
    for (const m of elements) {
      if (m.kind !== 'mutual' || (m.first !== c.id && m.second !== c.id)) continue;
      put(i, row(m.first === c.id ? m.second : m.first), complex(0, -w * m.mutual * scale));
    }
  }
  const source = n - 1;
  put(node('a'), source, one);
  put(source, node('a'), one);
  const A = new Float64Array(4 * n * n);
  for (let i = 0; i < n; i++)
    for (let j = 0; j < n; j++) {
      A[i * 2 * n + j] = re[i][j];
      A[i * 2 * n + n + j] = -im[i][j];
      A[(n + i) * 2 * n + j] = im[i][j];
      A[(n + i) * 2 * n + n + j] = re[i][j];
    }
  const b = new Float64Array(2 * n);
  b[source] = 1;
  const x = solveLinear(A, b);
  const voltage = (name: string) => (name === 'earth' ? complex(0) : complex(x[node(name)], x[n + node(name)]));
  return { voltage, current: complex(-x[source], -x[n + source]) };
}

describe('every load', () => {
  for (const spec of EVERY) {
    const load = audioLoad(spec);
    it(`${load.sort.kind}: its elements have the impedance and the output that its formulas give`, () => {
      for (const f of [60, 300, 1000, 3000, 8000]) {
        const network = load.elements('a', 'earth');
        const { voltage, current } = solve(network.elements, f);
        const z = load.impedanceAt(f);
        // A winding ratio k of 1 − 1e-9 leaves seven good digits.
        expect(magnitude(subtract(reciprocal(current), z)) / magnitude(z)).toBeLessThan(1e-6);
        const out = subtract(voltage(network.output.from), voltage(network.output.to));
        const transfer = load.transferAt(f);
        expect(magnitude(subtract(out, transfer)) / magnitude(transfer)).toBeLessThan(1e-6);
        // No more power comes out than goes in.
        const given = load.powerAt(f, magnitude(transfer));
        expect(given).toBeLessThanOrEqual(reciprocal(z).re * (1 + 1e-6));
        expect(given).toBeGreaterThan(0);
      }
    });
    it(`${load.sort.kind}: ten times the voltage is 20 dB, unless an amplifier clips`, () => {
      fc.assert(
        fc.property(
          fc.double({ min: 100, max: 8000, noNaN: true }),
          fc.double({ min: 1e-6, max: 1e-3, noNaN: true }),
          (f, V) => {
            expect(load.soundPressureAt(f, 10 * V) - load.soundPressureAt(f, V)).toBeCloseTo(20, 9);
          },
        ),
      );
      expect(load.soundPressureAt(1000, 0)).toBe(Number.NEGATIVE_INFINITY);
    });
    it(`${load.sort.kind}: every element has an id of its own`, () => {
      const ids = load.elements('a', 'earth').elements.map((e) => e.id);
      expect(new Set(ids).size).toBe(ids.length);
    });
  }
});

describe('magnetic phones', () => {
  it('measure six times their direct resistance from 300 to 3300 Hz (published rule of thumb)', () => {
    const { average_AF_impedance_over_DC_resistance: rise } = values('headphones_magnetic');
    for (const resistance of [1000, 2000, 4000]) {
      const load = audioLoad({ kind: 'phones', resistance, capacitance: 0 });
      expect(meanImpedance(load.impedanceAt) / resistance).toBeCloseTo(rise, 6);
      expect(load.directResistance).toBe(resistance);
    }
  });
  it('impedance rises with frequency, resistance too', () => {
    const load = audioLoad({ ...PHONES, capacitance: 0 } as LoadSpec);
    let last = complex(0);
    for (const f of [100, 300, 1000, 3000]) {
      const z = load.impedanceAt(f);
      expect(z.re).toBeGreaterThan(last.re);
      expect(z.im).toBeGreaterThan(last.im);
      last = z;
    }
  });
  it('takes the impedance measured at 1 kHz', () => {
    const load = audioLoad({ kind: 'phones', resistance: 2000, impedance: 9000, capacitance: 0 });
    expect(magnitude(load.impedanceAt(1000))).toBeCloseTo(9000, 6);
  });
  it('give their rated level for a milliwatt (definition), within the published bounds when it is not known', () => {
    const load = audioLoad({ ...PHONES, sensitivity: 104 } as LoadSpec);
    const V = Math.sqrt(1e-3 / reciprocal(load.impedanceAt(1000)).re);
    expect(load.powerAt(1000, V)).toBeCloseTo(1e-3, 12);
    expect(load.soundPressureAt(1000, V)).toBeCloseTo(104, 6);
    const bounds = reference.entries.find((e) => e.id === 'headphone_levels')!.values as never as Record<
      string,
      [number, number]
    >;
    for (const [make, key] of [
      ['magnetic', 'old_single_pole_2x2000ohm_dB_SPL_per_mW_1kHz'],
      ['balanced armature', 'balanced_armature_sound_powered_dB_SPL_per_mW'],
    ] as const) {
      const { level } = audioLoad({ kind: 'phones', make, resistance: 2000 }).sensitivity;
      expect(level).toBeGreaterThan(bounds[key][0]);
      expect(level).toBeLessThan(bounds[key][1]);
    }
  });
  it('a measured response is followed at constant current, relative to 1 kHz', () => {
    const response = [100, 1000, 4000].map((frequency, i) => ({ frequency, level: [-20, 5, -5][i] }));
    const load = audioLoad({ kind: 'phones', resistance: 2000, capacitance: 0, response });
    const V = (f: number) => magnitude(load.impedanceAt(f)) / magnitude(load.impedanceAt(1000));
    const at = (f: number) => load.soundPressureAt(f, V(f)) - load.soundPressureAt(1000, 1);
    expect(at(100)).toBeCloseTo(-25, 9);
    expect(at(4000)).toBeCloseTo(-10, 9);
  });
});

describe('crystal earpiece', () => {
  it('is its capacitance (published: 500 pF is 318 kΩ at 1 kHz) and wants a resistor', () => {
    const { rochelle_type_capacitance_F: C, Z_500pF_1kHz_ohm: Z, dc_resistance_ohm: R } = values('crystal_earpiece');
    const load = audioLoad({ kind: 'crystal earpiece', capacitance: C });
    expect(magnitude(load.impedanceAt(1000)) / Z).toBeCloseTo(1, 2);
    expect(load.directResistance).toBe(R);
    expect(load.warnings[0].code).toBe('load.earpiece-without-resistor');
    const drained = audioLoad({ kind: 'crystal earpiece', capacitance: C, resistor: 68e3 });
    expect(drained.directResistance).toBeCloseTo(1 / (1 / 68e3 + 1 / R), 6);
    expect(drained.warnings.map((w) => w.code)).not.toContain('load.earpiece-without-resistor');
    expect(
      audioLoad({ kind: 'crystal earpiece', capacitance: C, sensitivity: 101 }).soundPressureAt(1000, 1),
    ).toBeCloseTo(101, 9);
  });
});

describe('transformer', () => {
  const inner: LoadSpec = { kind: 'moving-coil phones', impedance: 32, sensitivity: 100 };
  it('ideal: n² the impedance and 1/n the voltage (definition), to 0.01 dB from 50 Hz', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.2, max: 60, noNaN: true }),
        fc.double({ min: 50, max: 10000, noNaN: true }),
        (ratio, f) => {
          const load = audioLoad({ ...inner, transformer: { ratio } });
          const reflected = 32 * ratio ** 2;
          expect(magnitude(load.impedanceAt(f)) / reflected).toBeCloseTo(1, 2);
          expect(Math.abs(20 * Math.log10(magnitude(load.transferAt(f)) * ratio))).toBeLessThan(0.01);
        },
      ),
    );
  });
  it('lossy: loses in windings and iron, and says so when the primary is too small', () => {
    const t = { ratio: 20, primaryResistance: 500, secondaryResistance: 1, primaryInductance: 30, leakage: 0.01 };
    const lossy = audioLoad({ ...inner, transformer: t });
    const conductance = (z: Complex) => reciprocal(z).re;
    const taken = conductance(lossy.impedanceAt(1000));
    const given = magnitude(lossy.transferAt(1000)) ** 2 * conductance(audioLoad(inner).transducerImpedanceAt(1000));
    const e = given / taken;
    // Windings alone: 32/(32 + 1 + 500/400).
    expect(e).toBeLessThan(32 / (32 + 1 + 500 / 400));
    expect(e).toBeGreaterThan(0.85);
    expect(lossy.directResistance).toBe(500);
    expect(audioLoad({ ...inner, transformer: { ...t, primaryInductance: 1 } }).warnings).toContainEqual(
      expect.objectContaining({ code: 'load.transformer-primary-small' }),
    );
  });
  it('low-impedance phones without one are warned about (common practice, no source)', () => {
    expect(audioLoad(inner).warnings).toContainEqual(
      expect.objectContaining({ code: 'load.moving-coil-without-transformer' }),
    );
    expect(audioLoad({ ...inner, transformer: { ratio: 25 } }).warnings.map((w) => w.code)).not.toContain(
      'load.moving-coil-without-transformer',
    );
  });
});

describe('amplifier', () => {
  it('gives its rated sound for 10 mV, clips, and speaks of isolation on the mains', () => {
    const load: Load = audioLoad({
      kind: 'amplifier',
      inputResistance: 1e5,
      soundAtFullInput: 80,
      loudest: 95,
      supply: 'mains',
    });
    expect(load.soundPressureAt(1000, 0.01)).toBeCloseTo(80, 9);
    expect(load.soundPressureAt(1000, 1)).toBe(95);
    expect(load.cautions).toEqual(['load.mains-amplifier']);
  });
  it('works its sound out from gain, speaker and distance', () => {
    const load = audioLoad({ kind: 'amplifier', inputResistance: 1e5, gain: 40, speaker: { level: 88, distance: 2 } });
    // 10 mV × 100 = 1 V; 1 V re 2.83 V is −9.04 dB; 2 m is −6.02 dB.
    expect(load.soundPressureAt(1000, 0.01)).toBeCloseTo(88 - 9.036 - 6.021, 2);
  });
  it('says when a coupling capacitor leaves no path for direct current', () => {
    const load = audioLoad({ kind: 'amplifier', inputResistance: 1e5, couplingCapacitor: 1e-7, soundAtFullInput: 80 });
    expect(load.directResistance).toBe(Number.POSITIVE_INFINITY);
    expect(load.warnings).toContainEqual(
      expect.objectContaining({ code: 'load.coupling-capacitor-blocks-direct-current' }),
    );
  });
});

it('refuses what cannot be', () => {
  expect(() => audioLoad({ kind: 'phones', resistance: -1 })).toThrow(RangeError);
  expect(() => audioLoad({ kind: 'phones', resistance: 2000, impedance: 1000 })).toThrow(RangeError);
  expect(() => audioLoad({ kind: 'crystal earpiece', capacitance: Number.NaN })).toThrow(RangeError);
  expect(() => audioLoad({ kind: 'moving-coil phones', impedance: 32, transformer: { ratio: 0 } })).toThrow(RangeError);
});
