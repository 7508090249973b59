import { type ChildProcess, spawn, spawnSync } from 'node:child_process';
import { randomUUID } from 'node:crypto';
import { once } from 'node:events';
import { mkdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { callProblems } from '../outputs/words/index.ts';
import { InputError } from './command.ts';
import type { Pixels } from './rasteriser.ts';
import { forget, remember, undisturbed } from './temporaries.ts';

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
  /** Left out: for silent films only. */
  readonly sound?: string;
}

/**
 * Looks for ffmpeg and what it can encode.
 * @param needs whether the film has sound, and how long the program may take to answer, ms.
 * @throws InputError where it is missing or cannot do that.
 */
export function findEncoder(
  program: string,
  ending: FilmEnding,
  needs: { readonly sound: boolean; readonly patience?: number },
): Encoder {
  const list = encodersOf(program, needs.patience ?? 30_000);
  if (list === undefined) throw new InputError(callProblems.noFfmpeg(program));
  const has = (name: string): boolean => new RegExp(`^\\s*[VA]\\S*\\s+${name}\\s`, 'm').test(list);
  const [picture, sound] = [ENCODERS[ending].picture.find(has), ENCODERS[ending].sound.find(has)];
  if (!picture) throw new InputError(callProblems.noEncoder(program, ENCODERS[ending].picture, ending));
  if (!needs.sound) return { program, picture };
  if (!sound) throw new InputError(callProblems.noSoundEncoder(program, ENCODERS[ending].sound, ending));
  return { program, picture, sound };
}

/** @returns undefined where the program cannot be started, fails, or does not end. */
function encodersOf(program: string, patience: number): string | undefined {
  try {
    const { error, stdout, status } = spawnSync(program, ['-hide_banner', '-encoders'], {
      encoding: 'utf8',
      timeout: patience,
      killSignal: 'SIGKILL',
    });
    return error || status !== 0 ? undefined : stdout;
  } catch {
    // A name that is no name of a program, such as an empty one.
    return undefined;
  }
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
    ...(sound && soundEncoder ? ['-c:a', soundEncoder, '-b:a', '128k', '-shortest'] : []),
    ...(ending === 'mp4' ? ['-movflags', '+faststart'] : []),
    out,
  ];
}

/**
 * Pipes frames through ffmpeg.
 * @returns bytes of the film.
 * @throws InputError with what ffmpeg says when it fails; what drawing the frames throws, as it is.
 */
export async function encodeFilm(encoder: Encoder, film: FilmToEncode): Promise<Uint8Array> {
  const folder = join(tmpdir(), `faintwave-film-${randomUUID()}`);
  const out = join(folder, `film.${film.ending}`);
  const sound = film.sound && join(folder, 'sound.wav');
  let running: Running | undefined;
  // Known before it is there: an interruption may come while it is being made.
  remember(folder, () => running?.program.kill('SIGKILL'));
  try {
    await onDisk(() => undisturbed(() => mkdir(folder, { mode: 0o700 })));
    if (sound) await onDisk(() => writeFile(sound, film.sound!));
    running = started(encoder.program, argumentsFor(encoder, film, sound, out));
    await pipeFrames(running, film.frames);
    return await readFile(out).catch((error: Error) => {
      throw new InputError(callProblems.ffmpegFailed(error.message));
    });
  } finally {
    running?.program.kill('SIGKILL');
    // Its folder is not empty for good before it has ended.
    await running?.ended;
    await rm(folder, { recursive: true, force: true });
    forget(folder);
  }
}

async function onDisk(work: () => Promise<unknown>): Promise<void> {
  try {
    await work();
  } catch (error) {
    throw new InputError(callProblems.noTemporaryFiles(tmpdir(), (error as Error).message));
  }
}

interface Running {
  readonly program: ChildProcess;
  /** Resolves, in every case, with what it complains of; undefined where it has done its work. */
  readonly ended: Promise<string | undefined>;
  readonly hasEnded: () => boolean;
}

function started(name: string, args: readonly string[]): Running {
  const program = spawn(name, args, { stdio: ['pipe', 'ignore', 'pipe'] });
  let complaint = '';
  program.stderr!.setEncoding('utf8').on('data', (text: string) => {
    complaint = (complaint + text).slice(-2000);
  });
  // It may end before it has read everything; why, it says itself.
  program.stdin!.on('error', () => {});
  let isOver = false;
  const ended = new Promise<string | undefined>((resolve) => {
    const end = (problem: string | undefined): void => {
      isOver = true;
      resolve(problem);
    };
    program.on('error', (error) => end(error.message));
    program.on('close', (code) => end(code === 0 ? undefined : complaint.trim().split('\n').slice(-3).join(' ')));
  });
  return { program, ended, hasEnded: () => isOver || program.exitCode !== null };
}

/** Writes each frame as fast as the program reads it. @throws InputError when the program ends with an error. */
async function pipeFrames({ program, ended, hasEnded }: Running, frames: Iterable<Pixels>): Promise<void> {
  const { stdin } = program;
  for (const { bytes } of frames) {
    if (hasEnded()) break;
    if (!stdin!.write(bytes)) await Promise.race([once(stdin!, 'drain').catch(() => {}), ended]);
  }
  stdin!.end();
  const problem = await ended;
  if (problem !== undefined) throw new InputError(callProblems.ffmpegFailed(problem));
}
