import type { Henries, Radians, Ratio } from '../../units/quantities.ts';
import { couple } from './coupling.ts';
import type { CoilModel } from './model.ts';

export interface Variometer {
  /** Inductance of the whole with the rotor turned by an angle from fully aiding (0) to fully opposing (π). */
  inductanceAt(angle: Radians): Henries;
  /** Both coils in series: least and most. */
  readonly range: readonly [Henries, Henries];
  /** Coupling with the axes in line. */
  readonly coupling: Ratio;
  /** Angle for a wanted inductance within the range, rad; undefined outside it. */
  angleFor(inductance: Henries): Radians | undefined;
}

export interface VariometerOptions {
  /** Distance of the rotor's middle from the stator's along its axis, m; default 0. */
  readonly offset?: number;
  /** Series (default) or parallel. */
  readonly connection?: 'series' | 'parallel';
}

/** Two coils joined, one turning within the other: L = L₁ + L₂ + 2M(angle), M by quadrature over the turned rings. */
export function variometer(
  stator: CoilModel,
  rotor: CoilModel,
  { offset = 0, connection = 'series' }: VariometerOptions = {},
): Variometer {
  const [L1, L2] = [stator.inductance, rotor.inductance];
  const whole = (M: number) => (connection === 'series' ? L1 + L2 + 2 * M : (L1 * L2 - M * M) / (L1 + L2 - 2 * M));
  const inductanceAt = (angle: number) => whole(couple(stator, rotor, { offset, tilt: angle }).mutualInductance);
  const least = inductanceAt(Math.PI);
  const most = inductanceAt(0);
  return {
    inductanceAt,
    range: [least, most],
    coupling: couple(stator, rotor, { offset }).couplingCoefficient,
    angleFor(inductance) {
      if (!(inductance >= least && inductance <= most)) return undefined;
      let low = 0;
      let high = Math.PI;
      for (let k = 0; k < 40; k++) {
        const middle = (low + high) / 2;
        if (inductanceAt(middle) > inductance) low = middle;
        else high = middle;
      }
      return (low + high) / 2;
    },
  };
}
