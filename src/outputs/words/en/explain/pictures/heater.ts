import type { HeaterTimes } from '../../../../../engine/parts/detector/thermionic/heater-times.ts';
import { formatNumber } from '../../../../../engine/units/format.ts';
import { ZERO_CELSIUS } from '../../../../../engine/units/quantities.ts';
import { heaterTimeWords } from '../../detection/heater-times.ts';
import { amperes } from '../format.ts';

/** Switched on from cold, then off. SI. */
export interface HeaterPictureFacts {
  readonly heaterVoltage: number;
  /** For so long on, and for so long off. */
  readonly on: number;
  readonly off: number;
  readonly hottest: number;
  readonly mostEmission: number;
  readonly times: HeaterTimes | undefined;
}

const celsius = (T: number): string => `${Math.round(T - ZERO_CELSIUS)} °C`;

/** What the eye sees of it (common practice, no source). */
function glow(T: number): string {
  const degrees = T - ZERO_CELSIUS;
  return degrees < 500
    ? 'no visible glow'
    : degrees < 800
      ? 'a dull red glow'
      : degrees < 950
        ? 'a bright red glow'
        : 'an orange glow';
}

const title = 'A heater warming and cooling';

const about = (f: HeaterPictureFacts): string =>
  `At ${formatNumber(f.heaterVoltage, 2)} V the cathode reaches ${celsius(f.hottest)} in ${f.on} s, with ${glow(f.hottest)}. ${heaterTimeWords(f.times)}`;

const moves = ({ on, off, mostEmission }: HeaterPictureFacts): string =>
  `A valve is drawn with its heater at the bottom, the cathode above it and the anode at the top. For ${on} s the heater is on: heater and cathode begin to glow, and dots, the electrons, rise from the cathode to the anode, few at first, then many. Then it is off for ${off} s: the glow fades and the dots grow fewer until none is left. Two curves beside it show the temperature and the emission, up to ${amperes(mostEmission)}.`;

export const heaterPictureWords = {
  title,
  about,
  description: (facts: HeaterPictureFacts): string => `${title}. ${moves(facts)} ${about(facts)}`,
  isOn: 'heater on',
  isOff: 'heater off',
  temperature: celsius,
  temperatureCurve: (hottest: number): string => `cathode, up to ${celsius(hottest)}`,
  emissionCurve: (most: number): string => `emission, up to ${amperes(most)}`,
  switchedOn: 'switched on',
  switchedOff: 'off',
  end: (seconds: number): string => `${seconds} s`,
} as const;
