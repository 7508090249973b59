import { describe, expect, test } from 'vitest';
import nist from '../../../reference/nist-strd.json' with { type: 'json' };
import { leastSquares, leastSquaresOfThree } from './levenberg-marquardt.ts';

const { exp, PI, cos, sin, atan } = Math;
type Model = (b: ArrayLike<number>, x: number, x2: number) => number;
const gauss: Model = (b, x) =>
  b[0] * exp(-b[1] * x) + b[2] * exp(-((x - b[3]) ** 2) / b[4] ** 2) + b[5] * exp(-((x - b[6]) ** 2) / b[7] ** 2);
const lanczos: Model = (b, x) => b[0] * exp(-b[1] * x) + b[2] * exp(-b[3] * x) + b[4] * exp(-b[5] * x);
const chwirut: Model = (b, x) => exp(-b[0] * x) / (b[1] + b[2] * x);
const cubics: Model = (b, x) => (b[0] + x * (b[1] + x * (b[2] + x * b[3]))) / (1 + x * (b[4] + x * (b[5] + x * b[6])));

/** The models of the data sets, as each states it. */
const MODELS: Readonly<Record<string, Model>> = {
  Bennett5: (b, x) => b[0] * (b[1] + x) ** (-1 / b[2]),
  BoxBOD: (b, x) => b[0] * (1 - exp(-b[1] * x)),
  Chwirut1: chwirut,
  Chwirut2: chwirut,
  DanWood: (b, x) => b[0] * x ** b[1],
  ENSO: (b, x) =>
    b[0] +
    b[1] * cos((2 * PI * x) / 12) +
    b[2] * sin((2 * PI * x) / 12) +
    b[4] * cos((2 * PI * x) / b[3]) +
    b[5] * sin((2 * PI * x) / b[3]) +
    b[7] * cos((2 * PI * x) / b[6]) +
    b[8] * sin((2 * PI * x) / b[6]),
  Eckerle4: (b, x) => (b[0] / b[1]) * exp(-0.5 * ((x - b[2]) / b[1]) ** 2),
  Gauss1: gauss,
  Gauss2: gauss,
  Gauss3: gauss,
  Hahn1: cubics,
  Kirby2: (b, x) => (b[0] + x * (b[1] + x * b[2])) / (1 + x * (b[3] + x * b[4])),
  Lanczos1: lanczos,
  Lanczos2: lanczos,
  Lanczos3: lanczos,
  MGH09: (b, x) => (b[0] * (x * x + x * b[1])) / (x * x + x * b[2] + b[3]),
  MGH10: (b, x) => b[0] * exp(b[1] / (x + b[2])),
  MGH17: (b, x) => b[0] + b[1] * exp(-x * b[3]) + b[2] * exp(-x * b[4]),
  Misra1a: (b, x) => b[0] * (1 - exp(-b[1] * x)),
  Misra1b: (b, x) => b[0] * (1 - (1 + (b[1] * x) / 2) ** -2),
  Misra1c: (b, x) => b[0] * (1 - (1 + 2 * b[1] * x) ** -0.5),
  Misra1d: (b, x) => (b[0] * b[1] * x) / (1 + b[1] * x),
  Nelson: (b, x1, x2) => b[0] - b[1] * x1 * exp(-b[2] * x2),
  Rat42: (b, x) => b[0] / (1 + exp(b[1] - b[2] * x)),
  Rat43: (b, x) => b[0] / (1 + exp(b[1] - b[2] * x)) ** (1 / b[3]),
  Roszman1: (b, x) => b[0] - b[1] * x - atan(b[2] / (x - b[3])) / PI,
  Thurber: cubics,
};

/** Correct significant digits, the certified 11 at most. */
const digits = (got: number, certified: number): number =>
  Math.min(11, -Math.log10(Math.abs(got / certified - 1) || 1e-16));

describe('NIST’s 27 nonlinear regressions', () => {
  test('there are 27, and a model for each', () => {
    expect(nist.datasets.map((d) => d.name).sort()).toEqual(Object.keys(MODELS).sort());
    expect(nist.datasets).toHaveLength(27);
  });

  for (const { name, parameters, data, residualSumOfSquares } of nist.datasets)
    for (const start of ['start1', 'start2'] as const)
      test(`${name} from ${start}: parameters to 7 digits, standard deviations to 6`, () => {
        const model = MODELS[name];
        const observed = data.map(([y]) => (name === 'Nelson' ? Math.log(y) : y));
        const fit = leastSquaresOfThree(
          (b) => data.map(([, x1, x2], i) => observed[i] - model(b, x1, x2)),
          parameters.map((p) => p[start]),
        );
        parameters.forEach((p, j) => {
          const deviation = Math.sqrt(fit.covariance[j * parameters.length + j]);
          const report = `${p.name} => ${fit.x[j]} ± ${deviation} != ${p.certified} ± ${p.standardDeviation}`;
          expect(digits(fit.x[j], p.certified), report).toBeGreaterThanOrEqual(7);
          // The residuals of Lanczos1 are the rounding of its data.
          expect(digits(deviation, p.standardDeviation), report).toBeGreaterThanOrEqual(name === 'Lanczos1' ? 2.5 : 6);
        });
        if (name !== 'Lanczos1') expect(fit.sumOfSquares / residualSumOfSquares).toBeCloseTo(1, 8);
        expect(fit.degreesOfFreedom).toBe(data.length - parameters.length);
      });
});

test('a fit without a solution at its start is refused, and one that wanders into the impossible comes back', () => {
  expect(() => leastSquares(([a]) => [Math.sqrt(a), a], [-1])).toThrow(RangeError);
  expect(() => leastSquares(([a, b]) => [a + b], [1, 1])).toThrow(RangeError);
  // √a − 0.1 from 4: an undamped step goes below 0.
  expect(leastSquares(([a]) => [Math.sqrt(a) - 0.1, 0], [4], { damping: 1e-9 }).x[0]).toBeCloseTo(0.01, 10);
});
