import { receiveRanged } from '../../engine/index.ts';
import {
  FILM_SOUND_RATE,
  GifWriter,
  gifColours,
  gifDelay,
  gifSamples,
  type StoryScene,
  scenesOf,
  wavOf,
} from '../../outputs/explain/index.ts';
import { clean } from '../../outputs/tables/index.ts';
import { type CommandOptions, callProblems, filmAnswer } from '../../outputs/words/index.ts';
import { fileAndOptions } from '../arguments.ts';
import { chooseStation } from '../choose-station.ts';
import { packagedCoastFor } from '../coast.ts';
import { type Command, InputError, type Io } from '../command.ts';
import { endingOf } from '../ending.ts';
import { encodeFilm, findEncoder } from '../ffmpeg.ts';
import { type DrawnFilm, drawnFilm, drawnFrames, type FilmForm } from '../film-drawing.ts';
import { needsEnding } from '../needs-ending.ts';
import { numberOf, sizeFrom } from '../option-values.ts';
import { rasteriser } from '../rasteriser.ts';
import { readWrittenSet } from '../read-set.ts';
import { timeOfDay } from '../time-of-day.ts';
import { MOST_PIXELS } from '../write-picture.ts';
import { wrongOption } from '../wrong-option.ts';

const ENDINGS = ['gif', 'mp4', 'webm', 'wav', 'vtt'] as const;
type Ending = (typeof ENDINGS)[number];

const OPTIONS = {
  scene: { type: 'string', multiple: true },
  station: { type: 'string' },
  day: { type: 'boolean' },
  night: { type: 'boolean' },
  size: { type: 'string' },
  rate: { type: 'string' },
  dark: { type: 'boolean' },
  silent: { type: 'boolean' },
  frames: { type: 'string' },
  ffmpeg: { type: 'string' },
  out: { type: 'string' },
  switch: { type: 'string' },
} as const satisfies CommandOptions<'film'>;

/** Size, px, and frames a second where none are asked for: a GIF is for a page of text. */
const USUAL = { film: { size: [1280, 720], rate: 30 }, gif: { size: [640, 360], rate: 12.5 } } as const;
const FASTEST_GIF = 50;

export const film: Command = {
  name: 'film',
  options: OPTIONS,
  examples: [
    'faintwave film examples/medium-wave-galena.json',
    'faintwave film examples/medium-wave-galena.json --scene 1 --out carrier.gif',
    'faintwave film examples/medium-wave-galena.json --size 1920x1080 --out story.mp4',
  ],
  async run(args, io) {
    const { values, file } = fileAndOptions(args, OPTIONS);
    const { set, written } = await readWrittenSet(file, io, values.switch);
    const { out, frames } = values;
    const ending = out === undefined ? undefined : endingOf(out, ENDINGS);
    if (ending && frames !== undefined) throw new InputError(callProblems.filmOrFrames);
    if (ending) await io.checkTarget(out!, ending);
    refuseUseless(values, ending);
    const form = formFrom(values, ending);
    // Before minutes of drawing.
    const encoder =
      ending === 'mp4' || ending === 'webm'
        ? findEncoder(values.ffmpeg ?? 'ffmpeg', ending, { sound: form.sound })
        : undefined;
    const every = scenesOf(written).scenes;
    const scenes = scenesFrom(values.scene, every);
    if (ending === 'gif' && values.scene === undefined && every.length > 1)
      throw new InputError(callProblems.sceneOfGif(every.length));
    const field = { time: timeOfDay(values, set.place), coast: packagedCoastFor(set.place) };
    const reception = receiveRanged(set, field);
    const station = values.station === undefined ? undefined : chooseStation(set.place.stations, values.station);
    const filmed = scenes.map((scene) => onStation(scene, station));
    const drawn = drawnFilm({ set, written, reception, field }, filmed, form);
    if (frames !== undefined) await writeFrames(io, frames, drawn, form);
    else if (out === undefined) {
      const rows = drawn.scenes.map(({ title, seconds }, i) => ({
        // Titles may be the same.
        number: every.indexOf(scenes[i]) + 1,
        title: clean(title),
        seconds,
      }));
      io.out(`${clean(set.name)}\n\n${filmAnswer.scenes(rows).join('\n')}\n\n${filmAnswer.toFilm}\n`);
      return 0;
    } else {
      const bytes = await fileOf(ending!, drawn, form, encoder, io);
      await io.write(out, bytes);
      const isSilent = ending === 'gif' || !form.sound;
      const figures = { file: out, scenes: scenes.length, seconds: drawn.seconds, bytes: bytes.length, isSilent };
      if (ending === 'wav') io.out(`${filmAnswer.sound(figures)}\n`);
      else if (ending === 'vtt') io.out(`${filmAnswer.captions(figures)}\n`);
      else io.out(`${filmAnswer.written({ ...figures, ...form, isPicture: ending === 'gif' })}\n`);
    }
    return 0;
  },
};

const ENCODED = ['mp4', 'webm'] as const;

/** @throws InputError for an option that would change nothing. */
function refuseUseless(values: Parameters<typeof needsEnding>[0], ending: Ending | undefined): void {
  needsEnding(values, ['ffmpeg'], ending, ENCODED);
  if (values.frames !== undefined) return;
  const frames = ['--frames FOLDER'];
  needsEnding(values, ['size', 'rate', 'dark'], ending, [...ENCODED, 'gif'], frames);
  // A GIF is silent anyway.
  if (ending !== 'gif') needsEnding(values, ['silent'], ending, ENCODED, frames);
}

interface FormOptions {
  readonly size?: string;
  readonly rate?: string;
  readonly dark?: boolean;
  readonly silent?: boolean;
}

function formFrom(values: FormOptions, ending: Ending | undefined): FilmForm {
  const usual = ending === 'gif' ? USUAL.gif : USUAL.film;
  const [width, height] = values.size === undefined ? usual.size : sizeFrom(values.size, 1);
  const isEncoded = ending === 'mp4' || ending === 'webm';
  if (isEncoded && (width % 2 === 1 || height % 2 === 1))
    throw wrongOption('--size', { code: 'even size' }, values.size);
  if (width * height > MOST_PIXELS)
    throw wrongOption('--size', { code: 'pixels at most', most: MOST_PIXELS }, values.size);
  const asked = numberOf(values.rate, usual.rate, '--rate', 1, ending === 'gif' ? FASTEST_GIF : 60);
  // A GIF counts time in hundredths of a second.
  const rate = ending === 'gif' ? 1 / gifDelay(asked) : asked;
  const sound = ending !== 'gif' && values.silent !== true;
  return { width, height, rate, dark: values.dark === true, sound };
}

/** Scenes by number or by part of their title, in the order they are asked for; all where none is. @throws InputError */
function scenesFrom(given: readonly string[] | undefined, every: readonly StoryScene[]): readonly StoryScene[] {
  if (given === undefined) return every;
  return given.map((text) => {
    const name = text.trim().toLowerCase();
    const titled = every.filter(({ title }) => title.toLowerCase().includes(name));
    const exact = every.find(({ title }) => title.toLowerCase() === name);
    const scene = /^\d+$/.test(name)
      ? every[Number(name) - 1]
      : (exact ?? (titled.length === 1 ? titled[0] : undefined));
    if (!scene || name === '')
      throw wrongOption(
        '--scene',
        { code: 'scene', scenes: every.map(({ title }) => clean(title)), several: titled.length > 1 },
        text,
      );
    return scene;
  });
}

const onStation = (scene: StoryScene, station: number | undefined): StoryScene =>
  station === undefined || scene.settings?.station !== undefined
    ? scene
    : { ...scene, settings: { ...scene.settings, station } };

async function fileOf(
  ending: Ending,
  drawn: DrawnFilm,
  form: FilmForm,
  encoder: ReturnType<typeof findEncoder> | undefined,
  io: Io,
): Promise<Uint8Array> {
  if (ending === 'wav') return wavOf(drawn.sound(), FILM_SOUND_RATE);
  if (ending === 'vtt') return new TextEncoder().encode(drawn.captions());
  const raster = await rasteriser();
  const frames = drawnFrames(drawn, raster.pixels, (share) => io.progress('film', share));
  if (ending !== 'gif') {
    const sound = form.sound ? wavOf(drawn.sound(), FILM_SOUND_RATE) : undefined;
    return encodeFilm(encoder!, { ...form, ending, frames, sound });
  }
  const samples = gifSamples(drawn.frames).map((frame) => raster.pixels(drawn.svg(frame)).bytes);
  const table = gifColours(drawn.colours, samples);
  const gif = new GifWriter(form, 1 / form.rate, table);
  for (const { bytes } of frames) gif.add(bytes);
  return gif.finish();
}

const isOfSeries = (name: string): boolean => /^(frame-\d+\.png|sound\.wav|captions\.vtt)$/i.test(name);

/** Every frame as a PNG, with sound and captions, to be joined by another program. */
async function writeFrames(io: Io, folder: string, drawn: DrawnFilm, form: FilmForm): Promise<void> {
  const { png } = await rasteriser();
  await io.writeSeries(folder, '--frames', isOfSeries, framesOf(io, drawn, form, png));
  io.out(`${filmAnswer.frames({ folder, frames: drawn.frames, seconds: drawn.seconds, ...form })}\n`);
}

function* framesOf(io: Io, drawn: DrawnFilm, form: FilmForm, png: (svg: string) => Uint8Array) {
  const digits = String(drawn.frames).length;
  let number = 0;
  for (const data of drawnFrames(drawn, png, (share) => io.progress('film', share)))
    yield { name: `frame-${String(++number).padStart(digits, '0')}.png`, data };
  if (form.sound) yield { name: 'sound.wav', data: wavOf(drawn.sound(), FILM_SOUND_RATE) };
  yield { name: 'captions.vtt', data: drawn.captions() };
}
