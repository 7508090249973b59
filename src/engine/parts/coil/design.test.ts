// Laws: every answer put back into the coil must give what was asked for. Self-capacitance: Medhurst's table in
// reference/coils.json.
import { describe, expect, it } from 'vitest';
import reference from '../../../../reference/coils.json' with { type: 'json' };
import { coilInductance, makeCoil } from './coil.ts';
import { bestWire, spreadFor, turnsFor, type Unwound } from './design.ts';

const off = (got: number, want: number) => Math.abs(got / want - 1);
const wire = { diameter: 4e-4, covering: 'enamel' } as const;

describe('self-capacitance', () => {
  it('of a single layer is Medhurst’s, between his points too', () => {
    const rows = reference.published.medhurst_H.values;
    for (const { l_over_D, H } of rows) {
      const D = 0.05;
      const turns = 50;
      const coil = makeCoil({
        shape: 'solenoid',
        turns,
        meanDiameter: D,
        pitch: (l_over_D * D) / turns,
        wire: { diameter: 5e-5 },
      });
      expect(off(coil.selfCapacitance, H * 5e-12), `l/D ${l_over_D}`).toBeLessThan(1e-9);
      expect(
        off(coil.selfResonance, 1 / (2 * Math.PI * Math.sqrt(coil.inductance * coil.selfCapacitance))),
      ).toBeLessThan(1e-12);
    }
  });

  it('orders windings as the trade knows them', () => {
    // Common practice, no source: piles have the most, bank winding far less for the same turns, basket and spider little.
    const C = (spec: Parameters<typeof makeCoil>[0]) => makeCoil(spec).selfCapacitance;
    const pile = C({ shape: 'multilayer', turnsPerLayer: 50, layers: 2, formerDiameter: 0.06, wire });
    const bank = C({ shape: 'bank-wound', turns: 100, layers: 2, formerDiameter: 0.06, wire });
    const single = C({ shape: 'solenoid', turns: 100, formerDiameter: 0.06, wire });
    expect(pile).toBeGreaterThan(4 * bank);
    expect(bank).toBeLessThan(2 * single);
    for (const woven of [
      C({ shape: 'basket', turns: 60, pegCircle: 0.07, wire }),
      C({ shape: 'spider', turns: 60, innerDiameter: 0.04, wire }),
    ]) {
      expect(woven).toBeGreaterThan(1e-12);
      expect(woven).toBeLessThan(8e-12);
    }
  });
});

describe('inverse problems', () => {
  const unwound: Unwound[] = [
    { shape: 'solenoid', formerDiameter: 0.063, wire },
    { shape: 'solenoid', formerDiameter: 0.1, pitch: 2e-3, wire },
    { shape: 'multilayer', turnsPerLayer: 30, formerDiameter: 0.03, wire },
    { shape: 'bank-wound', layers: 3, formerDiameter: 0.05, wire },
    { shape: 'spiral', innerDiameter: 0.03, wire },
    { shape: 'spider', innerDiameter: 0.03, wire },
    { shape: 'basket', pegCircle: 0.08, wire },
  ];

  it('turns for an inductance give that inductance', () => {
    for (const coil of unwound) {
      for (const L of [3e-5, 2e-4, 2.2e-3]) {
        const found = turnsFor(L, coil)!;
        // A multilayer coil of part of a layer is a tap on the full one.
        if (coil.shape === 'multilayer') {
          const full = makeCoil({ ...coil, layers: Math.ceil(found.turns / coil.turnsPerLayer) });
          expect(off(full.partial(0, found.whole), found.inductance), coil.shape).toBeLessThan(1e-9);
        } else {
          const back = coilInductance({ ...coil, turns: found.whole } as Parameters<typeof coilInductance>[0]);
          expect(off(back, found.inductance), coil.shape).toBeLessThan(1e-9);
        }
        expect(off(found.inductance, L)).toBeLessThan(2.2 / found.whole);
        expect(found.room).toBeGreaterThan(0);
      }
    }
    expect(turnsFor(1e4, unwound[0])).toBeUndefined();
    expect(() => turnsFor(0, unwound[0])).toThrow(RangeError);
  });

  it('turns spread out lower the inductance to what is wanted', () => {
    const coil = { shape: 'solenoid', turns: 75, formerDiameter: 0.063, wire } as const;
    const now = coilInductance(coil);
    const spread = spreadFor(0.8 * now, coil)!;
    expect(off(coilInductance({ ...coil, pitch: spread.pitch }), 0.8 * now)).toBeLessThan(1e-9);
    expect(spread.lengthening).toBeGreaterThan(0);
    expect(spreadFor(1.5 * now, coil)).toBeUndefined();
  });

  it('the best wire is neither the thickest nor the thinnest, and every choice does the job', () => {
    const choices = bestWire({ inductance: 2e-4, frequency: 1e6, formerDiameter: 0.063, longest: 0.08 });
    expect(choices.length).toBeGreaterThan(5);
    for (const c of choices) {
      expect(c.length).toBeLessThanOrEqual(0.08 * 1.0001);
      const L = coilInductance({
        shape: 'solenoid',
        formerDiameter: 0.063,
        wire: c.wire,
        turns: c.turns,
        pitch: c.pitch,
      });
      expect(off(L, 2e-4)).toBeLessThan(0.03);
      expect(c.q).toBeLessThanOrEqual(choices[0].q);
    }
    // Common practice, no source: wire about half to three quarters of the pitch does best.
    const best = choices[0];
    expect(best.wire.diameter / best.pitch).toBeGreaterThan(0.4);
    expect(best.wire.diameter / best.pitch).toBeLessThan(0.85);
  });
});

describe('a coil says when it cannot be as described', () => {
  it('turns closer than the wire allows', () => {
    const tight = makeCoil({ shape: 'solenoid', turns: 20, meanDiameter: 0.05, pitch: 4.1e-4, wire });
    expect(tight.warnings).toContainEqual(expect.objectContaining({ code: 'coil.turns-do-not-fit' }));
    const through = makeCoil({ shape: 'solenoid', turns: 20, meanDiameter: 0.05, pitch: 3e-4, wire });
    expect(through.warnings).toContainEqual(expect.objectContaining({ code: 'coil.turns-overlap' }));
    expect(Number.isFinite(through.qAt(1e6))).toBe(true);
  });

  it('and every kind has finite figures', () => {
    for (const coil of [
      makeCoil({ shape: 'solenoid', turns: 0.5, meanDiameter: 0.05, wire }),
      makeCoil({ shape: 'solenoid', turns: 45.5, meanDiameter: 0.05, wire }),
      makeCoil({ shape: 'multilayer', turnsPerLayer: 1, layers: 1, innerDiameter: 0.05, wire }),
      makeCoil({ shape: 'multilayer', turnsPerLayer: 1, layers: 9, innerDiameter: 0.05, wire }),
      makeCoil({ shape: 'multilayer', turnsPerLayer: 60, layers: 30, innerDiameter: 0.03, wire }),
      makeCoil({ shape: 'bank-wound', turns: 3, layers: 4, innerDiameter: 0.05, wire }),
      makeCoil({ shape: 'spiral', turns: 1, innerDiameter: 0.05, wire, former: 'card' }),
      makeCoil({ shape: 'core', turns: 12.5, perTurnSquared: 1e-7, wire }),
    ]) {
      for (const x of [
        coil.inductance,
        coil.selfCapacitance,
        coil.selfResonance,
        coil.resistanceAt(1e6),
        coil.qAt(2e5),
        coil.outerDiameter,
        coil.windingLength,
        coil.weight,
      ]) {
        expect(x, `${coil.shape} of ${coil.turns}`).toBeGreaterThan(0);
        expect(Number.isFinite(x)).toBe(true);
      }
    }
  });
});
