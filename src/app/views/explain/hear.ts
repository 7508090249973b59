import type { WaveProgramme } from '../../../outputs/explain/index.ts';
import { explainTexts } from '../../../outputs/words/index.ts';
import { ShownError } from './scene-problem.ts';

/** As loud as the programme is played; quiet enough for a first surprise in headphones. */
const VOLUME = 0.22;
const FADE = 0.04;
const LONGEST = 20;

/** How long a stretch is played round and round. */
export const loopSeconds = (programme: WaveProgramme | undefined): number =>
  programme?.kind === 'recording' ? Math.min(LONGEST, programme.samples.length / programme.rate) : 1;

/** One point of the path as sound, round and round, until another is asked for. */
export class PointSound {
  private context: AudioContext | undefined;
  private playing: { source: AudioBufferSourceNode; gain: GainNode } | undefined;

  /** Samples a second. First asked for after a click or a key, or the browser stays silent. */
  get rate(): number {
    this.context ??= new AudioContext();
    void this.context.resume();
    return this.context.sampleRate;
  }

  /** @param samples at `rate`, the end meeting the beginning. */
  play(samples: Float32Array): void {
    const { context } = this;
    if (!context) return;
    const buffer = context.createBuffer(1, samples.length, context.sampleRate);
    buffer.getChannelData(0).set(samples);
    const gain = context.createGain();
    gain.gain.setValueAtTime(0, context.currentTime);
    gain.gain.linearRampToValueAtTime(VOLUME, context.currentTime + FADE);
    const source = context.createBufferSource();
    source.buffer = buffer;
    source.loop = true;
    source.connect(gain).connect(context.destination);
    source.start();
    this.fadeOut();
    this.playing = { source, gain };
  }

  stop(): void {
    this.fadeOut();
  }

  close(): void {
    this.fadeOut();
    void this.context?.close();
    this.context = undefined;
  }

  private fadeOut(): void {
    const { playing, context } = this;
    this.playing = undefined;
    if (!playing || !context) return;
    const { gain } = playing.gain;
    gain.setValueAtTime(gain.value, context.currentTime);
    gain.linearRampToValueAtTime(0, context.currentTime + FADE);
    playing.source.stop(context.currentTime + FADE + 0.02);
  }
}

/** Longest programme that is kept, s. */
const KEEP = 10;
const RATE = 24_000;
const LARGEST_FILE = 200e6;

/** A sound file as a programme: one channel, its beginning, amplified to full depth. @throws ShownError */
export async function programmeFrom(data: Blob, name: string) {
  const { problems } = explainTexts.settings;
  if (data.size === 0) throw new ShownError(problems.empty);
  if (data.size > LARGEST_FILE) throw new ShownError(problems.large(LARGEST_FILE / 1e6));
  const context = new OfflineAudioContext(1, RATE, RATE);
  let decoded: AudioBuffer;
  try {
    decoded = await context.decodeAudioData(await data.arrayBuffer());
  } catch {
    throw new ShownError(problems.unreadable);
  }
  const n = Math.min(decoded.length, KEEP * RATE);
  if (n < RATE / 20) throw new ShownError(problems.short);
  const samples = new Float32Array(n);
  for (let c = 0; c < decoded.numberOfChannels; c++) {
    const channel = decoded.getChannelData(c);
    for (let i = 0; i < n; i++) samples[i] += channel[i] / decoded.numberOfChannels;
  }
  let peak = 0;
  for (const v of samples) peak = Math.max(peak, Math.abs(v));
  if (!(peak > 1e-6)) throw new ShownError(problems.silent);
  // The end is drawn over the beginning, so that it goes round without a click.
  const fade = Math.min(600, n >> 3);
  for (let i = 0; i < n; i++) samples[i] *= (i < fade ? i / fade : i > n - fade ? (n - i) / fade : 1) / peak;
  return { kind: 'recording' as const, name, samples, rate: RATE };
}

/** A few seconds from the microphone. @returns a function that ends it early, and the sound when it has ended. */
export async function fromMicrophone(seconds: number): Promise<Blob> {
  const stream = await navigator.mediaDevices.getUserMedia({ audio: true });
  const recorder = new MediaRecorder(stream);
  const parts: Blob[] = [];
  recorder.ondataavailable = (event) => parts.push(event.data);
  const ended = new Promise<void>((resolve) => {
    recorder.onstop = () => resolve();
  });
  recorder.start();
  setTimeout(() => recorder.stop(), seconds * 1000);
  await ended;
  for (const track of stream.getTracks()) track.stop();
  return new Blob(parts, { type: recorder.mimeType });
}
