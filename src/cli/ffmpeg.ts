import { type ChildProcess, spawn, spawnSync } from 'node:child_process';
import { once } from 'node:events';
import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { callProblems } from '../outputs/words/index.ts';
import { InputError } from './command.ts';
import type { Pixels } from './rasteriser.ts';

export type FilmEnding = 'mp4' | 'webm';

/** Encoders for each kind of film, the best first: builds of ffmpeg have different ones. */
const ENCODERS: Readonly<
  Record<FilmEnding, { readonly picture: readonly string[]; readonly sound: readonly string[] }>
> = {
  mp4: { picture: ['libx264', 'libopenh264', 'h264_videotoolbox', 'h264_mf'], sound: ['aac', 'aac_at'] },
  webm: { picture: ['libvpx-vp9', 'libsvtav1'], sound: ['libopus', 'libvorbis'] },
};

/** How well each encoder keeps thin lines and small letters; those not named here are told a bitrate. */
const QUALITY: Readonly<Record<string, readonly string[]>> = {
  libx264: ['-preset', 'medium', '-tune', 'animation', '-crf', '16'],
  'libvpx-vp9': ['-crf', '20', '-b:v', '0', '-row-mt', '1', '-deadline', 'good', '-cpu-used', '4'],
  libsvtav1: ['-crf', '22', '-preset', '8'],
};
/** Bits to a pixel of a frame, for the others. */
const BITS_PER_PIXEL = 0.15;

/** An ffmpeg program that can write one kind of film. */
export interface Encoder {
  readonly program: string;
  readonly picture: string;
  readonly sound: string;
}

/** Looks for ffmpeg and what it can encode. @throws InputError where it is missing or cannot do that. */
export function findEncoder(program: string, ending: FilmEnding): Encoder {
  const { error, stdout, status } = spawnSync(program, ['-hide_banner', '-encoders'], { encoding: 'utf8' });
  if (error || status !== 0) throw new InputError(callProblems.noFfmpeg(program));
  const has = (name: string): boolean => new RegExp(`^\\s*[VA]\\S*\\s+${name}\\s`, 'm').test(stdout);
  const { picture, sound } = ENCODERS[ending];
  const chosen = { picture: picture.find(has), sound: sound.find(has) };
  if (!chosen.picture || !chosen.sound)
    throw new InputError(callProblems.noEncoder(program, chosen.picture ? sound : picture, ending));
  return { program, picture: chosen.picture, sound: chosen.sound };
}

export interface FilmToEncode {
  readonly ending: FilmEnding;
  readonly width: number;
  readonly height: number;
  readonly rate: number;
  readonly frames: Iterable<Pixels>;
  /** A WAV file; left out: a silent film. */
  readonly sound?: Uint8Array;
}

/** Colours as high-definition video has them (ITU-R BT.709), 16 to 235: what players expect of a film that says nothing. */
const LIMITED = ['-color_range', 'tv', '-colorspace', 'bt709', '-color_primaries', 'bt709', '-color_trc', 'bt709'];

function argumentsFor(
  { picture, sound: soundEncoder }: Encoder,
  film: FilmToEncode,
  sound: string | undefined,
  out: string,
) {
  const { width, height, rate, ending } = film;
  const bitrate = String(Math.round(width * height * rate * BITS_PER_PIXEL));
  return [
    ...['-hide_banner', '-loglevel', 'error', '-y'],
    ...['-f', 'rawvideo', '-pixel_format', 'rgba', '-video_size', `${width}x${height}`, '-framerate', String(rate)],
    ...['-i', 'pipe:0'],
    ...(sound ? ['-i', sound] : []),
    ...[
      '-vf',
      'scale=in_range=full:out_range=tv:out_color_matrix=bt709:flags=accurate_rnd+full_chroma_int,format=yuv420p',
    ],
    ...['-c:v', picture, ...(QUALITY[picture] ?? ['-b:v', bitrate]), '-g', String(Math.round(2 * rate))],
    ...LIMITED,
    ...(sound ? ['-c:a', soundEncoder, '-b:a', '128k', '-shortest'] : []),
    ...(ending === 'mp4' ? ['-movflags', '+faststart'] : []),
    out,
  ];
}

/** Pipes frames through ffmpeg. @returns bytes of the film. @throws InputError with what ffmpeg says when it fails. */
export async function encodeFilm(encoder: Encoder, film: FilmToEncode): Promise<Uint8Array> {
  const folder = await mkdtemp(join(tmpdir(), 'faintwave-film-'));
  const out = join(folder, `film.${film.ending}`);
  let program: ChildProcess | undefined;
  try {
    const sound = film.sound && join(folder, 'sound.wav');
    if (sound) await writeFile(sound, film.sound!);
    program = spawn(encoder.program, argumentsFor(encoder, film, sound, out), { stdio: ['pipe', 'ignore', 'pipe'] });
    await pipeFrames(program, film.frames);
    return await readFile(out);
  } catch (error) {
    if (error instanceof InputError) throw error;
    throw new InputError(callProblems.ffmpegFailed((error as Error).message));
  } finally {
    program?.kill();
    await rm(folder, { recursive: true, force: true });
  }
}

/** Writes each frame as fast as it is taken. @throws InputError when the program ends with an error. */
async function pipeFrames(program: ChildProcess, frames: Iterable<Pixels>): Promise<void> {
  const { stdin, stderr } = program;
  let complaint = '';
  stderr!.setEncoding('utf8').on('data', (text: string) => {
    complaint = (complaint + text).slice(-2000);
  });
  let broken: Error | undefined;
  const ended = new Promise<number>((resolve) => {
    program.on('error', (error) => {
      broken = error;
      resolve(-1);
    });
    program.on('close', (code) => resolve(code ?? -1));
  });
  // It may end before it has read everything; why, it says itself.
  stdin!.on('error', () => {});
  for (const { bytes } of frames) {
    if (program.exitCode !== null || broken) break;
    if (!stdin!.write(bytes)) await Promise.race([once(stdin!, 'drain').catch(() => {}), ended]);
  }
  stdin!.end();
  const code = await ended;
  if (code !== 0)
    throw new InputError(
      callProblems.ffmpegFailed(broken?.message ?? complaint.trim().split('\n').slice(-3).join(' ')),
    );
}
