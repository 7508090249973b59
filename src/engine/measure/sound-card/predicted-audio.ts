import { setCircuit } from '../../built/set-circuit.ts';
import { receiveOnDial } from '../../reception/dial/dial.ts';
import { type FieldOptions, fieldsAtSite } from '../../reception/path/field.ts';
import { receiver } from '../../reception/path/receive-station.ts';
import { speechBands } from '../../reception/path/speech-bands.ts';
import type { SetDescription } from '../../set/description.ts';
import type { BandLevel } from './audio-spectrum.ts';

/** How a set's audio comes to a sound card: across the phones, or by a microphone at one of them. */
export type AudioPickup = 'line' | 'microphone';

/**
 * The audio of a station as a set is predicted to give it: its kind of programme, the loss of treble by the tuned circuit
 * and the load, and the phones.
 * @param set as read
 * @param station place in the list of its place
 * @param pickup across the phones, or at the ear
 * @param options when the station is heard, as of `receive`
 * @returns long-term level of each third octave that is sent: dBV across the phones, or dB SPL at the ear
 * @throws RangeError for parts that cannot be built, or a station that the set cannot be tuned to
 */
export function predictedAudio(
  set: SetDescription,
  station: number,
  pickup: AudioPickup,
  options: FieldOptions = {},
): readonly BandLevel[] {
  const ready = receiver(setCircuit(set), fieldsAtSite(set.place, options));
  const described = set.place.stations[station];
  if (!described) throw new RangeError(`there is no station ${station}`);
  const tuned = receiveOnDial(ready, described);
  if (!tuned.within) throw new RangeError(`the set cannot be tuned to "${described.name}"`);
  const bands = speechBands(ready, tuned);
  return bands
    .filter(({ level }) => Number.isFinite(level))
    .map(({ frequency, level }) => ({
      frequency,
      level: pickup === 'line' ? level - ready.soundPressureOfVoltAt(frequency) : level,
    }));
}
