import { distantStations, EVERY, MOST_DISTANT } from './envelope-state.ts';
import type { HeardStations } from './heard-stations.ts';

/** Volts over s open at the junction below which a station cannot move the detector: ln I0 = x²/4 below a millionth. */
const TOO_FAINT = 2e-3;

/** Which stations are distant, at least in part, and what stands open of them at every tick of a block. */
export class DistantStations {
  readonly distant = distantStations();
  /** Station of each distant place. */
  readonly member: Int32Array = new Int32Array(MOST_DISTANT);
  /** Tick × place, over s. */
  readonly open: Float64Array;
  private readonly heard: HeardStations;
  /** Seconds from tick to tick. */
  private readonly tick: number;
  /** Envelope times level at the last tick, complex. */
  private readonly lastTick: Float64Array;
  /** x of every station, for when its place changes. */
  private readonly xOf: Float64Array;

  /** @param most steps of the longest block. @param h seconds from step to step. */
  constructor(heard: HeardStations, most: number, h: number) {
    const { count, emf, near } = heard;
    this.heard = heard;
    this.tick = EVERY * h;
    this.open = new Float64Array((Math.ceil(most / EVERY) + 1) * MOST_DISTANT);
    this.lastTick = new Float64Array(2 * count);
    for (let k = 0; k < count; k++) this.lastTick[2 * k] = emf[k] * (1 - near[k]);
    this.xOf = new Float64Array(count);
  }

  /** Gives the distant stations their places, in the order of the list, as far as there are places. */
  gather(slope: number): void {
    const { distant, member, xOf, lastTick } = this;
    const { count, near, nearTo, emf, emfTo, views, viewsTo } = this.heard;
    for (let p = 0; p < distant.count; p++) xOf[member[p]] = distant.x[p];
    let n = 0;
    for (let k = 0; k < count && n < MOST_DISTANT; k++) {
      if (near[k] === 1 && nearTo[k] === 1) {
        xOf[k] = lastTick[2 * k] = lastTick[2 * k + 1] = 0;
        continue;
      }
      const size =
        Math.max(emf[k], emfTo[k]) *
        Math.sqrt(Math.max(views.hr[k] ** 2 + views.hi[k] ** 2, viewsTo.hr[k] ** 2 + viewsTo.hi[k] ** 2));
      if (size < TOO_FAINT * slope) {
        xOf[k] = 0;
        continue;
      }
      member[n++] = k;
    }
    distant.count = n;
    for (let p = 0; p < n; p++) distant.x[p] = xOf[member[p]];
  }

  /** What the junction looks into at each of them, at a share of the block. */
  look(share: number): void {
    const { distant, member } = this;
    const { views, viewsTo } = this.heard;
    for (let p = 0; p < distant.count; p++) {
      const k = member[p];
      distant.kr[p] = views.kr[k] + share * (viewsTo.kr[k] - views.kr[k]);
      distant.ki[p] = views.ki[k] + share * (viewsTo.ki[k] - views.ki[k]);
    }
  }

  /**
   * Open-circuit voltage over s of the station at place p at every tick of a block.
   * @param re, im its envelope at every tick; im counts where it is turned. @param isGliding whether views glide.
   */
  lift(
    p: number,
    steps: number,
    re: Float64Array,
    im: Float64Array,
    isTurned: boolean,
    isGliding: boolean,
    slope: number,
  ): void {
    const { heard, lastTick, open, member, tick } = this;
    const { views: a, viewsTo: b } = heard;
    const k = member[p];
    const n = this.distant.count;
    const perSlope = 1 / slope;
    let level = heard.levelAt(k, 0) * (1 - heard.nearAt(k, 0));
    let hr = a.hr[k];
    let hi = a.hi[k];
    let pr = a.pr[k];
    let pi = a.pi[k];
    for (let at = 0; at < steps; at += EVERY) {
      if (isGliding) {
        const t = at / steps;
        level = heard.levelAt(k, t) * (1 - heard.nearAt(k, t));
        hr = a.hr[k] + t * (b.hr[k] - a.hr[k]);
        hi = a.hi[k] + t * (b.hi[k] - a.hi[k]);
        pr = a.pr[k] + t * (b.pr[k] - a.pr[k]);
        pi = a.pi[k] + t * (b.pi[k] - a.pi[k]);
      }
      const er = level * re[at];
      const ei = isTurned ? level * im[at] : 0;
      const dr = (er - lastTick[2 * k]) / tick;
      const di = (ei - lastTick[2 * k + 1]) / tick;
      lastTick[2 * k] = er;
      lastTick[2 * k + 1] = ei;
      const vr = hr * er - hi * ei + pr * dr - pi * di;
      const vi = hr * ei + hi * er + pr * di + pi * dr;
      open[(at / EVERY) * n + p] = Math.sqrt(vr * vr + vi * vi) * perSlope;
    }
  }

  /** Another slope voltage: x is over it. */
  scale(by: number): void {
    const { distant, xOf } = this;
    for (let k = 0; k < xOf.length; k++) xOf[k] *= by;
    for (let p = 0; p < distant.count; p++) distant.x[p] *= by;
  }

  forget(): void {
    this.distant.x.fill(0);
    this.xOf.fill(0);
  }
}
