import type { Hertz } from '../../units/quantities.ts';
import type { Sound } from './drive.ts';
import type { HeardStation } from './listener-types.ts';
import { type EnvelopeNetwork, transfer } from './network.ts';

/** What the junction has of each station's unit of emf: voltage, its slope by frequency; and what it looks into there. */
interface Views {
  readonly hr: Float64Array;
  readonly hi: Float64Array;
  readonly pr: Float64Array;
  readonly pi: Float64Array;
  readonly kr: Float64Array;
  readonly ki: Float64Array;
}

const VIEWS = ['hr', 'hi', 'pr', 'pi', 'kr', 'ki'] as const;
const viewsOf = (count: number): Views => {
  const array = () => new Float64Array(count);
  return { hr: array(), hi: array(), pr: array(), pi: array(), kr: array(), ki: array() };
};

/** Numbers of `HeardStations.history` for each station: the last three of its envelope, real then imaginary. */
export const HISTORY = 6;

/** The stations of a listener. Levels and views glide from what they are to what they shall be by a block's end. */
export class HeardStations {
  readonly count: number;
  readonly frequency: Float64Array;
  /** Peak of the unmodulated carrier, V. */
  readonly emf: Float64Array;
  readonly emfTo: Float64Array;
  /** Near the pointer a station is part of the drive, by `near`; otherwise distant, by 1 − `near`. */
  readonly near: Float64Array;
  readonly nearTo: Float64Array;
  /** Phase in the frame, rad. */
  readonly angle: Float64Array;
  readonly history: Float64Array;
  readonly views: Views;
  readonly viewsTo: Views;

  constructor(stations: readonly HeardStation[], pointer: Hertz, window: Hertz) {
    const count = stations.length;
    this.count = count;
    this.frequency = Float64Array.from(stations, (s) => s.frequency);
    this.emf = Float64Array.from(stations, (s) => s.emf);
    this.emfTo = this.emf.slice();
    this.near = this.frequency.map((f) => (Math.abs(f - pointer) < window ? 1 : 0));
    this.nearTo = this.near.slice();
    this.angle = Float64Array.from(stations, (s) => s.phase ?? 0);
    this.history = Float64Array.from({ length: count * HISTORY }, (_, i) => (i % HISTORY < 3 ? 1 : 0));
    this.views = viewsOf(count);
    this.viewsTo = viewsOf(count);
  }

  /** Looks at each station from the junction of a network, where `views` glide to. */
  view({ radio }: EnvelopeNetwork): void {
    const { viewsTo: to } = this;
    for (let k = 0; k < this.count; k++) {
      const t = transfer(radio, 2 * Math.PI * this.frequency[k]);
      to.hr[k] = t.source.re;
      to.hi[k] = t.source.im;
      to.pr[k] = t.sourceSlope.re;
      to.pi[k] = t.sourceSlope.im;
      to.kr[k] = -t.current.re;
      to.ki[k] = -t.current.im;
    }
  }

  /** Views are at once what they shall be. */
  arriveViews(): void {
    for (const key of VIEWS) this.views[key].set(this.viewsTo[key]);
  }

  /** Everything is at once what it shall be. */
  arrive(): void {
    this.near.set(this.nearTo);
    this.emf.set(this.emfTo);
    this.arriveViews();
  }

  /** Which stations are near a pointer. @returns whether any level or side changes. */
  chooseSides(pointer: Hertz, window: Hertz): boolean {
    const { near, nearTo, emf, emfTo, frequency } = this;
    let isChanging = false;
    for (let k = 0; k < this.count; k++) {
      const off = Math.abs(frequency[k] - pointer);
      // A little reluctance, so that a station on the edge does not change sides all the time.
      nearTo[k] = off < window * (nearTo[k] > 0.5 ? 1.05 : 0.95) ? 1 : 0;
      if (nearTo[k] !== near[k] || emfTo[k] !== emf[k]) isChanging = true;
    }
    return isChanging;
  }

  /** Its level and side stay as they are through a block. */
  isSteady(k: number): boolean {
    return this.near[k] === this.nearTo[k] && this.emf[k] === this.emfTo[k];
  }

  isNear(k: number): boolean {
    return this.near[k] > 0 || this.nearTo[k] > 0;
  }

  /** Whether the sidebands of its last samples were turned against its carrier. */
  wasTurned(k: number): boolean {
    const { history } = this;
    const at = HISTORY * k;
    return history[at + 3] !== 0 || history[at + 4] !== 0 || history[at + 5] !== 0;
  }

  /** Level at a share of the block. */
  levelAt(k: number, t: number): number {
    return this.emf[k] + t * (this.emfTo[k] - this.emf[k]);
  }

  nearAt(k: number, t: number): number {
    return this.near[k] + t * (this.nearTo[k] - this.near[k]);
  }

  /** Keep up with a station that is not heard at all. */
  remember(k: number, envelope: Sound, frames: number): void {
    const { history } = this;
    const at = HISTORY * k;
    for (let i = 0; i < 3; i++) {
      const f = frames - 3 + i;
      history[at + i] = f >= 0 ? envelope[f] : history[at + i + frames];
    }
  }
}
