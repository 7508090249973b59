import type { DetectionLaw } from '../../engine/reception/detection/detection-law.ts';
import { formatQuantity } from '../../engine/units/format.ts';
import type { DetectorOnStation } from '../../engine/vary/compare.ts';

/** Which law a detector works by on the station, beside where the one gives way to the other. */
export function lawHere({
  carrierVoltage,
  squareLawEnds,
  law,
}: Pick<DetectorOnStation, 'carrierVoltage' | 'squareLawEnds' | 'law'>): string {
  const here = formatQuantity(carrierVoltage, 'voltage', 2);
  const ends = formatQuantity(squareLawEnds, 'voltage', 2);
  const says: Record<DetectionLaw, string> = {
    square: `Here it works by square law, on ${here} of carrier; straight detection begins at some ${ends}.`,
    'faster than square': `Here ${here} of carrier hardly reach its bend; straight detection begins at some ${ends}.`,
    between: `Here it works between square law and straight detection, on ${here} of carrier; the change is at some ${ends}.`,
    straight: `Here it follows the envelope straight, on ${here} of carrier; the change is at some ${ends}.`,
  };
  return says[law];
}
