import {
  AudioSample,
  AudioSampleSource,
  BufferTarget,
  CanvasSource,
  canEncodeVideo,
  Mp4OutputFormat,
  Output,
  VideoSample,
  VideoSampleSource,
  WebMOutputFormat,
} from 'mediabunny';
import {
  Columns,
  FILM_SOUND_RATE,
  type FilmPart,
  filmFrame,
  filmPartAt,
  filmPlan,
  filmSeconds,
  filmSound,
  frameCount,
  GifWriter,
  gifColours,
  gifDelay,
  gifSamples,
  type Prepared,
  paintStage,
  preparer,
} from '../../../outputs/explain/index.ts';
import { explainTexts } from '../../../outputs/words/index.ts';
import { faceReady } from '../../style/face.ts';
import { coastFor } from '../../workers/coast.ts';
import { canvasPen } from './canvas-pen.ts';
import { paletteFor } from './colours.ts';
import type { FilmNews, FilmOrder } from './film.ts';
import { SOUND_BITRATE, soundCodec } from './film-sound.ts';
import { limitedRange, limitedRangeSize } from './limited-range.ts';
import { ShownError } from './scene-problem.ts';

const tell = (news: FilmNews, transfer: Transferable[] = []) => postMessage(news, { transfer });

addEventListener('message', ({ data }: MessageEvent<FilmOrder>) => {
  const { format } = data;
  (format === 'gif' ? makeGif(data) : make({ ...data, format })).catch((error: unknown) =>
    tell({ error: error instanceof ShownError ? error.message : explainTexts.exporting.problems.film }),
  );
});

/** A film as its own file. */
type EncodedOrder = FilmOrder & { readonly format: 'webm' | 'mp4' };

async function make(order: EncodedOrder): Promise<void> {
  const { width, height, rate, format, scenes } = order;
  await faceReady();
  const coast = order.set && (await coastFor(order.set.place));
  const prepare = preparer(order.set, order.reception, order.recording, { time: order.time, coast });
  const parts = filmPlan(scenes, (scene) => prepare(scene).facts);
  const whole = filmSeconds(parts);
  const total = Math.min(whole, order.seconds ?? whole);
  const canvas = new OffscreenCanvas(width, height);
  const { output, addFrame, sound } = await openOutput(order, canvas);
  const paint = painterOf(order, canvas);
  await output.start();
  const frames = frameCount(total, rate);
  const progress = progressOf(frames);
  let heard: FilmPart | undefined;
  for (let frame = 0; frame < frames; frame++) {
    const t = frame / rate;
    const part = filmPartAt(parts, t);
    const prepared = prepare(part.scene);
    if (sound && part !== heard) {
      // Sound a scene at a time, so that it keeps step with the frames.
      heard = part;
      const data = filmSound(prepared, part, FILM_SOUND_RATE, Math.min(part.seconds, total - part.start));
      const look = { format: 'f32', numberOfChannels: 1, sampleRate: FILM_SOUND_RATE, timestamp: part.start } as const;
      const sample = new AudioSample({ data, ...look });
      await sound.add(sample);
      sample.close();
    }
    paint(part, prepared, t - part.start);
    await addFrame(t, 1 / rate);
    progress(frame);
  }
  await output.finalize();
  const file = (output.target as BufferTarget).buffer!;
  tell({ progress: 1 });
  tell({ file, type: format === 'mp4' ? 'video/mp4' : 'video/webm', silent: order.sound && !sound }, [file]);
}

/** An animated picture: as a film, without sound, in one table of colours. */
async function makeGif(order: FilmOrder): Promise<void> {
  const { width, height, rate, scenes } = order;
  await faceReady();
  const coast = order.set && (await coastFor(order.set.place));
  const prepare = preparer(order.set, order.reception, order.recording, { time: order.time, coast });
  const parts = filmPlan(scenes, (scene) => prepare(scene).facts);
  const canvas = new OffscreenCanvas(width, height);
  const paint = painterOf({ ...order, sound: false }, canvas);
  const context = canvas.getContext('2d')!;
  const delay = gifDelay(rate);
  const frames = frameCount(filmSeconds(parts), 1 / delay);
  const pixelsOf = (frame: number): Uint8Array => {
    const t = frame * delay;
    const part = filmPartAt(parts, t);
    paint(part, prepare(part.scene), t - part.start);
    return new Uint8Array(context.getImageData(0, 0, width, height).data.buffer);
  };
  const colours = gifColours(paletteFor(order.background, order.page), gifSamples(frames).map(pixelsOf));
  const gif = new GifWriter(order, delay, colours);
  const progress = progressOf(frames);
  for (let frame = 0; frame < frames; frame++) {
    gif.add(pixelsOf(frame));
    progress(frame);
  }
  const file = gif.finish().slice().buffer;
  tell({ progress: 1 });
  tell({ file, type: 'image/gif', silent: false }, [file]);
}

/** Only WebM has a place for what is see-through. */
const isClear = ({ background, format }: FilmOrder): boolean => background === 'transparent' && format === 'webm';

/** The file with its tracks. @throws ShownError where the browser has no encoder for the picture. */
async function openOutput(order: EncodedOrder, canvas: OffscreenCanvas) {
  const { width, height, rate, format } = order;
  const video = format === 'mp4' ? 'avc' : 'vp9';
  const bitrate = Math.round(width * height * rate * 0.06);
  if (!(await canEncodeVideo(video, { width, height, bitrate }))) {
    const { problems, formatNames } = explainTexts.exporting;
    throw new ShownError(problems.codec(formatNames[format], width, height));
  }
  const output = new Output({
    format: format === 'mp4' ? new Mp4OutputFormat({ fastStart: 'in-memory' }) : new WebMOutputFormat(),
    target: new BufferTarget(),
  });
  const encoding = { codec: video, bitrate, keyFrameInterval: 2 } as const;
  const { source, addFrame } = isClear(order) ? clearPicture(canvas, encoding) : solidPicture(canvas, encoding);
  output.addVideoTrack(source, { frameRate: rate });
  const codec = order.sound ? await soundCodec(format) : undefined;
  const sound = codec && new AudioSampleSource({ codec, bitrate: SOUND_BITRATE });
  if (sound) output.addAudioTrack(sound);
  return { output, addFrame, sound };
}

type Encoding = ConstructorParameters<typeof VideoSampleSource>[0];

/** Frames with what is see-through in them, as the canvas has them. */
function clearPicture(canvas: OffscreenCanvas, encoding: Encoding) {
  const source = new CanvasSource(canvas, { ...encoding, alpha: 'keep' });
  return { source, addFrame: (timestamp: number, duration: number) => source.add(timestamp, duration) };
}

const COLOUR_SPACE = { primaries: 'bt709', transfer: 'bt709', matrix: 'bt709', fullRange: false } as const;

/** Frames in limited range. */
function solidPicture(canvas: OffscreenCanvas, encoding: Encoding) {
  const { width, height } = canvas;
  const source = new VideoSampleSource(encoding);
  const data = new Uint8Array(limitedRangeSize(width, height));
  const size = { format: 'I420', codedWidth: width, codedHeight: height, colorSpace: COLOUR_SPACE } as const;
  const addFrame = async (timestamp: number, duration: number): Promise<void> => {
    limitedRange(canvas.getContext('2d')!.getImageData(0, 0, width, height).data, width, height, data);
    const sample = new VideoSample(data, { ...size, timestamp, duration });
    await source.add(sample);
    sample.close();
  };
  return { source, addFrame };
}

/** Draws one moment of a scene. */
function painterOf(order: FilmOrder, canvas: OffscreenCanvas) {
  const { width, height } = order;
  const clear = isClear(order);
  const ctx = canvas.getContext('2d', { alpha: clear, willReadFrequently: !clear })!;
  const palette = paletteFor(order.background, order.page);
  const pen = canvasPen(ctx, () => palette);
  const columns = new Columns();
  return (part: FilmPart, prepared: Prepared, seconds: number): void => {
    ctx.setTransform(1, 0, 0, 1, 0, 0);
    if (clear) ctx.clearRect(0, 0, width, height);
    else {
      ctx.fillStyle = palette.paper;
      ctx.fillRect(0, 0, width, height);
    }
    paintStage(pen, filmFrame(part, prepared, seconds, order), columns);
  };
}

/** Tells how far it is, now and then. */
function progressOf(frames: number) {
  const began = performance.now();
  let reportedAt = 0;
  return (frame: number): void => {
    const now = performance.now();
    if (now - reportedAt <= 150) return;
    reportedAt = now;
    const share = (frame + 1) / frames;
    tell({ progress: share, left_s: ((now - began) / 1000) * (1 / share - 1) });
  };
}
