import type { SetDescription } from '../../../../engine/index.ts';
import type { HowLoud } from '../../../../outputs/audio/index.ts';
import { listeningTexts } from '../../../../outputs/words/index.ts';
import type { When } from '../../../description/when.ts';
import type { FromWorker, PlayerState, ToWorker } from './messages.ts';
import workletAddress from './player.worklet.ts?worker&url';
import { ListeningError } from './sound-problem.ts';
import { spokenFor } from './spoken.ts';

const SOUND_RATE = 48_000;
const LARGEST_FILE = 100e6;

export interface StartOptions {
  readonly set: SetDescription;
  readonly time: When;
  readonly position: number;
  readonly station?: number;
  /** Of that station at the ear, as the page shows it, dB SPL. */
  readonly level?: number;
  readonly how: HowLoud;
  readonly volume: number;
  readonly onMessage: (message: FromWorker) => void;
  readonly onPlayer: (state: PlayerState) => void;
}

export interface SoundEngine {
  send(message: ToWorker): void;
  /** A recording in any form the browser reads, as what a station says. */
  playFile(file: File, station: number): Promise<void>;
  playMicrophone(station: number): Promise<void>;
  stop(): void;
}

/** Start the sound; only ever from somebody's click. @throws Error when the browser gives no sound. */
export async function startSound(options: StartOptions): Promise<SoundEngine> {
  const { set, time, position, station, level, how, volume } = options;
  const context = new AudioContext({ sampleRate: SOUND_RATE, latencyHint: 'playback' });
  const worker = new Worker(new URL('./listen.worker.ts', import.meta.url), { type: 'module', name: 'listening' });
  let stream: MediaStream | undefined;
  const stop = () => {
    worker.terminate();
    for (const track of stream?.getTracks() ?? []) track.stop();
    void context.close();
  };
  try {
    const [programmes] = await Promise.all([spokenFor(set), context.audioWorklet.addModule(workletAddress)]);
    const player = new AudioWorkletNode(context, 'faintwave-player', {
      numberOfInputs: 0,
      outputChannelCount: [1],
    });
    player.connect(context.destination);
    player.port.onmessage = ({ data }: MessageEvent<PlayerState>) => options.onPlayer(data);
    const { port1, port2 } = new MessageChannel();
    player.port.postMessage(port1, [port1]);
    worker.onmessage = ({ data }: MessageEvent<FromWorker>) => options.onMessage(data);
    worker.onerror = () => options.onMessage({ kind: 'problem', message: listeningTexts.problems.stopped });
    const send = (message: ToWorker, transfer: Transferable[] = []) => worker.postMessage(message, transfer);
    send({ kind: 'open', set, time, position, station, level, how, volume, programmes, port: port2 }, [port2]);
    await context.resume();
    return {
      send,
      async playFile(file, index) {
        const { problems } = listeningTexts;
        if (file.size === 0) throw new ListeningError(problems.empty(file.name));
        if (file.size > LARGEST_FILE) throw new ListeningError(problems.large(file.name, LARGEST_FILE / 1e6));
        let decoded: AudioBuffer;
        try {
          decoded = await context.decodeAudioData(await file.arrayBuffer());
        } catch {
          throw new ListeningError(problems.unreadable(file.name));
        }
        const samples = decoded.getChannelData(0).slice();
        send({ kind: 'programme', station: index, samples, rate: decoded.sampleRate }, [samples.buffer]);
      },
      async playMicrophone(index) {
        stream = await navigator.mediaDevices.getUserMedia({ audio: true });
        const ear = new AudioWorkletNode(context, 'faintwave-ear', { numberOfOutputs: 0 });
        context.createMediaStreamSource(stream).connect(ear);
        const channel = new MessageChannel();
        ear.port.postMessage(channel.port1, [channel.port1]);
        send({ kind: 'microphone', station: index, port: channel.port2 }, [channel.port2]);
      },
      stop,
    };
  } catch (error) {
    stop();
    throw error;
  }
}
