import type { Metres } from '../../units/quantities.ts';

/** Radius of the disc with the capacitance of a square of side 1: that of the square is 0.36679·4πε₀ (a disc's is 8ε₀a). */
export const DISC_FOR_SQUARE = (0.3667892 * 4 * Math.PI) / 8;

/** Gauss-Legendre on (0, 1), eight points (Abramowitz & Stegun table 25.4). */
const NODES = [0.0198550717512319, 0.101666761293187, 0.237233795041836, 0.408282678752175];
const WEIGHTS = [0.0506142681451881, 0.111190517226687, 0.156853322938944, 0.181341891689181];

/**
 * Resistance of a thin level disc, both faces in soil of 1 Ω·m: 1/8a for the disc alone, and the mean potential its image
 * raises over it, both with the charge of a disc by itself (Weber's solution; cf. Dwight 1936, buried round plate).
 * @param radius of the disc. @param depth of it below ground, 0 or more. @returns 1/m.
 */
export function levelPlateFactor(radius: Metres, depth: Metres): number {
  const a = radius;
  const s = 2 * depth;
  let mean = 0;
  for (let k = 0; k < 8; k++) {
    const u = k < 4 ? NODES[k] : 1 - NODES[7 - k];
    const angle = (u * Math.PI) / 2;
    const r = a * Math.sin(angle);
    // Potential of the charged disc at (r, s), over that of the disc itself times π/2.
    const potential = Math.asin(Math.min(1, (2 * a) / (Math.hypot(r - a, s) + Math.hypot(r + a, s))));
    mean += WEIGHTS[k < 4 ? k : 7 - k] * (Math.PI / 2) * potential * Math.sin(angle);
  }
  return 1 / (8 * a) + mean / (4 * Math.PI * a);
}

/**
 * As above for a disc on edge, by Dwight's series (1936; from memory): 1/8a + (1 + 7a²/24s² + 99a⁴/320s⁴)/4πs, s twice the
 * depth of its middle, which must be at least the radius.
 */
export function uprightPlateFactor(radius: Metres, depth: Metres): number {
  const s = 2 * depth;
  const q = (radius / s) ** 2;
  return 1 / (8 * radius) + (1 + (7 / 24) * q + (99 / 320) * q * q) / (4 * Math.PI * s);
}
