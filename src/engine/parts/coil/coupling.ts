import { ImpossibleValues } from '../../facts/impossible-values.ts';
import { type Warning, warning } from '../../facts/warning.ts';
import type { Henries, Metres, Radians, Ratio } from '../../units/quantities.ts';
import type { CoilModel } from './model.ts';
import { ringMutual } from './ring.ts';
import { condensed, everyTurn, type RingSet } from './ring-set.ts';

/** How the second coil stands to the first. */
export interface Placing {
  /** Distance of their middles along the axis of the first, m; 0 is one inside or over the other. */
  readonly offset: Metres;
  /** Angle between their axes, rad; default 0. The second coil turns about its own middle. */
  readonly tilt?: Radians;
  /** Distance of its middle from the axis of the first, in the plane of the tilt, m; default 0. */
  readonly shift?: Metres;
}

export interface CoilCoupling {
  /** Negative when the coils oppose. */
  readonly mutualInductance: Henries;
  /** M/√(L₁L₂); between −1 and 1. */
  readonly couplingCoefficient: Ratio;
  readonly warnings: readonly Warning[];
}

/**
 * Mutual inductance of two coils from their turns: Maxwell's formula for coaxial circles; tilted or shifted, the vector
 * potential of each ring of the first taken round each ring of the second.
 * @param first a coil whose turns have a place
 * @param second another
 * @param options `offset` along the axis and `shift` across it, m, between the middles; `tilt` of the axes, degrees
 * @returns mutual inductance (H) and the coefficient k
 * @throws RangeError when a coil's place in space is not known (a core, a measured coil).
 */
export function couple(first: CoilModel, second: CoilModel, { offset, tilt = 0, shift = 0 }: Placing): CoilCoupling {
  if (!first.winding || !second.winding) {
    throw new ImpossibleValues({ code: 'coil.place-unknown' });
  }
  if (!Number.isFinite(offset + tilt + shift)) throw new RangeError('offset, tilt and shift must be finite');
  const straight = shift === 0 && Math.abs(Math.sin(tilt)) < 1e-9;
  const result = straight
    ? coaxial(everyTurn(first.winding), everyTurn(second.winding), offset, Math.cos(tilt) < 0)
    : askew(condensed(first.winding, RINGS), condensed(second.winding, RINGS), offset, tilt, shift);
  const couplingCoefficient = result.sum / Math.sqrt(first.inductance * second.inductance);
  return {
    mutualInductance: result.sum,
    couplingCoefficient,
    warnings: result.clash ? [warning('coil.windings-overlap')] : [],
  };
}

/** Rings per layer when tilted. */
const RINGS = 28;
/** Points round each ring; the integrand is smooth and periodic, so few suffice unless the coils all but touch. */
const POINTS = 48;

function coaxial(a: RingSet, b: RingSet, offset: number, reversed: boolean) {
  let sum = 0;
  let clash = false;
  const touching = a.wireRadius + b.wireRadius;
  for (let i = 0; i < a.radius.length; i++) {
    for (let j = 0; j < b.radius.length; j++) {
      const dr = a.radius[i] - b.radius[j];
      let dz = offset + (reversed ? -b.z[j] : b.z[j]) - a.z[i];
      if (dr * dr + dz * dz < touching * touching) {
        clash = true;
        dz = Math.sqrt(Math.max(0, touching * touching - dr * dr));
      }
      sum += a.weight[i] * b.weight[j] * ringMutual(a.radius[i], b.radius[j], dz);
    }
  }
  return { sum: reversed ? -sum : sum, clash };
}

function askew(a: RingSet, b: RingSet, offset: number, tilt: number, shift: number) {
  const cos = Math.cos(tilt);
  const sin = Math.sin(tilt);
  const touching = a.wireRadius + b.wireRadius;
  let sum = 0;
  let clash = false;
  for (let j = 0; j < b.radius.length; j++) {
    const r = b.radius[j];
    // Middle of this ring: along the tilted axis (sin, 0, cos). Its points: e₁ = (cos, 0, −sin), e₂ = (0, 1, 0).
    const cx = shift + b.z[j] * sin;
    const cz = offset + b.z[j] * cos;
    // The far half in y mirrors the near half.
    for (let k = 0; k < POINTS; k++) {
      const angle = (Math.PI * (k + 0.5)) / POINTS;
      const c = Math.cos(angle);
      const s = Math.sin(angle);
      const x = cx + r * c * cos;
      const y = r * s;
      const z = cz - r * c * sin;
      const rho = Math.hypot(x, y);
      if (!(rho > 1e-9)) continue;
      // Direction of the first coil's potential, (−y, x)/ρ, along this ring's wire, (−s·cos, c).
      const along = (y * s * cos + x * c) / rho;
      let potential = 0;
      for (let i = 0; i < a.radius.length; i++) {
        const dr = a.radius[i] - rho;
        let dz = z - a.z[i];
        if (dr * dr + dz * dz < touching * touching) {
          clash = true;
          dz = Math.sqrt(Math.max(0, touching * touching - dr * dr));
        }
        potential += a.weight[i] * ringMutual(a.radius[i], rho, dz);
      }
      sum += (b.weight[j] * along * r * potential) / (rho * POINTS);
    }
  }
  return { sum, clash };
}
