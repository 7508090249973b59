import { demandWithin, ImpossibleValues } from '../../facts/impossible-values.ts';
import { type Warning, warning } from '../../facts/warning.ts';
import { meanInverseDistance } from '../../numerics/segment-potential.ts';
import {
  type Degrees,
  type Henries,
  type Hertz,
  LIGHT_SPEED,
  type Metres,
  MU_0,
  type Ohms,
  type OhmsPerMetre,
} from '../../units/quantities.ts';
import { ringMutual, ringSelf } from '../coil/ring.ts';
import { wireResistance } from '../wire/skin.ts';

export interface FrameSpec {
  readonly outline: 'square' | 'round';
  /** Side of the square or diameter of the circle, wire centre to wire centre; of a spiral, the outermost turn. 20 mm to 20 m. */
  readonly side: Metres;
  /** 1 to 400; a part of a turn counts in proportion. */
  readonly turns: number;
  /** From turn to turn. */
  readonly pitch: Metres;
  readonly wire: { readonly diameter: Metres };
  /** Turns side by side round a box (default), or one inside the other in a plane. */
  readonly winding?: 'box' | 'spiral';
}

export interface FrameOptions {
  /** Of the wire at radio frequency; default a straight copper wire by itself, which neglects the turns' nearness. */
  readonly resistancePerMetre?: (frequency: Hertz) => OhmsPerMetre;
}

export interface FrameModel {
  /** Low frequency, uniform current; within 1 %. */
  readonly inductance: Henries;
  /** Sum of the turns' areas, m². */
  readonly totalArea: number;
  readonly wireLength: Metres;
  /** Towards a station in the plane of the frame: emf over field strength. */
  readonly effectiveHeightAt: (frequency: Hertz) => Metres;
  readonly dcResistance: Ohms;
  readonly resistanceAt: (frequency: Hertz) => Ohms;
  readonly radiationResistanceAt: (frequency: Hertz) => Ohms;
  /** Angle between the plane of the frame and a station that is not heard. */
  readonly nullDirection: Degrees;
  readonly warnings: readonly Warning[];
  readonly warningsAt: (frequency: Hertz) => readonly Warning[];
}

/** Part of the full signal from a station this far out of the plane of the frame. @returns −1 to 1. */
export const towards = (angle: Degrees): number => Math.cos((angle * Math.PI) / 180);

/**
 * A frame (loop) aerial.
 * @param spec outline, side and pitch (m), turns, wire
 * @param options loss of the wire by frequency (Ω/m), where it is known better
 * @returns inductance (H), resistance (Ω) and effective height (m) by frequency
 * @throws RangeError for sizes that cannot be wound.
 */
export function frameAerial(spec: FrameSpec, options: FrameOptions = {}): FrameModel {
  const { side, turns, pitch, wire, outline, winding = 'box' } = spec;
  demandWithin('frame.side', side, { min: 0.02, max: 20 });
  demandWithin('frame.turns', turns, { min: 1, max: 400 });
  demandWithin('frame.wire', wire.diameter, { above: 0, below: side / 10 });
  if (turns !== 1) demandWithin('frame.pitch', pitch, { min: wire.diameter, max: 10 });
  const count = Math.ceil(turns);
  const sides = Array.from({ length: count }, (_, i) => (winding === 'spiral' ? side - 2 * i * pitch : side));
  const share = sides.map((_, i) => Math.min(1, turns - i));
  if (!(sides[count - 1] > pitch)) throw new ImpossibleValues({ code: 'frame.spiral-full', turns, pitch, side });

  const self = outline === 'square' ? squareSelf : (s: Metres, a: Metres) => ringSelf(s / 2, a);
  const mutual =
    outline === 'square' ? coaxialSquares : (s: Metres, t: Metres, z: Metres) => ringMutual(s / 2, t / 2, z);
  // On a box only the distance between two turns counts.
  const box = winding === 'box' ? sides.map((s, k) => (k === 0 ? 0 : mutual(s, s, k * pitch))) : undefined;
  let inductance = 0;
  for (let i = 0; i < count; i++) {
    inductance += share[i] ** 2 * self(sides[i], wire.diameter / 2);
    for (let j = 0; j < i; j++) inductance += 2 * share[i] * share[j] * (box?.[i - j] ?? mutual(sides[i], sides[j], 0));
  }
  const [round, area] = outline === 'square' ? [4, 1] : [Math.PI, Math.PI / 4];
  const wireLength = sides.reduce((sum, s, i) => sum + share[i] * round * s, 0);
  const totalArea = sides.reduce((sum, s, i) => sum + share[i] * area * s * s, 0);
  const copper = (frequency: Hertz) => wireResistance({ diameter: wire.diameter, frequency }).resistancePerMetre;
  const resistancePerMetre = options.resistancePerMetre ?? copper;
  const warnings: Warning[] = [];
  if (winding === 'box' && turns * pitch > side) {
    warnings.push(warning('aerial.frame-deep'));
  }
  return {
    inductance,
    totalArea,
    wireLength,
    // h_e = 2πNA/λ (textbook): the flux of the field's own magnetic part, H = E/η.
    effectiveHeightAt: (f) => (2 * Math.PI * totalArea * f) / LIGHT_SPEED,
    dcResistance: copper(0) * wireLength,
    resistanceAt: (f) => resistancePerMetre(f) * wireLength,
    // R_r = 20 k⁴ (NA)² (textbook; Kraus, Antennas).
    radiationResistanceAt: (f) => 20 * ((2 * Math.PI * f) / LIGHT_SPEED) ** 4 * totalArea ** 2,
    nullDirection: 90,
    warnings,
    warningsAt: (f) =>
      wireLength * f > 0.1 * LIGHT_SPEED ? [...warnings, warning('aerial.frame-wire-long')] : warnings,
  };
}

/** Sum over the four sides: like sides add, opposite ones subtract, those at right angles have nothing to do with each other. */
function fourSides(s: Metres, t: Metres, like: Metres, opposite: Metres): Henries {
  const at = (d: Metres) =>
    s *
    t *
    meanInverseDistance({ from: [-s / 2, 0, 0], to: [s / 2, 0, 0] }, { from: [-t / 2, d, 0], to: [t / 2, d, 0] }, 0);
  return (MU_0 / Math.PI) * (at(like) - at(opposite));
}

/** Mutual inductance of coaxial squares with sides alike in direction, `z` apart (Neumann; Grover 1946 chapter 8). */
export const coaxialSquares = (s: Metres, t: Metres, z: Metres): Henries =>
  fourSides(s, t, Math.hypot((s - t) / 2, z), Math.hypot((s + t) / 2, z));

/** Square of round wire, uniform current: like sides at the wire's geometric mean distance a·e^(−1/4). */
const squareSelf = (s: Metres, a: Metres): Henries => fourSides(s, s, a * Math.exp(-0.25), s);
