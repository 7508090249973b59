// Computed references: method of moments, reference/generators/capacitor_fringe.py. Formulae: textbook, from memory.
import { describe, expect, it } from 'vitest';
import reference from '../../../../reference/capacitors.json' with { type: 'json' };
import { EPSILON_0 } from '../../units/quantities.ts';
import { DIELECTRICS } from './dielectrics.ts';
import { rectangularPlates } from './fringe.ts';
import { variableCapacitor } from './variable.ts';

const values = (id: string) => reference.entries.find((e) => e.id === id)!.values as never as Record<string, number>[];

describe('plates with their edges', () => {
  it('rectangles in air within 1 % of moments up to d = 0.05 of the width, 2.2 % at 0.1', () => {
    for (const { length, width, separation, capacitance } of values('plates_with_edges')) {
      const tolerance = separation / width <= 0.051 ? 0.01 : 0.022;
      const error = rectangularPlates(length, width, separation) / capacitance - 1;
      expect(Math.abs(error), `${length} × ${width} at ${separation}: ${error}`).toBeLessThan(tolerance);
    }
  });
  it('long strips on a sheet within 2 % of moments with the slab’s images', () => {
    for (const { width, separation, permittivity, capacitance_per_metre } of values('strips_on_sheet')) {
      // A long plate less a shorter one: what its ends add is gone.
      const C = (l: number) => rectangularPlates(l, width, separation, permittivity);
      const error = (C(200) - C(100)) / 100 / capacitance_per_metre - 1;
      expect(Math.abs(error), `${width} ${separation} ${permittivity}: ${error}`).toBeLessThan(0.02);
    }
  });
});

describe('home-made capacitors', () => {
  it('foil on paper: ε₀KA/d within 2 % (textbook) when thin', () => {
    const c = variableCapacitor({ kind: 'foil', length: 0.2, width: 0.15, thickness: 1e-4, permittivity: 2.6 });
    expect(c.max / ((EPSILON_0 * 2.6 * 0.03) / 1e-4)).toBeCloseTo(1, 1.7);
    expect(c.min).toBeLessThan(0.01 * c.max);
    expect(c.travel).toBe(0.2);
  });
  it('each further sheet adds a face', () => {
    const C = (sheets: number) =>
      variableCapacitor({ kind: 'foil', length: 0.2, width: 0.15, thickness: 1e-4, sheets }).max;
    expect(C(5) - C(4)).toBeCloseTo((EPSILON_0 * 2.6 * 0.03) / 1e-4, 16);
  });
  it('an air film in series: the textbook’s two layers', () => {
    const c = variableCapacitor({
      kind: 'foil',
      length: 0.3,
      width: 0.2,
      thickness: 1e-4,
      airGap: 2e-5,
      permittivity: 2.6,
    });
    expect(c.max / ((EPSILON_0 * 0.06) / (1e-4 / 2.6 + 2e-5))).toBeCloseTo(1, 1.7);
  });
  it('tube in tube: 2πε₀Kl/ln(b/a) within 2 % (textbook) when long', () => {
    const c = variableCapacitor({ kind: 'tubes', length: 0.3, innerDiameter: 0.02, gap: 3e-4, permittivity: 2.26 });
    expect(c.max / ((2 * Math.PI * EPSILON_0 * 2.26 * 0.3) / Math.log(1.03))).toBeCloseTo(1, 1.7);
  });
  it('a closed book is a pair of plates', () => {
    const c = variableCapacitor({ kind: 'book', length: 0.2, width: 0.1, thickness: 1e-4, permittivity: 3 });
    expect(c.max / ((EPSILON_0 * 3 * 0.02) / 1e-4)).toBeCloseTo(1, 1.7);
    expect(c.capacitanceAt(0.5)).toBeLessThan(0.05 * c.max);
  });
  it('loose foil is warned about, damp card too', () => {
    const c = variableCapacitor({ kind: 'foil', length: 0.2, width: 0.15, thickness: 1e-4, dielectric: 'card' });
    expect(c.warnings).toContainEqual(expect.objectContaining({ code: 'capacitor.air-film' }));
    expect(c.warnings).toContainEqual(expect.objectContaining({ code: 'capacitor.card-lossy' }));
    expect(c.maxRange[0]).toBeLessThan(0.7 * c.max);
  });
  it('the permittivity table is the published one', () => {
    const published = reference.entries.find((e) => e.id === 'dielectric_constants')!.values as never as Record<
      string,
      number[]
    >;
    const names = {
      paraffin_wax: 'wax',
      dry_paper: 'paper',
      paraffin_waxed_paper: 'waxed paper',
      mica_muscovite: 'mica',
      polyester_PET: 'polyester',
      soda_lime_glass: 'glass',
      pyrex: 'hard glass',
      polystyrene: 'polystyrene',
      PTFE: 'PTFE',
      polypropylene: 'polypropylene',
      bakelite: 'phenolic',
      ebonite: 'ebonite',
    } as const;
    for (const [theirs, ours] of Object.entries(names)) {
      const [low, high, usual] = published[theirs];
      expect(DIELECTRICS[ours].permittivity).toEqual([low, usual, high]);
    }
  });
});

describe('what a dielectric costs', () => {
  const warningsOf = (spec: object) =>
    variableCapacitor(spec as Parameters<typeof variableCapacitor>[0]).warnings.map(({ code }) => code);
  const foil = { kind: 'foil', length: 0.1, width: 0.08, thickness: 1e-4 };
  const vanes = { kind: 'vanes', outerRadius: 0.03, gap: 5e-4, vanes: 11 };
  const names = Object.keys(DIELECTRICS) as (keyof typeof DIELECTRICS)[];

  it.each(names)('%s is warned of where it loses as much as a coil does, and only then', (dielectric) => {
    const { lossTangent, ...rest } = DIELECTRICS[dielectric];
    const codes = [...warningsOf({ ...foil, dielectric }), ...warningsOf({ ...vanes, dielectric, lossTangent: 0.001 })];
    const own = 'caution' in rest ? rest.caution : 'capacitor.lossy-dielectric';
    expect(codes.filter((code) => code === own)).toHaveLength(lossTangent[1] >= 0.01 ? 2 : 0);
  });

  it('a sheet measured to be better is not', () => {
    expect(warningsOf({ ...foil, dielectric: 'polyester' })).toContain('capacitor.lossy-dielectric');
    expect(warningsOf({ ...foil, dielectric: 'polyester', lossTangent: 0.003 })).not.toContain(
      'capacitor.lossy-dielectric',
    );
  });
});
