import recorderAddress from './recorder.worklet.ts?worker&url';

/** Why nothing was recorded. */
export type CardProblem = 'noAccess' | 'refused' | 'noInput' | 'busy' | 'unplugged' | 'interrupted';

export class CardError extends Error {
  readonly problem: CardProblem;
  constructor(problem: CardProblem) {
    super(problem);
    this.problem = problem;
  }
}

interface Piece {
  readonly frame: number;
  readonly channels: readonly Float32Array[];
}

/** Output and input of the sound card, on one clock. */
export interface CardSound {
  readonly sampleRate: number;
  /** One array for each channel, from the moment that `play` begins; one while the input has one. */
  record(options: {
    readonly play?: Float32Array<ArrayBuffer>;
    readonly seconds: number;
    readonly signal: AbortSignal;
  }): Promise<readonly Float32Array[]>;
  close(): void;
}

/** What a person may have forbidden, or the computer lacks. */
const PROBLEM_OF: Readonly<Record<string, CardProblem>> = {
  NotAllowedError: 'refused',
  SecurityError: 'refused',
  NotFoundError: 'noInput',
  OverconstrainedError: 'noInput',
  NotReadableError: 'busy',
};
/** Time for the page to ask for the playing, seconds. */
const LEAD = 0.2;

/**
 * Opens the sound card; only ever from somebody's click, for the browser asks for permission.
 * @throws CardError where there is no input or it is not permitted
 */
export async function openCardSound(): Promise<CardSound> {
  if (!navigator.mediaDevices) throw new CardError('noAccess');
  let stream: MediaStream;
  try {
    stream = await navigator.mediaDevices.getUserMedia({
      audio: { echoCancellation: false, noiseSuppression: false, autoGainControl: false, channelCount: { ideal: 2 } },
    });
  } catch (refusal) {
    const problem = refusal instanceof DOMException ? PROBLEM_OF[refusal.name] : undefined;
    throw problem ? new CardError(problem) : refusal;
  }
  const context = new AudioContext({ latencyHint: 'playback' });
  const close = () => {
    for (const track of stream.getTracks()) track.stop();
    if (context.state !== 'closed') void context.close();
  };
  try {
    await context.audioWorklet.addModule(recorderAddress);
    const recorder = new AudioWorkletNode(context, 'faintwave-recorder', { numberOfOutputs: 0 });
    context.createMediaStreamSource(stream).connect(recorder);
    await context.resume();
    return { sampleRate: context.sampleRate, record: (options) => record(context, stream, recorder, options), close };
  } catch (error) {
    close();
    throw error;
  }
}

function record(
  context: AudioContext,
  stream: MediaStream,
  recorder: AudioWorkletNode,
  { play, seconds, signal }: Parameters<CardSound['record']>[0],
): Promise<readonly Float32Array[]> {
  if (signal.aborted) return Promise.reject(signal.reason);
  const tracks = stream.getTracks();
  if (tracks.some(({ readyState }) => readyState === 'ended')) return Promise.reject(new CardError('unplugged'));
  const { sampleRate } = context;
  const from = Math.ceil((context.currentTime + LEAD) * sampleRate);
  const length = Math.ceil(seconds * sampleRate);
  let source: AudioBufferSourceNode | undefined;
  if (play) {
    const buffer = context.createBuffer(1, play.length, sampleRate);
    buffer.copyToChannel(play, 0);
    source = new AudioBufferSourceNode(context, { buffer });
    source.connect(context.destination);
    source.start(from / sampleRate);
  }
  const channels: Float32Array[] = [];
  let taken = 0;
  return new Promise((resolve, reject) => {
    const listening = new AbortController();
    const end = () => {
      listening.abort();
      recorder.port.onmessage = null;
      source?.stop();
      source?.disconnect();
    };
    const fail = (why: unknown) => {
      end();
      reject(why);
    };
    signal.addEventListener('abort', () => fail(signal.reason), listening);
    // An input that is pulled out sends nothing more, and no error either.
    for (const track of tracks) track.addEventListener('ended', () => fail(new CardError('unplugged')), listening);
    recorder.port.onmessage = ({ data: { frame, channels: piece } }: MessageEvent<Piece>) => {
      const at = frame - from;
      if (at + piece[0].length <= 0) return;
      for (const [c, samples] of piece.entries()) {
        channels[c] ??= new Float32Array(length);
        const skip = Math.max(0, -at);
        channels[c].set(samples.subarray(skip, Math.max(skip, Math.min(samples.length, length - at))), at + skip);
      }
      taken += Math.min(piece[0].length, at + piece[0].length);
      if (at + piece[0].length < length) return;
      end();
      // A piece that never came would be silence in the middle of a tone.
      if (taken < length) reject(new CardError('interrupted'));
      else resolve(channels);
    };
  });
}
