import type { SetCircuit } from '../built/set-circuit.ts';
import { dialWarnings } from '../reception/dial/dial.ts';
import type { Dial, DialPoint } from '../reception/path/types.ts';
import type { Ratio } from '../units/quantities.ts';
import { alongScale, dialDraws } from './dial-draws.ts';
import { type Ranged, rangedOf } from './draws.ts';

/** Figures of a point of the dial that have ranges. */
type DialFigure = 'frequency' | 'capacitance' | 'loadedQ' | 'bandwidth';

/** How sure a dial is: medians and 90 % ranges of its figures, as factors on them, at some places of the scale. */
export type DialUncertainty = Readonly<Record<DialFigure, readonly Ranged[]>>;

/**
 * How sure the dial of a set is, by the same draws as the figures of its stations.
 * @param circuit the set as parts made and joined.
 * @returns factors on frequency, capacitance, loaded Q and bandwidth at places from open to meshed.
 */
export function dialUncertaintyOf(circuit: SetCircuit): DialUncertainty {
  const { frequency, loadedQ, capacitance } = dialDraws(circuit);
  const factors = (draws: Float64Array): Ranged => {
    const { median, range } = rangedOf(draws);
    return { median: Math.exp(median), range: [Math.exp(range[0]), Math.exp(range[1])] };
  };
  return {
    frequency: frequency.map(factors),
    capacitance: capacitance.map(factors),
    loadedQ: loadedQ.map(factors),
    bandwidth: frequency.map((draws, j) => factors(draws.map((x, k) => x - loadedQ[j][k]))),
  };
}

/**
 * A dial with its ranges: of sharpness the median, of frequencies and capacitances the set with every input in its middle.
 * @param dial of a reception.
 * @param uncertainty of the same set, or of it before a small change.
 * @returns a copy; points and ends with their 90 % ranges.
 */
export function rangedDial(dial: Dial, uncertainty: DialUncertainty): Dial {
  const range = (figure: DialFigure, value: number, position: Ratio): readonly [number, number] => {
    const [low, high] = factorsAt(uncertainty[figure], position).range;
    return [value * low, value * high];
  };
  const points = dial.points.map((point): DialPoint => {
    const { position, frequency, capacitance, loadedQ, bandwidth } = point;
    const middle = (figure: DialFigure): number => factorsAt(uncertainty[figure], position).median;
    return {
      ...point,
      loadedQ: loadedQ * middle('loadedQ'),
      bandwidth: bandwidth * middle('bandwidth'),
      range: range('frequency', frequency, position),
      ranges: {
        capacitance: capacitance === undefined ? undefined : range('capacitance', capacitance, position),
        loadedQ: range('loadedQ', loadedQ, position),
        bandwidth: range('bandwidth', bandwidth, position),
      },
    };
  });
  return {
    ...dial,
    points,
    warnings: dialWarnings(points, dial.folds),
    lowestRange: range('frequency', dial.lowest, 1),
    highestRange: range('frequency', dial.highest, 0),
  };
}

function factorsAt(knots: readonly Ranged[], position: Ratio): Ranged {
  const at = (of: (one: Ranged) => number): number => alongScale(position, (knot) => of(knots[knot]));
  return { median: at((one) => one.median), range: [at((one) => one.range[0]), at((one) => one.range[1])] };
}
