import { formatQuantity } from '../../../../engine/units/format.ts';
import type { BestTap } from '../../../../engine/vary/compare.ts';
import { plural } from '../grammar.ts';

/** Detectors on one station, a row for each. */
export const compareTableWords = {
  columns: {
    detector: 'detector',
    sound: 'sound',
    difference: 'difference',
    verdict: 'heard',
    direct: 'direct voltage',
    inputResistance: 'input resistance',
    loadedQ: 'loaded Q',
    loading: 'loading loss',
    distortion: 'distortion',
    linearAbove: 'linear above',
    bestTap: 'best tap',
    bestLoad: 'best load',
  },
  bestTap: ({ turns, gain, of }: BestTap): string => {
    const tap = `${turns} ${plural(turns, 'turn', 'turns')}, ${formatQuantity(gain, 'level')}`;
    return of === 'clearance' ? `${tap} clearance` : tap;
  },
  bestLoad: (resistance: number, gain: number): string =>
    `${formatQuantity(resistance, 'resistance', 2)}, ${formatQuantity(gain, 'level')}`,
} as const;
