import type { Ohms } from '../../units/quantities.ts';
import type { AveragedCurrents, AveragedDetector } from './averaged.ts';

/**
 * Two like devices as one averaged device.
 * - `full-wave`: fed from the two ends of a centre-tapped coil into one load. V is the carrier on one half of the coil,
 *   and the current that of one half which would load the coil as both do (close coupling between the halves).
 * - `doubler`: one conducts on each half of the carrier, their direct voltages add. v0 is the direct voltage over both.
 * Everything that takes an averaged device takes these.
 */
export function pairAveraged(single: AveragedDetector, wiring: 'full-wave' | 'doubler'): AveragedDetector {
  const { detector, at } = single;
  const withResistance =
    single.withResistance && ((added: Ohms) => pairAveraged(single.withResistance!(added), wiring));
  if (wiring === 'full-wave') {
    return {
      detector,
      withResistance,
      at(amplitude, direct, out) {
        at(amplitude, direct, out);
        for (const key of KEYS) out[key] *= 2;
      },
    };
  }
  return {
    detector,
    inSeries: 2,
    withResistance,
    at(amplitude, direct, out) {
      at(amplitude, direct / 2, out);
      out.meanByDirect /= 2;
      out.fundamental *= 2;
      out.fundamentalByAmplitude *= 2;
    },
  };
}

const KEYS: readonly (keyof AveragedCurrents)[] = [
  'mean',
  'fundamental',
  'meanByAmplitude',
  'meanByDirect',
  'fundamentalByAmplitude',
  'fundamentalByDirect',
];
