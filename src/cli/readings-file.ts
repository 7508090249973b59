import { ringingOf } from '../engine/index.ts';
import { readWav, SoundFileError } from '../outputs/audio/index.ts';
import { InputError, type Io } from './command.ts';
import { BYTES_INSPECTED, contentKind } from './content-kind.ts';

/**
 * Readings out of a file that an instrument wrote: a WAV of a ringing, cut from its edge on (its first channel), or a table
 * of time and volts.
 * @returns undefined for any other file
 */
export async function instrumentReadings(file: string, io: Io): Promise<unknown> {
  if (file === '-') return undefined;
  const source = await io.open(file);
  try {
    const kind = contentKind(await source.read(0, Math.min(source.size, BYTES_INSPECTED)));
    if (kind === 'csv') return { kind: 'decay-record', record: await io.read(file) };
    if (kind !== 'wav') return undefined;
    const { rate, channels } = await readWav(await source.read(0, source.size));
    return { kind: 'decay', sampleRate: rate, samples: [...ringingOf(channels[0])] };
  } catch (refusal) {
    if (refusal instanceof SoundFileError) throw new InputError(`${file}: ${refusal.message}`);
    throw refusal;
  } finally {
    await source.close();
  }
}
