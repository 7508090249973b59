// What records: all channels of its input, and the moment that each piece begins at.
declare const registerProcessor: (name: string, processor: unknown) => void;
declare const currentFrame: number;
declare class AudioWorkletProcessor {
  readonly port: MessagePort;
}

/** Samples of a piece. */
const PIECE = 4096;

class Recorder extends AudioWorkletProcessor {
  private pieces: Float32Array<ArrayBuffer>[] = [];
  private frame = 0;
  private filled = 0;
  process([input]: Float32Array[][]): boolean {
    if (input.length === 0) return true;
    if (this.filled === 0 || this.pieces.length !== input.length) {
      this.pieces = input.map(() => new Float32Array(PIECE));
      this.frame = currentFrame;
      this.filled = 0;
    }
    for (const [c, channel] of input.entries()) this.pieces[c].set(channel, this.filled);
    this.filled += input[0].length;
    if (this.filled >= PIECE) {
      const { frame, pieces } = this;
      this.port.postMessage(
        { frame, channels: pieces },
        pieces.map((piece) => piece.buffer),
      );
      this.filled = 0;
    }
    return true;
  }
}

registerProcessor('faintwave-recorder', Recorder);

export {};
