import { gaussian, uniform } from '../../engine/numerics/random.ts';

/** What share of the noise's power is an even hiss; the rest comes in strokes. Common practice, no source. */
const EVEN = 0.5;
/** Of the strokes, sparks of the neighbourhood; the rest is distant lightning. */
const SPARKS = 0.5;
const SPARKS_A_SECOND = 100;
const CRACKLES_A_SECOND = 2;
const STROKES_A_CRACKLE = 8;
/** Numbers of the hiss drawn once. A power of two. */
const TABLE = 1 << 17;

/**
 * Noise at the aerial around any frequency, as a complex wave: even hiss, man-made sparks one by one, and the crackle of
 * lightning in bursts. Its mean power is the place's.
 */
export class BandNoise {
  private readonly rate: number;
  private readonly random: () => number;
  private readonly normal: () => number;
  private burst = 0;
  private toSpark = 0;
  private toCrackle = 0;
  private readonly table: Float32Array;
  constructor(rate: number, seed: number) {
    this.rate = rate;
    this.random = uniform(seed ^ 0x0a7e);
    this.normal = gaussian(uniform(seed ^ 0x3b1d));
    this.table = Float32Array.from({ length: TABLE }, this.normal);
    this.toSpark = this.wait(SPARKS_A_SECOND);
    this.toCrackle = this.wait(CRACKLES_A_SECOND);
  }
  /** @param rms of the emf in 9 kHz, V. Overwrites. */
  fill(rms: number, steps: number, re: Float32Array, im: Float32Array): void {
    const { rate, random, normal } = this;
    // A carrier of peak A has the power A²/2; in the whole width there is rate/9000 times as much.
    const power = (2 * rms * rms * rate) / 9000;
    const even = Math.sqrt((EVEN * power) / 2);
    const strokes = (1 - EVEN) * power * rate;
    // Sizes spread log-normally; e^(σ²) makes good for the mean of their squares.
    const spark = Math.sqrt((strokes * SPARKS) / (SPARKS_A_SECOND * Math.exp(2 * 0.8 ** 2)));
    const stroke = Math.sqrt((strokes * (1 - SPARKS)) / (CRACKLES_A_SECOND * STROKES_A_CRACKLE * Math.exp(2 * 1 ** 2)));
    const strokeChance = 1 / (0.006 * rate);
    // From anywhere in the table every time: nothing recurs that could be heard.
    const { table } = this;
    const first = Math.floor(TABLE * random());
    const second = Math.floor(TABLE * random());
    for (let i = 0; i < steps; i++) {
      re[i] = even * table[(first + i) & (TABLE - 1)];
      im[i] = even * table[(second + i) & (TABLE - 1)];
      if (--this.toSpark <= 0) {
        this.toSpark = this.wait(SPARKS_A_SECOND);
        this.hit(spark * Math.exp(0.8 * normal()), i, re, im);
      }
      if (--this.toCrackle <= 0) {
        this.toCrackle = this.wait(CRACKLES_A_SECOND);
        this.burst += 1 + Math.floor((2 * STROKES_A_CRACKLE - 1) * random());
      }
      if (this.burst > 0 && random() < strokeChance) {
        this.burst--;
        this.hit(stroke * Math.exp(normal()), i, re, im);
      }
    }
  }
  /** Steps until the next of so many a second, at random. */
  private wait(aSecond: number): number {
    return 1 + Math.floor((-Math.log(1 - this.random()) * this.rate) / aSecond);
  }
  private hit(size: number, at: number, re: Float32Array, im: Float32Array): void {
    const angle = 2 * Math.PI * this.random();
    re[at] += size * Math.cos(angle);
    im[at] += size * Math.sin(angle);
  }
}
