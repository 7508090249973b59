import type { DetectorOnStation } from '../../engine/reception/compare.ts';
import { formatQuantity } from '../../engine/units/format.ts';

/** Which law a detector works by on the station, beside where the one gives way to the other. */
export function lawHere({
  carrierVoltage,
  squareLawEnds,
  fieldExponent,
}: Pick<DetectorOnStation, 'carrierVoltage' | 'squareLawEnds' | 'fieldExponent'>): string {
  const here = formatQuantity(carrierVoltage, 'voltage', 2);
  const ends = formatQuantity(squareLawEnds, 'voltage', 2);
  if (fieldExponent > 2.3) return `Here ${here} of carrier hardly reach its bend; square law ends at some ${ends}.`;
  if (fieldExponent > 1.6) return `Here it works by square law, on ${here} of carrier; that ends at some ${ends}.`;
  if (fieldExponent < 1.2)
    return `Here it follows the envelope straight, on ${here} of carrier; square law ended at some ${ends}.`;
  return `Here it works between square law and straight detection, on ${here} of carrier; the change is at some ${ends}.`;
}
