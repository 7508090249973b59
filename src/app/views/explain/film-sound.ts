import { FILM_SOUND_RATE } from '../../../outputs/explain/index.ts';

export const SOUND_BITRATE = 96_000;

export type SoundCodec = 'opus' | 'aac';

/** What each kind of film can hold, best first: AAC in MP4 plays in more players and video editors than Opus in MP4. */
const CODECS: Readonly<Record<'webm' | 'mp4', readonly SoundCodec[]>> = { webm: ['opus'], mp4: ['aac', 'opus'] };
/** As encoders are asked for them; AAC is its low-complexity profile. */
const NAMES: Readonly<Record<SoundCodec, string>> = { opus: 'opus', aac: 'mp4a.40.2' };

/** The codec a film's sound can have in this browser. @returns undefined where there is none: the film is then silent. */
export async function soundCodec(format: 'webm' | 'mp4'): Promise<SoundCodec | undefined> {
  if (typeof AudioEncoder === 'undefined') return undefined;
  for (const codec of CODECS[format]) if (await canEncode(NAMES[codec])) return codec;
  return undefined;
}

async function canEncode(codec: string): Promise<boolean> {
  try {
    const config = { codec, sampleRate: FILM_SOUND_RATE, numberOfChannels: 1, bitrate: SOUND_BITRATE };
    return (await AudioEncoder.isConfigSupported(config)).supported === true;
  } catch {
    return false;
  }
}
