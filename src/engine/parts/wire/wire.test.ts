// Sources: reference/coils.json (each entry with its own); laws by fast-check.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import reference from '../../../../reference/coils.json' with { type: 'json' };
import { gaugeDiameter } from '../../units/gauge.ts';
import { enamelMaximum, enamelUsual } from './enamel.ts';
import { METALS, resistivity } from './metal.ts';
import { skinImpedance, transverseLoss, wireResistance } from './skin.ts';
import { COVERINGS, closePitch, overallDiameter, wireWeight } from './wire.ts';

const { computed, published } = reference;

describe('skin effect of a round wire', () => {
  it('agrees with the Bessel functions of an independent library to 1e-10', () => {
    for (const row of computed.skin_effect.points) {
      const z = skinImpedance(row.x);
      expect(z.re / row.Rac_over_Rdc - 1, `R at x = ${row.x}`).toBeCloseTo(0, 10);
      expect((z.im * 8) / row.x ** 2 / row.Li_over_Li0 - 1, `L at x = ${row.x}`).toBeCloseTo(0, 10);
    }
    for (const row of computed.proximity_butterworth.points)
      expect(transverseLoss(row.x) / row.G - 1).toBeCloseTo(0, 10);
  });

  it('agrees with the old printed tables to their last digit', () => {
    // Circular 74 table of R/R0; its entry at 2.5 is known to be 2 units high.
    for (const { x, R_over_R0 } of published.skin_effect_round_wire.values) {
      expect(Math.abs(skinImpedance(x).re - R_over_R0), `x = ${x}`).toBeLessThan(
        x === 2.5 ? 3e-4 : 1.1e-4 * Math.max(1, R_over_R0 / 5),
      );
    }
    for (const { x, G } of published.butterworth_H_G.values) expect(Math.abs(transverseLoss(x) - G)).toBeLessThan(1e-3);
  });

  it('gives copper its resistance to 0.01 %', () => {
    for (const row of computed.skin_effect.copper) {
      const r = wireResistance({ diameter: row.d, frequency: row.f });
      expect(r.resistancePerMetre / row.Rac_per_m - 1).toBeCloseTo(0, 8);
      expect(r.acToDcRatio / row.Rac_over_Rdc - 1).toBeCloseTo(0, 8);
    }
  });

  it('never falls with frequency', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 80, noNaN: true }),
        fc.double({ min: 1e-3, max: 1, noNaN: true }),
        (x, dx) => {
          expect(skinImpedance(x + dx).re).toBeGreaterThanOrEqual(skinImpedance(x).re * (1 - 1e-12));
        },
      ),
    );
  });

  it('refuses what is not a wire', () => {
    expect(() => wireResistance({ diameter: 0, frequency: 1e6 })).toThrow(RangeError);
    expect(() => wireResistance({ diameter: Number.NaN, frequency: 1e6 })).toThrow(RangeError);
    expect(() => resistivity('copper', 0)).toThrow(/200 to 500 K/);
  });
});

describe('metals', () => {
  it('copper follows IEC 60028', () => {
    for (const { T_C, rho } of published.copper_iec60028.recomputed_check) {
      expect(resistivity('copper', 273.15 + T_C) / rho - 1).toBeCloseTo(0, 6);
    }
  });
  it('aluminium has more resistance and less weight', () => {
    expect(resistivity('aluminium') / resistivity('copper')).toBeCloseTo(1.64, 2);
    expect(wireWeight({ diameter: 1e-3, metal: 'aluminium' }, 1)).toBeLessThan(wireWeight({ diameter: 1e-3 }, 1) / 3);
  });
});

describe('coverings', () => {
  it('enamel keeps to the largest diameters of the standard', () => {
    for (const { d_mm, max_od_grade1_mm, max_od_grade2_mm } of published.enamel_iec.values) {
      expect(enamelMaximum(d_mm * 1e-3, 1) * 1e3).toBeCloseTo(max_od_grade1_mm, 2);
      expect(enamelMaximum(d_mm * 1e-3, 2) * 1e3).toBeCloseTo(max_od_grade2_mm, 2);
    }
    for (const { swg, max_od_grade1_mm, max_od_grade2_mm } of published.enamel_swg.values) {
      const d = gaugeDiameter('SWG', swg)!;
      expect(Math.abs(enamelMaximum(d, 1) * 1e3 - max_od_grade1_mm)).toBeLessThan(0.0015);
      if (max_od_grade2_mm !== null)
        expect(Math.abs(enamelMaximum(d, 2) * 1e3 - max_od_grade2_mm)).toBeLessThan(0.0015);
    }
    // The same entry: real 0.100 mm grade 1 spans 0.108 to 0.117 mm.
    expect(enamelUsual(1e-4)).toBeGreaterThan(0.108e-3);
    expect(enamelUsual(1e-4)).toBeLessThan(0.117e-3);
  });

  it('every covering is thicker than none, and turns wound close do not overlap', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 5e-5, max: 2e-3, noNaN: true }),
        fc.constantFrom(...COVERINGS),
        (diameter, covering) => {
          const over = overallDiameter({ diameter, covering });
          expect(over).toBeGreaterThanOrEqual(diameter);
          expect(closePitch({ diameter, covering })).toBeGreaterThanOrEqual(over);
          for (const metal of METALS) expect(wireWeight({ diameter, covering, metal }, 1)).toBeGreaterThan(0);
        },
      ),
    );
    // Common practice, no source: double cotton on 28 SWG measures about 24 mils over all (22 to 26).
    const mils = overallDiameter({ diameter: 0.0148 * 0.0254, covering: 'double cotton' }) / 0.0254e-3;
    expect(mils).toBeGreaterThan(22);
    expect(mils).toBeLessThan(26);
  });
});
