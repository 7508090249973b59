import { formatQuantity } from '../../../../engine/units/format.ts';
import type { QuantityKind } from '../../../../engine/units/parse.ts';
import { levelSpan, spanText } from '../../ranges.ts';

/** The path of one station, a row for each stage. */
export const pathTableWords = {
  columns: {
    stage: 'stage',
    level: 'level',
    range: 'range (90 %)',
    powerLost: 'power lost',
    effect: 'what happens',
  },
  /** Power lost on the way to a stage, dB. */
  powerLost: (lost: number): string => (lost < 0.05 ? 'none' : formatQuantity(lost, 'level', 2).replace('+', '')),
  range: (range: readonly [number, number], kind: QuantityKind, unit: string): string =>
    unit.startsWith('dB') ? `${levelSpan(range)} ${unit}` : spanText(range, kind).replaceAll('\u00a0', ' '),
} as const;

/** All stations, a row for each. */
export const stationsTableWords = {
  columns: {
    station: 'station',
    frequency: 'kHz',
    field: 'field',
    scale: 'scale',
    detector: 'detector',
    sound: 'sound',
    verdict: 'heard',
    interference: 'interference',
  },
  noInterference: 'none',
} as const;
