import type { Fitted } from '../../../../engine/measure/fitted.ts';
import { formatNumber, formatQuantity } from '../../../../engine/units/format.ts';
import type { QuantityKind } from '../../../../engine/units/parse.ts';
import { fittedText } from './results.ts';

/** The plot of readings with what was fitted through them. */
export const fitPlotWords = {
  title: (measurement: string): string => `${measurement}: readings and fit`,
  residuals: 'reading less fit',
  fit: 'fit',
  readings: 'readings',
  suspect: 'left out',
  readOff: 'station',
  mean: 'mean',
  /** Of a point that the scale does not reach. */
  beyond: (value: string, unit: string): string => (unit === '' ? `off by ${value}` : `off by ${value} ${unit}`),
  text: (
    {
      count,
      suspects,
      largest,
      isReadOff,
    }: { readonly count: number; readonly suspects: number; readonly largest: number; readonly isReadOff: boolean },
    quantity: QuantityKind | undefined,
  ): string =>
    [
      count === 1 ? 'One reading' : `${count} readings`,
      ...(suspects > 0 ? [`${suspects} left out as misread`] : []),
      ...(Number.isFinite(largest)
        ? [
            `the largest difference between reading and fit is ${quantity ? formatQuantity(largest, quantity, 2) : formatNumber(largest, 2)}`,
          ]
        : [isReadOff ? 'the station is read off the curve through them' : 'no curve is fitted through them']),
    ]
      .join('; ')
      .concat('.'),
} as const;

/** The plot of measured figures over the calculated ones. */
export const besideCalculatedWords = {
  title: (measurement: string): string => `${measurement}: measured and calculated`,
  measured: 'measured',
  calculated: 'calculated',
  sentence: ({
    label,
    quantity,
    measured,
    calculated,
  }: {
    readonly label: string;
    readonly quantity?: QuantityKind;
    readonly measured: Fitted;
    readonly calculated?: Fitted;
  }): string =>
    calculated
      ? `${label}: measured ${fittedText(measured, quantity)}; calculated ${fittedText(calculated, quantity)}.`
      : `${label}: measured ${fittedText(measured, quantity)}.`,
} as const;
