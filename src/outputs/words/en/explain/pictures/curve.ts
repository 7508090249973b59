import { detectorName } from '../../detectors.ts';
import { amperes, kilohertz, volts } from '../format.ts';

export interface CurvePictureFacts {
  /** Id of the library, or `perfect`. */
  readonly detector: string;
  readonly carrier: number;
  readonly detectorVoltage: number;
  readonly directVoltage: number;
  /** At the crest and at the trough of the carrier, A. */
  readonly forwardCurrent: number;
  readonly reverseCurrent: number;
}

const title = 'The operating point on the detector’s curve';

const about = (f: CurvePictureFacts): string =>
  `${detectorName(f.detector)}: a carrier of ${volts(f.detectorVoltage)} against a mean voltage of ${volts(f.directVoltage)} on the load. It conducts ${amperes(f.forwardCurrent)} forwards at the crest and ${amperes(Math.abs(f.reverseCurrent))} backwards.`;

const moves = ({ carrier, detectorVoltage: V, directVoltage, forwardCurrent }: CurvePictureFacts): string =>
  `A dot moves along the detector’s curve of current against voltage at ${kilohertz(carrier)}: right to ${volts(V - directVoltage)}, left to ${volts(-V - directVoltage)}. Below the curve the voltage is drawn, a sine wave; beside it the current, a narrow peak of up to ${amperes(forwardCurrent)} at each crest and almost none in between. The symbol of a diode below it shows an arrow while current flows.`;

export const curvePictureWords = {
  title,
  about,
  description: (facts: CurvePictureFacts): string => `${title}. ${moves(facts)} ${about(facts)}`,
  current: (most: number): string => `current, up to ${amperes(most)}`,
  voltage: 'voltage,',
  timeDown: 'time ↓',
  currentOverTime: 'current, time →',
  lowest: (v: number): string => `−${volts(v)}`,
  highest: (v: number): string => `+${volts(v)}`,
  flows: 'forward current',
  leaks: 'small reverse current',
  blocked: 'no current',
} as const;
