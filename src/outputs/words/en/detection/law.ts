import type { DetectionLaw } from '../../../../engine/reception/detection/detection-law.ts';
import { formatQuantity } from '../../../../engine/units/format.ts';
import type { DetectorOnStation } from '../../../../engine/vary/compare.ts';

const LAW: Readonly<Record<DetectionLaw, (carrier: string, linearFrom: string) => string>> = {
  square: (carrier, from) => `Square law at this carrier of ${carrier}; linear detection above ${from}.`,
  'faster than square': (carrier, from) =>
    `The carrier of ${carrier} is too small for the bend of its curve; linear detection above ${from}.`,
  between: (carrier, from) =>
    `Between square law and linear detection at this carrier of ${carrier}; the change is at about ${from}.`,
  linear: (carrier, from) => `Linear detection at this carrier of ${carrier}; the change is at about ${from}.`,
};

/** Which law a detector works by on the station, beside where the one gives way to the other. */
export const detectionLawWords = ({
  carrierVoltage,
  squareLawEnds,
  law,
}: Pick<DetectorOnStation, 'carrierVoltage' | 'squareLawEnds' | 'law'>): string =>
  LAW[law](formatQuantity(carrierVoltage, 'voltage', 2), formatQuantity(squareLawEnds, 'voltage', 2));
