export interface LimiterOptions {
  readonly rate: number;
  /** Never exceeded, whatever comes in; as sound pressure in the phones, 1 Pa at its peak is the number 1. Default 0.5. */
  readonly ceiling?: number;
  /** Seconds from silence to full when it starts. Default 1.5. */
  readonly fadeIn?: number;
}

/** Ahead of a peak the gain comes down this long before, s. */
const AHEAD = 0.003;
const RELEASE = 0.25;

/**
 * Last thing before the ear. It looks a little ahead and turns down smoothly; what might still pass is cut off, and what is
 * no number is silence. It starts silent and fades in.
 */
export class Limiter {
  readonly ceiling: number;
  /** Lowest gain used since it was last set to 1; a meter may. */
  lowestGain = 1;
  private readonly delay: Float32Array;
  private readonly release: number;
  private readonly attack: number;
  private readonly fadeStep: number;
  private at = 0;
  private held = 0;
  private wait = 0;
  private gain = 1;
  private fade = 0;
  constructor({ rate, ceiling = 0.5, fadeIn = 1.5 }: LimiterOptions) {
    if (!(ceiling > 0 && ceiling <= 1)) throw new RangeError(`a ceiling must be above 0 and at most 1, not ${ceiling}`);
    this.ceiling = ceiling;
    const n = Math.max(1, Math.round(AHEAD * rate));
    this.delay = new Float32Array(n);
    this.attack = 1 - Math.exp(-5 / n);
    this.release = 1 - Math.exp(-1 / (RELEASE * rate));
    this.fadeStep = fadeIn > 0 ? 1 / (fadeIn * rate) : 1;
  }
  /** In place. */
  run(sound: Float32Array, frames = sound.length): void {
    const { ceiling, delay, attack, release } = this;
    let { at, held, wait, gain, fade, lowestGain } = this;
    for (let i = 0; i < frames; i++) {
      const came = sound[i];
      // Only of a number that is finite is the difference to itself 0; asked so, it stays off the heap.
      const x = came - came === 0 ? came : 0;
      const size = Math.abs(x);
      if (size >= held) {
        held = size;
        wait = delay.length;
      } else if (wait > 0) wait--;
      else held += (size - held) * release;
      const wanted = held > ceiling * 0.98 ? (ceiling * 0.98) / held : 1;
      gain += (wanted - gain) * (wanted < gain ? attack : release);
      if (gain < lowestGain) lowestGain = gain;
      const late = delay[at];
      delay[at] = x;
      at = at + 1 === delay.length ? 0 : at + 1;
      if (fade < 1) fade = Math.min(1, fade + this.fadeStep);
      const y = late * gain * fade * fade * (3 - 2 * fade);
      sound[i] = Math.min(ceiling, Math.max(y, -ceiling));
    }
    this.at = at;
    this.held = held;
    this.wait = wait;
    this.gain = gain;
    this.fade = fade;
    this.lowestGain = lowestGain;
  }
}
