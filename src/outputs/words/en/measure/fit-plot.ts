import { formatNumber, formatQuantity } from '../../../../engine/units/format.ts';
import type { QuantityKind } from '../../../../engine/units/parse.ts';

/** The plot of readings with what was fitted through them. */
export const fitPlotWords = {
  title: (measurement: string): string => `${measurement}: readings and fit`,
  residuals: 'reading less fit',
  fit: 'fit',
  readings: 'readings',
  suspect: 'left out',
  /** Of a point that the scale does not reach. */
  beyond: (value: string, unit: string): string => (unit === '' ? `off by ${value}` : `off by ${value} ${unit}`),
  text: (count: number, suspects: number, largest: number, quantity: QuantityKind | undefined): string =>
    [
      `${count} readings`,
      ...(suspects > 0 ? [`${suspects} left out as misread`] : []),
      ...(Number.isFinite(largest)
        ? [
            `the largest difference between reading and fit is ${quantity ? formatQuantity(largest, quantity, 2) : formatNumber(largest, 2)}`,
          ]
        : ['no curve is fitted through them']),
    ]
      .join('; ')
      .concat('.'),
} as const;
