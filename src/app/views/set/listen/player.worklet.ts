// What plays: takes pieces of sound as they come and hands each back when it is empty.
declare const registerProcessor: (name: string, processor: unknown) => void;
declare const sampleRate: number;
declare class AudioWorkletProcessor {
  readonly port: MessagePort;
}

/** Pieces to have before it begins, and again after a gap. */
const ENOUGH = 11;

class Player extends AudioWorkletProcessor {
  private feed: MessagePort | undefined;
  private readonly pieces: Float32Array[] = [];
  private at = 0;
  private running = false;
  private last = 0;
  private gaps = 0;
  private played = 0;
  private blocks = 0;
  constructor() {
    super();
    this.port.onmessage = ({ data }: MessageEvent<MessagePort>) => {
      this.feed = data;
      data.onmessage = ({ data: piece }: MessageEvent<Float32Array>) => {
        this.pieces.push(piece);
      };
    };
  }
  process(_inputs: unknown, [[out]]: Float32Array[][]): boolean {
    if (!this.running && this.pieces.length >= ENOUGH) this.running = true;
    for (let i = 0; i < out.length; i++) {
      if (this.running && this.pieces.length === 0) {
        this.gaps++;
        this.feed?.postMessage({ gap: true });
        this.running = false;
      }
      if (!this.running) {
        this.last *= 0.98; // no click at a gap
        out[i] = this.last;
        continue;
      }
      const piece = this.pieces[0];
      out[i] = this.last = piece[this.at++];
      if (this.at === piece.length) {
        this.at = 0;
        this.pieces.shift();
        this.feed?.postMessage({ buffer: piece }, [piece.buffer]);
      }
    }
    if (this.running) this.played += out.length;
    if (++this.blocks % 64 === 0) this.port.postMessage({ gaps: this.gaps, seconds: this.played / sampleRate });
    return true;
  }
}

/** Takes in a microphone for a station's programme. */
class Ear extends AudioWorkletProcessor {
  private feed: MessagePort | undefined;
  constructor() {
    super();
    this.port.onmessage = ({ data }: MessageEvent<MessagePort>) => {
      this.feed = data;
    };
  }
  process([[input]]: Float32Array[][]): boolean {
    if (input && this.feed) this.feed.postMessage(input.slice());
    return true;
  }
}

registerProcessor('faintwave-player', Player);
registerProcessor('faintwave-ear', Ear);
