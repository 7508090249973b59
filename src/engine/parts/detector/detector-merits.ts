import type { Ohms, Volts } from '../../units/quantities.ts';
import { curvature, type Detector, slopeResistance } from './detector.ts';

export interface DetectorMerit {
  /** Zero-signal resistance at the bias: what the tuned circuit must be matched to when faint. */
  readonly resistance: Ohms;
  /** Bend of the curve, per volt. */
  readonly curvature: number;
  /** Output over input power squared for faint signals, matched at both ends: curvature²·resistance/16, per watt. */
  readonly figure: number;
}

/**
 * How good a device is for faint signals. Matched at both ends, P watts of carrier give figure·P² watts of direct power:
 * i'' V²/4 flows into a short circuit, V² = 2·P·R. Source: power series of the curve, textbook.
 */
export function detectorMerit(detector: Detector, bias: Volts = 0): DetectorMerit {
  const resistance = slopeResistance(detector, bias);
  const bend = curvature(detector, bias);
  const figure = Number.isFinite(resistance) ? (bend * bend * resistance) / 16 : 0;
  return { resistance, curvature: bend, figure };
}
