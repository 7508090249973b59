import { formatQuantity } from '../../../../../engine/units/format.ts';
import { duration, volts } from '../format.ts';

/** Of the load capacitor; SI. */
export interface ChargePictureFacts {
  readonly capacitance: number;
  readonly resistance: number;
  readonly inductive: boolean;
  readonly cycle: number;
  readonly detectorVoltage: number;
  /** Extremes of the voltage kept, where the programme is loudest. */
  readonly least: number;
  readonly greatest: number;
}

const title = 'The charge on the load capacitor';

function about({ capacitance, resistance, inductive, cycle }: ChargePictureFacts): string {
  const charging = `At each crest of the carrier the detector charges ${formatQuantity(capacitance, 'capacitance', 3)}; between crests the load (${formatQuantity(resistance, 'resistance', 2)} for direct current) discharges it.`;
  const time = `One cycle lasts ${duration(cycle, 3)}; the time constant is ${duration(resistance * capacitance)}.`;
  return inductive
    ? `${charging} ${time} The inductance of the phones keeps their current nearly steady, so less charge than that is lost in a cycle.`
    : `${charging} ${time}`;
}

const moves = ({ detectorVoltage, least, greatest }: ChargePictureFacts): string =>
  `Five cycles of the carrier at the detector (${volts(detectorVoltage)} without modulation, more at its peaks) are in sight, and over them a line: the voltage of the capacitor. Where a crest reaches the line, the line rises a little; between crests it falls. At the peak of modulation it lies between ${volts(least)} and ${volts(greatest)}. Beside it a vessel is as full as the capacitor: an arrow at the top for each charging pulse, a steady stream from the bottom.`;

export const chargePictureWords = {
  title,
  about,
  description: (facts: ChargePictureFacts): string => `${title}. ${moves(facts)} ${about(facts)}`,
  carrier: 'carrier at the detector',
  kept: 'voltage of the capacitor',
  now: (v: number): string => `${volts(v)} now`,
  nowOnCapacitor: (v: number): string => `${volts(v)} on the capacitor now`,
  charging: 'charging',
  discharging: 'steady discharge',
} as const;
