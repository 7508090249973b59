import {
  AudioSample,
  AudioSampleSource,
  BufferTarget,
  CanvasSource,
  canEncodeVideo,
  Mp4OutputFormat,
  Output,
  WebMOutputFormat,
} from 'mediabunny';
import { audible, Columns, filmPlan, paintStage, preparer, viewAt } from '../../../outputs/explain/index.ts';
import { coastFor } from '../../workers/coast.ts';
import { canvasPen } from './canvas-pen.ts';
import { paletteFor } from './colours.ts';
import { drawingOf } from './drawing.ts';
import type { FilmNews, FilmOrder } from './film.ts';
import { SOUND_BITRATE, SOUND_RATE, soundCodec } from './film-sound.ts';

const SOUND_LEVEL = 0.2;
/** Faded in and out at every cut, s. */
const FADE = 0.08;

const tell = (news: FilmNews, transfer: Transferable[] = []) => postMessage(news, { transfer });

addEventListener('message', ({ data }: MessageEvent<FilmOrder>) => {
  make(data).catch((error: Error) => tell({ error: error.message }));
});

async function make(order: FilmOrder): Promise<void> {
  const { width, height, rate, format, scenes } = order;
  const coast = order.set && (await coastFor(order.set.place));
  const prepare = preparer(order.set, order.reception, order.recording, { time: order.time, coast });
  const parts = filmPlan(scenes, (scene) => prepare(scene).facts);
  const whole = parts.reduce((sum, p) => sum + p.seconds, 0);
  const total = Math.min(whole, order.seconds ?? whole);

  // Only WebM has a place for what is see-through.
  const clear = order.background === 'transparent' && format === 'webm';
  const canvas = new OffscreenCanvas(width, height);
  const ctx = canvas.getContext('2d', { alpha: clear })!;
  const palette = paletteFor(order.background, order.page);
  const pen = canvasPen(ctx, () => palette);
  const columns = new Columns();

  const video = format === 'mp4' ? 'avc' : 'vp9';
  const bitrate = Math.round(width * height * rate * 0.06);
  if (!(await canEncodeVideo(video, { width, height, bitrate })))
    throw new Error(
      `This browser cannot make ${format === 'mp4' ? 'MP4' : 'WebM'} films of ${width} × ${height}; try the other kind.`,
    );
  const output = new Output({
    format: format === 'mp4' ? new Mp4OutputFormat({ fastStart: 'in-memory' }) : new WebMOutputFormat(),
    target: new BufferTarget(),
  });
  const picture = new CanvasSource(canvas, {
    codec: video,
    bitrate,
    keyFrameInterval: 2,
    alpha: clear ? 'keep' : 'discard',
  });
  output.addVideoTrack(picture, { frameRate: rate });
  let sound: AudioSampleSource | undefined;
  const codec = order.sound ? await soundCodec(format) : undefined;
  if (codec) {
    sound = new AudioSampleSource({ codec, bitrate: SOUND_BITRATE });
    output.addAudioTrack(sound);
  }
  await output.start();

  const frames = Math.round(total * rate);
  const began = performance.now();
  let told = 0;
  let heard = -1;
  for (let frame = 0; frame < frames; frame++) {
    const t = frame / rate;
    const index = Math.max(
      0,
      parts.findIndex((p) => t < p.start + p.seconds - 1e-9),
    );
    const part = parts[index];
    const prepared = prepare(part.scene);
    if (sound && index !== heard) {
      // Sound a scene at a time, so that it keeps step with the frames.
      heard = index;
      const seconds = Math.min(part.seconds, total - part.start);
      await sound.add(
        new AudioSample({
          data: soundOf(prepared, part.scene.hear, seconds),
          format: 'f32',
          numberOfChannels: 1,
          sampleRate: SOUND_RATE,
          timestamp: part.start,
        }),
      );
    }
    ctx.setTransform(1, 0, 0, 1, 0, 0);
    if (clear) ctx.clearRect(0, 0, width, height);
    else {
      ctx.fillStyle = palette.paper;
      ctx.fillRect(0, 0, width, height);
    }
    const view = viewAt(part.scene, t - part.start);
    paintStage(
      pen,
      drawingOf({ scene: part.scene, prepared, presented: true }, view, t - part.start, width, height, 1),
      columns,
    );
    await picture.add(t, 1 / rate);
    const now = performance.now();
    if (now - told > 150) {
      told = now;
      const share = (frame + 1) / frames;
      tell({ progress: share, left_s: ((now - began) / 1000) * (1 / share - 1) });
    }
  }
  await output.finalize();
  const file = (output.target as BufferTarget).buffer!;
  tell({ progress: 1 });
  tell({ file, type: format === 'mp4' ? 'video/mp4' : 'video/webm', silent: order.sound && !codec }, [file]);
}

function soundOf(
  prepared: ReturnType<ReturnType<typeof preparer>>,
  hear: Parameters<typeof audible>[1] | undefined,
  seconds: number,
): Float32Array {
  const n = Math.round(seconds * SOUND_RATE);
  if (!hear) return new Float32Array(n);
  const samples = audible(prepared.waves, hear, seconds, SOUND_RATE, SOUND_LEVEL);
  const fade = Math.min(FADE * SOUND_RATE, n / 2);
  for (let i = 0; i < fade; i++) {
    samples[i] *= i / fade;
    samples[n - 1 - i] *= i / fade;
  }
  return samples;
}
