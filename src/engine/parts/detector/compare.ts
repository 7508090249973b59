import { type Ohms, powerDecibels, type Volts } from '../../units/quantities.ts';
import { curvature, type Detector, slopeResistance } from './detector.ts';

export interface DetectorMerit {
  /** Zero-signal resistance at the bias: what the tuned circuit must be matched to when faint. */
  readonly resistance: Ohms;
  /** Bend of the curve, per volt. */
  readonly curvature: number;
  /** Output over input power squared for faint signals, matched at both ends: curvature²·resistance/16, per watt. */
  readonly figure: number;
  readonly words: string;
}

/**
 * How good a device is for faint signals. Matched at both ends, P watts of carrier give figure·P² watts of direct power:
 * i'' V²/4 flows into a short circuit, V² = 2·P·R. Source: power series of the curve, textbook.
 */
export function detectorMerit(detector: Detector, bias: Volts = 0): DetectorMerit {
  const resistance = slopeResistance(detector, bias);
  const bend = curvature(detector, bias);
  const figure = Number.isFinite(resistance) ? (bend * bend * resistance) / 16 : 0;
  const loss = figure > 0 ? -powerDecibels(figure * 1e-9) : Number.POSITIVE_INFINITY;
  const words = Number.isFinite(loss)
    ? `From a faint carrier of 1 nW, matched at both ends, it makes ${formatPower(figure * 1e-18)} of output: ${Math.round(loss)} dB is lost in detecting. It must be matched to ${formatOhms(resistance)}.`
    : 'Its curve does not bend here: it detects nothing.';
  return { resistance, curvature: bend, figure, words };
}

const PREFIXES: readonly (readonly [number, string])[] = [
  [1e-9, 'n'],
  [1e-12, 'p'],
  [1e-15, 'f'],
  [1e-18, 'a'],
];
function formatPower(watts: number): string {
  const [unit, prefix] = PREFIXES.find(([size]) => watts >= size) ?? [1e-21, 'z'];
  return `${Number((watts / unit).toPrecision(2))} ${prefix}W`;
}
const formatOhms = (ohms: number): string =>
  ohms >= 1e6 ? `${Number((ohms / 1e6).toPrecision(2))} MΩ` : `${Number((ohms / 1e3).toPrecision(2))} kΩ`;
