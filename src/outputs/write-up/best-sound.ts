import type { FieldOptions } from '../../engine/reception/path/field.ts';
import type { Reception } from '../../engine/reception/path/types.ts';
import type { SetDescription } from '../../engine/set/description.ts';
import { renderListening, SOUND_RATE, writeWav } from '../audio/index.ts';

const SECONDS = 5;

/**
 * The station heard best, as a sound that a write-up carries.
 * @param set as read
 * @param reception of the set
 * @param options time and coastline; `onProgress` is told how much is done, 0 to 1
 * @returns a WAV file, amplified; undefined where no station is tuned in
 */
export function bestSound(
  set: SetDescription,
  { best, stations }: Reception,
  options: FieldOptions & { readonly onProgress?: (share: number) => void } = {},
): Uint8Array | undefined {
  const station = stations[best[0]];
  if (!station || station.outOfRange) return undefined;
  const sound = renderListening(set, {
    ...options,
    station: station.index,
    level: station.soundPressureLevel,
    how: 'amplified',
    seconds: SECONDS,
  });
  return writeWav([sound], { rate: SOUND_RATE });
}
