import {
  add,
  type Complex,
  complex,
  divide,
  magnitude,
  multiply,
  ONE,
  scale,
  subtract,
} from '../../numerics/complex.ts';
import { faddeeva } from '../../numerics/faddeeva.ts';
import type { Metres } from '../../units/quantities.ts';
import { numericalRoot, type Surface } from './surface.ts';

/** Below this |q| the closed curvature terms lose digits and their limit for q → 0 is used. */
const SMALL_Q = 0.02;

/**
 * Attenuation over flat earth, F = 1 − j√π z w(−z): Sommerfeld's function as Norton used it.
 * Source: reference/propagation-checks.json, "norton-1" (values by an independent implementation).
 */
export function flatEarth(z: Complex): Complex {
  const s = sommerfeldS(z);
  return subtract(ONE, multiply(s, faddeeva(scale(z, -1))));
}

/** s = j√π z. */
const sommerfeldS = (z: Complex): Complex => scale(complex(-z.im, z.re), Math.sqrt(Math.PI));

/**
 * Ratio of the field to that on perfect flat ground, near the transmitter: F and the first two terms of curvature,
 * V = F + [1 − s − (1+2p)F]/4q³ + [1 − s(1−p) − 2p + 5p²/6 + (p²/2 − 1)F]/4q⁶.
 * Within 0.02 dB of the residue series at the switch distance; must not be used far beyond it.
 * Source: J. R. Wait, "Electromagnetic Surface Waves" (1964), after Bremmer; checked by a contour integral.
 */
export function shortForm(earth: Surface, distance: Metres): Complex {
  const z = numericalRoot(earth, distance);
  const F = flatEarth(z);
  if (magnitude(earth.q) < SMALL_Q) {
    // y = e^{jπ/4}√x with x = νθ; y³ = x^{3/2} e^{j3π/4}, y⁶ = −j x³
    const x = (earth.nu * distance) / earth.a;
    const size = Math.sqrt(Math.PI / 32) * x ** 1.5;
    return add(F, complex(-size, -size + (7 / 60) * x ** 3));
  }
  const p = multiply(z, z);
  const p2 = multiply(p, p);
  const s = sommerfeldS(z);
  const q3 = multiply(earth.q, multiply(earth.q, earth.q));
  const first = subtract(subtract(ONE, s), multiply(add(ONE, scale(p, 2)), F));
  const second = add(
    add(subtract(ONE, multiply(s, subtract(ONE, p))), add(scale(p, -2), scale(p2, 5 / 6))),
    multiply(subtract(scale(p2, 0.5), ONE), F),
  );
  const curvature = add(divide(first, q3), divide(second, multiply(q3, q3)));
  return add(F, scale(curvature, 0.25));
}
