export const SOUND_RATE = 48_000;
export const SOUND_BITRATE = 96_000;

/** The codec a film's sound can have in this browser. @returns undefined where there is none: the film is then silent. */
export async function soundCodec(format: 'webm' | 'mp4'): Promise<'opus' | 'aac' | undefined> {
  if (typeof AudioEncoder === 'undefined') return undefined;
  const can = async (codec: string): Promise<boolean> => {
    try {
      const config = { codec, sampleRate: SOUND_RATE, numberOfChannels: 1, bitrate: SOUND_BITRATE };
      return (await AudioEncoder.isConfigSupported(config)).supported === true;
    } catch {
      return false;
    }
  };
  if (await can('opus')) return 'opus';
  // WebM has no place for it.
  return format === 'mp4' && (await can('mp4a.40.2')) ? 'aac' : undefined;
}
