import { parameterOf } from '../../src/engine/measure/sweep.ts';
import {
  add,
  type Complex,
  complex,
  divide,
  multiply,
  ONE,
  reciprocal,
  subtract,
} from '../../src/engine/numerics/complex.ts';
import { gaussian, uniform } from '../../src/engine/numerics/random.ts';

const omega = (f: number): number => 2 * Math.PI * f;

/** Impedances of parts at f, Hz. */
export const coilOf =
  (L: number, C: number, R: number, rise = 0.8) =>
  (f: number): Complex => {
    const z = complex(R * (f / 1e6) ** rise, omega(f) * L);
    return divide(z, add(ONE, multiply(complex(0, omega(f) * C), z)));
  };
export const seriesOf =
  (C: number, L: number, R: number) =>
  (f: number): Complex =>
    complex(R, omega(f) * L - 1 / (omega(f) * C));
/** A capacitor with a series circuit of resonance f0 and Q across it. */
export const earpieceOf =
  (C: number, f0: number, share: number, q: number) =>
  (f: number): Complex => {
    const motional = share * C;
    const z = complex(
      1 / (omega(f0) * motional * q),
      omega(f) / (omega(f0) ** 2 * motional) - 1 / (omega(f) * motional),
    );
    return reciprocal(add(complex(0, omega(f) * C), reciprocal(z)));
  };
/** A lossless cable of 50 Ω open at its end, m. */
export const cableOf =
  (length: number) =>
  (f: number): Complex =>
    complex(0.01, -50 / Math.tan((omega(f) * length) / 2e8));

interface Analyser {
  readonly noise?: number;
  /** Directivity, tracking and source match of the ports. */
  readonly errors?: readonly [Complex, Complex, Complex];
  readonly normal?: () => number;
}

/** Frequencies evenly in their logarithm. */
export const frequencies = (low: number, high: number, count: number): number[] =>
  Array.from({ length: count }, (_, i) => low * (high / low) ** (i / (count - 1)));

/** The text of a one-port file. */
export function onePort(z: (f: number) => Complex, at: readonly number[], analyser: Analyser = {}): string {
  const { noise = 0, errors, normal = () => 0 } = analyser;
  const rows = at.map((f) => {
    const s = parameterOf(z(f), 'reflection', 50);
    const shown = errors
      ? add(errors[0], divide(multiply(add(ONE, errors[1]), s), subtract(ONE, multiply(errors[2], s))))
      : s;
    return `${f} ${shown.re + noise * normal()} ${shown.im + noise * normal()}`;
  });
  return `# Hz S RI R 50\n${rows.join('\n')}\n`;
}

/** The text of a two-port file of a series or shunt element. */
export function twoPort(
  z: (f: number) => Complex,
  fixture: 'series' | 'shunt',
  at: readonly number[],
  noise = 0,
  normal = () => 0,
): string {
  const rows = at.map((f) => {
    const through = parameterOf(z(f), fixture, 50);
    const back = fixture === 'series' ? subtract(ONE, through) : subtract(through, ONE);
    const pair = (s: Complex) => `${s.re + noise * normal()} ${s.im + noise * normal()}`;
    return `${f} ${pair(back)} ${pair(through)} ${pair(through)} ${pair(back)}`;
  });
  return `# Hz S RI R 50\n${rows.join('\n')}\n`;
}

/** What remains of each error after a usual calibration. */
const USUAL_CALIBRATION = 0.003;

/** Coils of Q 30 to 250 on an analyser. */
export function simulatedSweeps(seed: number) {
  const random = uniform(seed);
  const normal = gaussian(random);
  const between = (a: number, b: number) => a + (b - a) * random();
  return {
    normal,
    /** @param calibration standard deviation of what its calibration leaves of each error */
    coil: (calibration = USUAL_CALIBRATION) => {
      const [L, C, q] = [between(1e-4, 4e-4), 8e-12 * Math.exp(0.5 * normal()), 10 ** between(1.5, 2.4)];
      const z = coilOf(L, C, (omega(1e6) * L) / q, 0.8 + 0.4 * normal());
      const error = () => complex(calibration * normal(), calibration * normal());
      const text = onePort(z, frequencies(150e3, 1.6e6, 61), {
        noise: 0.7e-3,
        normal,
        errors: [error(), error(), error()],
      });
      return { L, C, q, text };
    },
    /** Between two small and equal capacitances: S21 of a peak. */
    peak: () => {
      const [f0, q, height] = [10 ** between(5.4, 6.2), 10 ** between(1.7, 2.7), between(0.02, 0.3)];
      const loaded = q * (1 - height);
      const turned = complex(Math.cos(1), Math.sin(1));
      const rows = Array.from({ length: 81 }, (_, i) => {
        const f = f0 * (1 + ((i - 40) / 40) * (3 / (2 * loaded)) * 2);
        const s = multiply(turned, divide(complex(height), complex(1, loaded * (f / f0 - f0 / f))));
        const noise = 1.5e-4;
        return `${f} 0.9 0 ${s.re + noise * normal()} ${s.im + noise * normal()} ${s.re + noise * normal()} ${s.im + noise * normal()} 0.9 0`;
      });
      return { f0, q, text: `# Hz S RI R 50\n${rows.join('\n')}\n` };
    },
  };
}
