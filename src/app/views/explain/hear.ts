import { RECORDING_RATE, type RecordedProgramme, trimmed } from '../../../outputs/explain/index.ts';
import { explainTexts } from '../../../outputs/words/index.ts';
import { ShownError } from './scene-problem.ts';

/** As loud as the programme is played; quiet enough for a first surprise in headphones. */
const VOLUME = 0.22;
const FADE = 0.04;

/** One point of the path as sound, round and round, until another is asked for. */
export class PointSound {
  private context: AudioContext | undefined;
  private playing: { source: AudioBufferSourceNode; gain: GainNode; since: number; seconds: number } | undefined;

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
    this.playing = { source, gain, since: context.currentTime, seconds: buffer.duration };
  }

  /** Seconds into what sounds now; undefined while nothing does. */
  position(): number | undefined {
    const { playing, context } = this;
    if (!playing || !context) return undefined;
    // What is heard now left the context a little earlier.
    const at = context.currentTime - (context.outputLatency || 0) - playing.since;
    return at < 0 ? 0 : at % playing.seconds;
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

const LARGEST_FILE = 200e6;

/** A sound file as a programme: one channel, from its first sound, at full level. @throws ShownError */
export async function programmeFrom(data: Blob, name: string): Promise<RecordedProgramme> {
  const { problems } = explainTexts.settings;
  if (data.size === 0) throw new ShownError(problems.empty);
  if (data.size > LARGEST_FILE) throw new ShownError(problems.large(LARGEST_FILE / 1e6));
  const context = new OfflineAudioContext(1, RECORDING_RATE, RECORDING_RATE);
  let decoded: AudioBuffer;
  try {
    decoded = await context.decodeAudioData(await data.arrayBuffer());
  } catch {
    throw new ShownError(problems.unreadable);
  }
  const n = decoded.length;
  if (n < RECORDING_RATE / 20) throw new ShownError(problems.short);
  const mixed = new Float32Array(n);
  for (let c = 0; c < decoded.numberOfChannels; c++) {
    const channel = decoded.getChannelData(c);
    for (let i = 0; i < n; i++) mixed[i] += channel[i] / decoded.numberOfChannels;
  }
  const samples = trimmed(mixed, RECORDING_RATE);
  if (!samples) throw new ShownError(problems.silent);
  return { kind: 'recording', name, samples, rate: RECORDING_RATE };
}

/** The microphone, until `stop` is called, so many seconds have passed or the signal is given. */
export async function fromMicrophone(
  seconds: number,
  signal: AbortSignal,
): Promise<{ readonly done: Promise<Blob>; stop(): void }> {
  const stream = await navigator.mediaDevices.getUserMedia({ audio: true });
  const recorder = new MediaRecorder(stream);
  const parts: Blob[] = [];
  recorder.ondataavailable = (event) => parts.push(event.data);
  const stop = () => {
    if (recorder.state !== 'inactive') recorder.stop();
  };
  const timer = setTimeout(stop, seconds * 1000);
  const done = new Promise<Blob>((resolve) => {
    recorder.onstop = () => {
      clearTimeout(timer);
      for (const track of stream.getTracks()) track.stop();
      resolve(new Blob(parts, { type: recorder.mimeType }));
    };
  });
  recorder.start();
  signal.addEventListener('abort', stop);
  // Left while the browser asked for leave to hear.
  if (signal.aborted) stop();
  return { done, stop };
}
