import { uniform } from '../../engine/numerics/random.ts';
import { addProgramme, type ProgrammeLoop } from './programme.ts';

/** How a station comes: steadily, or by ways that beat with one another. */
export interface FadingOptions {
  readonly how: 'as given' | 'ground wave' | 'sky wave' | 'both' | 'nothing';
  readonly fading: 'none' | 'slow' | 'deep';
  readonly seed: number;
}

interface Ray {
  readonly size: number;
  /** Samples later than the first. */
  readonly delay: number;
  /** Turns a second, and how it wanders about that. */
  readonly turns: number;
  readonly wander: number;
  readonly period: number;
  readonly start: number;
}

/**
 * A station's carrier and sidebands as they arrive, over the median: one ray, or two or three whose phases drift apart.
 * Because the rays come up to two milliseconds apart, carrier and sidebands fade at different times: it sounds hollow, and
 * distorts when the carrier goes. Drifts of a few turns a minute on medium wave are common practice, no source.
 */
export class ArrivingStation {
  readonly fades: boolean;
  private readonly rays: readonly Ray[];
  private readonly rate: number;
  constructor({ how, fading, seed }: FadingOptions, rate: number) {
    this.rate = rate;
    this.fades = fading !== 'none';
    const random = uniform(seed ^ 0x0fade);
    const shares = !this.fades ? [1] : how === 'both' ? [1, 0.75, 0.3] : fading === 'deep' ? [1, 0.85, 0.35] : [1, 0.4];
    const power = shares.reduce((sum, s) => sum + s * s, 0);
    this.rays = shares.map((share, k): Ray => {
      const steady = k === 0;
      return {
        size: share / Math.sqrt(power),
        delay: steady ? 0 : Math.round((0.0003 + 0.0016 * random()) * rate),
        turns: steady ? 0 : (0.03 + 0.09 * random()) * (random() < 0.5 ? -1 : 1),
        wander: steady ? 0 : 0.4 + random(),
        period: 9 + 20 * random(),
        start: steady ? 0 : 2 * Math.PI * random(),
      };
    });
  }
  private phase(ray: Ray, t: number): number {
    return ray.start + 2 * Math.PI * ray.turns * t + ray.wander * Math.sin((2 * Math.PI * t) / ray.period);
  }
  /** 1 + depth·programme from sample `from`, turned by the ways it comes. Overwrites; allocates nothing. */
  fill(
    loop: ProgrammeLoop | undefined,
    depth: number,
    from: number,
    frames: number,
    re: Float32Array,
    im: Float32Array,
  ) {
    re.fill(0, 0, frames);
    im.fill(0, 0, frames);
    for (const ray of this.rays) {
      const a = this.phase(ray, from / this.rate);
      const b = this.phase(ray, (from + frames) / this.rate);
      const r0 = ray.size * Math.cos(a);
      const rs = (ray.size * Math.cos(b) - r0) / frames;
      for (let i = 0; i < frames; i++) re[i] += r0 + rs * (i + 1);
      if (loop) addProgramme(loop, from - ray.delay, frames, depth * r0, depth * rs, re);
      if (!this.fades) continue;
      const i0 = ray.size * Math.sin(a);
      const is = (ray.size * Math.sin(b) - i0) / frames;
      for (let i = 0; i < frames; i++) im[i] += i0 + is * (i + 1);
      if (loop) addProgramme(loop, from - ray.delay, frames, depth * i0, depth * is, im);
    }
  }
}
