import { add, type Complex, complex, divide, magnitude, scale } from '../numerics/complex.ts';
import { leastSquares } from '../numerics/levenberg-marquardt.ts';
import { type Fitted, fitted, fittedLogarithm, reachOf } from './fitted.ts';
import { varianceOf } from './known-errors.ts';
import type { Network } from './reading-fields.ts';
import { UnfitReadings } from './unfit.ts';

export interface PeakFit {
  readonly resonance: Fitted;
  readonly loadedQ: Fitted;
  /** Of the circuit without the ports. */
  readonly q: Fitted;
  readonly scatter: number;
}

const LEAST_POINTS = 7;
/** Widths to each side of the peak that are fitted. */
const REACH = 4;

/**
 * Q of a tuned circuit between two weakly and equally coupled ports: S21 = A/(1 + jQl(f/f0 − f0/f)), Q = Ql/(1 − |A|). It
 * rests on the shape of the peak and so hardly on the calibration.
 * @param network of two ports
 * @returns resonance (Hz), loaded Q and Q, each with its standard error and range
 * @throws UnfitReadings where the file has no such peak
 */
export function fitPeak({ ports, points }: Network): PeakFit {
  if (ports !== 2) throw new UnfitReadings({ code: 'analyser.two-ports' });
  const sizes = points.map(({ s }) => (magnitude(s[1]) + magnitude(s[2])) / 2);
  const top = sizes.indexOf(Math.max(...sizes));
  const half = sizes[top] / Math.SQRT2;
  let [low, high] = [top, top];
  while (low > 0 && sizes[low] > half) low--;
  while (high < points.length - 1 && sizes[high] > half) high++;
  const width = points[high].frequency - points[low].frequency;
  const f0 = points[top].frequency;
  const near = points
    .filter((p) => Math.abs(p.frequency - f0) <= REACH * width)
    .map(({ frequency, s }) => ({ frequency, s: scale(add(s[1], s[2]), 0.5) }));
  if (!(top > 0 && top < points.length - 1 && near.length >= LEAST_POINTS && width > 0))
    throw new UnfitReadings({ code: 'width.no-peak' });
  const Q = f0 / width;
  const resonanceAt = (detuning: number) => f0 * (1 + detuning / Q);
  const unit = sizes[top];
  const peak = points[top].s[1];
  const fit = leastSquares(
    ([re, im, detuning, lnQ]) => {
      const resonance = resonanceAt(detuning);
      if (!(resonance > 0)) return [Number.NaN];
      return near.flatMap(({ frequency, s }) => {
        const turn = Math.exp(lnQ) * (frequency / resonance - resonance / frequency);
        const shown: Complex = divide(complex(re, im), complex(1, turn));
        return [s.re / unit - shown.re, s.im / unit - shown.im];
      });
    },
    [peak.re / unit, peak.im / unit, 0, Math.log(Q)],
    { scales: [1, 1, 1, 1], tolerance: 1e-9 },
  );
  const [re, im, detuning, lnQ] = fit.x;
  const height = unit * Math.hypot(re, im);
  if (!(height < 1)) throw new UnfitReadings({ code: 'analyser.not-calibrated', highest: height });
  const reach = reachOf(fit.degreesOfFreedom);
  const s = (i: number) => Math.sqrt(fit.covariance[5 * i]);
  const perPart = (part: number) => (unit * unit * part) / (height * (1 - height));
  return {
    resonance: fitted(resonanceAt(detuning), (f0 / Q) * s(2), reach),
    loadedQ: fittedLogarithm(lnQ, s(3), reach),
    q: fittedLogarithm(
      lnQ - Math.log1p(-height),
      Math.sqrt(varianceOf([perPart(re), perPart(im), 0, 1], fit.covariance)),
      reach,
    ),
    scatter: Math.sqrt(fit.sumOfSquares / fit.degreesOfFreedom),
  };
}
