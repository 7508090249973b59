const FADE = 0.04;

/** Sounds of one length, round and round in step; one of them is heard, and a step to another keeps the place. */
export class SoundsInStep {
  private context: AudioContext | undefined;
  private readonly gains = new Map<number, GainNode>();
  private begun = 0;
  private heard: number | undefined;

  /** Only from a click or a key, or the browser stays silent. */
  start(rate: number): void {
    if (this.context) return;
    this.context = new AudioContext({ sampleRate: rate });
    this.begun = this.context.currentTime;
  }

  /** @returns false once it was stopped. */
  add(index: number, samples: Float32Array): boolean {
    const { context } = this;
    if (!context) return false;
    if (this.gains.has(index)) return true;
    const buffer = context.createBuffer(1, samples.length, context.sampleRate);
    buffer.getChannelData(0).set(samples);
    const source = context.createBufferSource();
    source.buffer = buffer;
    source.loop = true;
    const gain = context.createGain();
    gain.gain.value = 0;
    source.connect(gain).connect(context.destination);
    source.start(0, (context.currentTime - this.begun) % buffer.duration);
    this.gains.set(index, gain);
    if (this.heard === index) this.ramp(gain, 1);
    return true;
  }

  /** Silent where it is not there yet; it is heard as soon as it is. */
  hear(index: number): void {
    this.heard = index;
    for (const [of, gain] of this.gains) this.ramp(gain, of === index ? 1 : 0);
  }

  /** All sounds are forgotten. */
  stop(): void {
    void this.context?.close();
    this.context = undefined;
    this.gains.clear();
    this.heard = undefined;
  }

  private ramp({ gain }: GainNode, to: number): void {
    const now = this.context?.currentTime ?? 0;
    gain.setValueAtTime(gain.value, now);
    gain.linearRampToValueAtTime(to, now + FADE);
  }
}
