import { formatNumber, formatQuantity } from '../../engine/units/format.ts';
import type { DetectorOnStation } from '../../engine/vary/compare.ts';
import { comparedDetector, compareTableWords, verdictWords } from '../words/index.ts';
import { table } from './table.ts';

/** Detectors on one station, a row for each. */
export function compareTable(rows: readonly DetectorOnStation[], width?: number): string {
  const { columns, bestTap, bestLoad } = compareTableWords;
  return table(
    [
      { title: columns.detector, text: comparedDetector },
      { title: columns.sound, text: (r) => `${Math.round(r.soundPressureLevel)} dB SPL`, align: 'right' },
      { title: columns.difference, text: (r) => formatQuantity(r.difference, 'level'), align: 'right' },
      { title: columns.verdict, text: (r) => verdictWords[r.heard] },
      { title: columns.direct, text: (r) => formatQuantity(r.directVoltage, 'voltage', 2), align: 'right' },
      {
        title: columns.inputResistance,
        text: (r) => formatQuantity(r.inputResistance, 'resistance', 2),
        align: 'right',
      },
      { title: columns.loadedQ, text: (r) => formatNumber(r.loadedQ, 2), align: 'right' },
      { title: columns.loading, text: (r) => formatQuantity(r.loading, 'level', 2).replace('+', ''), align: 'right' },
      { title: columns.distortion, text: (r) => formatQuantity(r.distortion, 'ratio', 2), align: 'right' },
      { title: columns.linearAbove, text: (r) => formatQuantity(r.squareLawEnds, 'voltage', 2), align: 'right' },
      { title: columns.bestTap, text: (r) => (r.bestTap ? bestTap(r.bestTap) : '') },
      { title: columns.bestLoad, text: (r) => bestLoad(r.bestLoad.resistance, r.bestLoad.gain) },
    ],
    rows,
    width,
  );
}
