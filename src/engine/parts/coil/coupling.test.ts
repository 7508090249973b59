// Sources: reference/coils.json, coaxial pairs by an independent sum over turns. Tilted coils: brute force over every turn
// and the dipole limit.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import reference from '../../../../reference/coils.json' with { type: 'json' };
import { makeCoil } from './coil.ts';
import { couple } from './coupling.ts';

const solenoid = (turns: number, meanDiameter: number, pitch: number) =>
  makeCoil({ shape: 'solenoid', turns, meanDiameter, pitch, wire: { diameter: 0.9 * pitch } });
const off = (got: number, want: number) => Math.abs(got / want - 1);

describe('coupling', () => {
  it('of coaxial coils equals the independent sums to 1e-8', () => {
    for (const r of reference.computed.coaxial_pairs) {
      const a = solenoid(r.N1, r.D1, r.pitch1);
      const b = solenoid(r.N2, r.D2, r.pitch2);
      const offset = r.z_first_turn_coil2 + ((r.N2 - 1) * r.pitch2) / 2 - ((r.N1 - 1) * r.pitch1) / 2;
      const { mutualInductance, couplingCoefficient } = couple(a, b, { offset });
      expect(off(mutualInductance, r.M), r.note).toBeLessThan(1e-8);
      expect(off(couplingCoefficient, r.k), r.note).toBeLessThan(1e-8);
      // The tilted sum meets the straight one as the tilt vanishes.
      expect(off(couple(a, b, { offset, tilt: 1e-5 }).mutualInductance, r.M), r.note).toBeLessThan(5e-4);
    }
  });

  it('is the same both ways, whatever the tilt and shift', () => {
    const a = solenoid(40, 0.08, 8e-4);
    const b = solenoid(30, 0.05, 6e-4);
    fc.assert(
      // Whole hundredths, spread evenly: random doubles crowd at the ends.
      fc.property(fc.integer({ min: 0, max: 314 }), fc.integer({ min: 7, max: 30 }), (hundredths, centimetres) => {
        const [tilt, offset] = [hundredths / 100, centimetres / 100];
        // Seen from the second coil, the first stands at this place.
        const there = couple(a, b, { offset, tilt }).mutualInductance;
        const back = couple(b, a, {
          offset: offset * Math.cos(tilt),
          shift: offset * Math.sin(tilt),
          tilt,
        }).mutualInductance;
        const k = Math.sqrt(a.inductance * b.inductance);
        expect(Math.abs(there - back) / k).toBeLessThan(1e-5);
      }),
      { numRuns: 40 },
    );
  });

  it('far away is that of two dipoles', () => {
    const a = solenoid(10, 0.02, 5e-4);
    const b = solenoid(12, 0.03, 5e-4);
    const mu0 = 4e-7 * Math.PI;
    const moment = 10 * 12 * (Math.PI * 0.01 ** 2) * (Math.PI * 0.015 ** 2);
    const d = 2;
    const at = (placing: { offset: number; tilt?: number; shift?: number }) => couple(a, b, placing).mutualInductance;
    expect(off(at({ offset: d }), (mu0 * 2 * moment) / (4 * Math.PI * d ** 3))).toBeLessThan(1e-3);
    expect(off(at({ offset: d, tilt: 1 }), (mu0 * 2 * moment * Math.cos(1)) / (4 * Math.PI * d ** 3))).toBeLessThan(
      1e-3,
    );
    // Side by side the far coil is linked backwards, half as strongly.
    expect(off(at({ offset: 0, shift: d }), (-mu0 * moment) / (4 * Math.PI * d ** 3))).toBeLessThan(1e-3);
  });

  it('keeps below 1 wherever the coils are put, and vanishes at right angles', () => {
    const kinds = [
      solenoid(60, 0.05, 5e-4),
      solenoid(15, 0.051, 5e-4),
      makeCoil({ shape: 'spiral', turns: 30, innerDiameter: 0.03, wire: { diameter: 4e-4, covering: 'enamel' } }),
      makeCoil({
        shape: 'multilayer',
        turnsPerLayer: 10,
        layers: 4,
        innerDiameter: 0.04,
        wire: { diameter: 3e-4, covering: 'enamel' },
      }),
    ];
    fc.assert(
      fc.property(
        fc.constantFrom(...kinds),
        fc.constantFrom(...kinds),
        fc.double({ min: -0.1, max: 0.1, noNaN: true }),
        fc.constantFrom(0, 0.3, 1.2, Math.PI),
        (a, b, offset, tilt) => {
          expect(Math.abs(couple(a, b, { offset, tilt }).couplingCoefficient)).toBeLessThan(1);
        },
      ),
      { numRuns: 40 },
    );
    expect(Math.abs(couple(kinds[0], kinds[2], { offset: 0, tilt: Math.PI / 2 }).couplingCoefficient)).toBeLessThan(
      1e-9,
    );
    expect(couple(kinds[0], kinds[0], { offset: 0 }).warnings).toEqual([{ code: 'coil.windings-overlap' }]);
  });

  it('falls as coils are drawn apart', () => {
    const a = solenoid(60, 0.05, 5e-4);
    const b = solenoid(20, 0.05, 5e-4);
    let last = 1;
    for (let offset = 0.03; offset < 0.3; offset += 0.01) {
      const { couplingCoefficient } = couple(a, b, { offset });
      expect(couplingCoefficient).toBeLessThan(last);
      last = couplingCoefficient;
    }
  });

  it('cannot be computed for a core', () => {
    const core = makeCoil({ shape: 'core', turns: 20, perTurnSquared: 1e-7, wire: { diameter: 4e-4 } });
    expect(() => couple(core, solenoid(10, 0.05, 5e-4), { offset: 0 })).toThrow('coil.place-unknown');
  });
});

describe('variometer', () => {
  const stator = solenoid(40, 0.08, 8e-4);
  const rotor = solenoid(30, 0.05, 6e-4);

  it('agrees with the sum over every turn and fine quadrature to 0.05 %', () => {
    // Independent of the condensed rings: each pair of turns, mutual inductance of inclined circles by Neumann's integral.
    const M = (tilt: number) => {
      let sum = 0;
      const points = 96;
      for (let i = 0; i < 40; i += 1) {
        for (let j = 0; j < 30; j += 1) {
          sum += inclined(0.04, (i - 19.5) * 8e-4, 0.025, (j - 14.5) * 6e-4, tilt, points);
        }
      }
      return sum;
    };
    for (const tilt of [0.6]) {
      expect(off(couple(stator, rotor, { offset: 0, tilt }).mutualInductance, M(tilt))).toBeLessThan(5e-4);
    }
  });

  it('runs from aiding to opposing, nothing when crossed', () => {
    const at = (tilt: number) => couple(stator, rotor, { offset: 0, tilt }).mutualInductance;
    const M = at(0);
    expect(M).toBeGreaterThan(0);
    expect(at(Math.PI)).toBeCloseTo(-M, 12);
    expect(Math.abs(at(Math.PI / 2))).toBeLessThan(1e-9 * M);
    for (const tilt of [0.3, 0.8, 1.3]) expect(at(tilt)).toBeLessThan(at(tilt - 0.2));
  });
});

/** Neumann's integral ∮∮ dl·dl′/r for two circles whose axes cross at an angle. */
function inclined(r1: number, z1: number, r2: number, z2: number, tilt: number, n: number): number {
  let sum = 0;
  for (let p = 0; p < n; p++) {
    const a = (2 * Math.PI * p) / n;
    const [ca, sa] = [Math.cos(a), Math.sin(a)];
    for (let q = 0; q < n; q++) {
      const b = (2 * Math.PI * q) / n;
      const [cb, sb] = [Math.cos(b), Math.sin(b)];
      const x = r2 * cb * Math.cos(tilt) + z2 * Math.sin(tilt) - r1 * ca;
      const y = r2 * sb - r1 * sa;
      const z = z2 * Math.cos(tilt) - r2 * cb * Math.sin(tilt) - z1;
      sum += (sa * sb * Math.cos(tilt) + ca * cb) / Math.hypot(x, y, z);
    }
  }
  return (1e-7 * sum * r1 * r2 * (2 * Math.PI) ** 2) / n ** 2;
}
