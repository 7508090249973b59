import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isLayered, layerSums } from './layer-sums.ts';
import { ringMutual, ringSelf } from './ring.ts';
import { windingOf } from './shapes.ts';
import type { Winding } from './winding.ts';

/** Every turn with every turn, one by one. */
function oneByOne(w: Winding, a: number, b: number): number {
  let sum = 0;
  for (let i = 0; i < a; i++)
    for (let j = 0; j < b; j++)
      sum +=
        i === j ? ringSelf(w.radius[i], w.wireRadius) : ringMutual(w.radius[i], w.radius[j], Math.abs(w.z[i] - w.z[j]));
  return sum;
}

const multilayer = (turnsPerLayer: number, layers: number): Winding =>
  windingOf({
    shape: 'multilayer',
    turnsPerLayer,
    layers,
    innerDiameter: 0.02,
    wire: { diameter: 3e-4 },
  });

describe('sums over a coil wound layer upon layer', () => {
  it('are those of every pair of turns, from any turn to any other', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 2, max: 24 }),
        fc.integer({ min: 1, max: 6 }),
        fc.nat(),
        fc.nat(),
        (n, layers, x, y) => {
          const w = multilayer(n, layers);
          const [a, b] = [x % (n * layers + 1), y % (n * layers + 1)];
          const sum = layerSums(w)(a, b);
          const all = oneByOne(w, n * layers, n * layers);
          expect(Math.abs(sum - oneByOne(w, a, b)) / all).toBeLessThan(1e-12);
        },
      ),
      { numRuns: 60 },
    );
  });

  it('leave a part of few turns exact to 1e-9 in a layer of two thousand', () => {
    const w = multilayer(2000, 2);
    const S = layerSums(w);
    const part = S(1503, 1503) - 2 * S(1503, 1500) + S(1500, 1500);
    const few = multilayer(3, 1);
    expect(Math.abs(part / oneByOne(few, 3, 3) - 1)).toBeLessThan(1e-9);
  });

  it('take as many inductances of two rings as there are distances, not as there are pairs of turns', () => {
    const w = multilayer(4000, 5);
    let asked = 0;
    const counted: Winding = {
      ...w,
      radii: new Proxy(w.radii, {
        get: (radii, key) => {
          if (typeof key === 'string' && /^\d+$/.test(key)) asked++;
          return Reflect.get(radii, key);
        },
      }),
    };
    const S = layerSums(counted);
    for (let k = 1; k <= 200; k++) S(100 * k, 20_000 - 7 * k);
    expect(asked).toBeLessThan(2.5 * 4000 * 15);
  });

  it('are for full layers only', () => {
    expect(isLayered(multilayer(20, 3))).toBe(true);
    expect(isLayered(windingOf({ shape: 'spiral', turns: 20, innerDiameter: 0.05, wire: { diameter: 5e-4 } }))).toBe(
      false,
    );
    expect(
      isLayered(
        windingOf({ shape: 'bank-wound', turns: 30, layers: 3, innerDiameter: 0.05, wire: { diameter: 5e-4 } }),
      ),
    ).toBe(false);
  });
});
