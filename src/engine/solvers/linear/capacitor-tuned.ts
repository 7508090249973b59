import type { Assembly, TuningPort } from '../../kinds/arrangements/assembly.ts';
import type { Port } from '../../network/port.ts';
import type { Complex } from '../../numerics/complex.ts';
import { maximum } from '../../numerics/minimum.ts';
import type { Farads, Hertz, Ratio } from '../../units/quantities.ts';
import { joinLast, type PortRows } from './port-rows.ts';
import { linearSolver } from './solve.ts';
import { greatest, quotientAt, type StraightQuotient } from './straight-quotient.ts';
import { byMain, bySecond, levelsAbout, moveLevels, type TuningLevels, tuningLevels } from './tuning-levels.ts';
import {
  type Capacitances,
  type CarrierView,
  carrierFrom,
  type FrequencyView,
  type Peak,
  type TunedNetwork,
} from './views.ts';

/** A set that capacitors tune. */
interface Tunings {
  readonly main: TuningPort;
  readonly second?: TuningPort;
  readonly ganged: boolean;
}

/** The same at one frequency. */
interface Tuned extends Tunings {
  /** rad/s. */
  readonly w: number;
  readonly levels: TuningLevels;
}

/** A set's radio-frequency side where one capacitor tunes, or two: one factorisation a frequency. */
export function capacitorTuned(assembly: Assembly): TunedNetwork {
  const ports: Port[] = [assembly.carrierPort, assembly.tunedPort, ...assembly.tuning.map((t) => t.port)];
  const solver = linearSolver(assembly.baseAt(0), ports);
  const [main, second] = assembly.tuning;
  const tunings: Tunings = { main, second, ganged: assembly.ganged };
  const cache = new Map<Hertz, Solved>();
  const solved = (frequency: Hertz): Solved => {
    let entry = cache.get(frequency);
    if (!entry) cache.set(frequency, (entry = new Solved(tunings, frequency, solver.rows(frequency))));
    return entry;
  };
  return {
    at: solved,
    about(frequency, apart) {
      const [below, middle, above] = [frequency - apart, frequency, frequency + apart].map(
        (f) => solved(f).tuned.levels,
      );
      const near = levelsAbout(below, middle, above, apart);
      const tuned = { ...tunings, w: 0, levels: near.levels };
      return (at, g, position, other) => {
        moveLevels(near, at - frequency);
        tuned.w = 2 * Math.PI * at;
        return levelAt(tuned, g, position, other);
      };
    },
  };
}

/** A set at one frequency. Many are kept, and most are only asked what the detector sees. */
class Solved implements FrequencyView {
  readonly frequency: Hertz;
  private readonly tunings: Tunings;
  private readonly rows: PortRows;
  private levelled: Tuned | undefined;

  constructor(tunings: Tunings, frequency: Hertz, rows: PortRows) {
    this.frequency = frequency;
    this.tunings = tunings;
    this.rows = rows;
    this.levelled = undefined;
  }

  get tuned(): Tuned {
    const { main, second, ganged } = this.tunings;
    this.levelled ??= {
      main,
      second,
      ganged,
      w: 2 * Math.PI * this.frequency,
      levels: tuningLevels(this.rows, second ? 4 : 3),
    };
    return this.levelled;
  }

  at(position: Ratio, other: Ratio = position): CarrierView {
    const { main, second, ganged } = this.tunings;
    const w = 2 * Math.PI * this.frequency;
    let from = this.rows;
    if (second) {
      const place = ganged ? position : other;
      const y = susceptance(second, w, place);
      from = joinLast(from, 4, y * second.lossTangentAt(place), y, ONE_JOINED);
    }
    const y = susceptance(main, w, position);
    return carrierFrom(joinLast(from, 3, y * main.lossTangentAt(position), y, BOTH_JOINED));
  }

  level(g: number, position: Ratio, other: Ratio): number {
    return levelAt(this.tuned, g, position, other);
  }

  levelsWith(
    g: number,
    other: Ratio,
    { capacitances, lossTangents }: Capacitances,
    into: Float64Array,
    at: number,
    stride: number,
  ): boolean {
    const { tuned } = this;
    if (tuned.ganged) return false;
    const q = withSecond(tuned, g, other);
    for (let i = 0; i < capacitances.length; i++) {
      const y = tuned.w * capacitances[i];
      into[at + i * stride] = quotientAt(q, y * lossTangents[i], y);
    }
    return true;
  }

  peak(g: number): Peak {
    const { second, ganged } = this.tunings;
    return (second === undefined ? peakOfOne : ganged ? peakOfGanged : peakOfTwo)(this.tuned, g);
  }
}

const ONE_JOINED: PortRows = new Float64Array(2 * 3 * 4);
const BOTH_JOINED: PortRows = new Float64Array(2 * 2 * 3);

const susceptance = (tuning: TuningPort, w: number, position: Ratio): number => w * tuning.capacitanceAt(position);

function loadOf(tuning: TuningPort, w: number, position: Ratio): Complex {
  const y = susceptance(tuning, w, position);
  return { re: y * tuning.lossTangentAt(position), im: y };
}

/** The quotient the main tuning turns in, the second (if there is one) at its place. */
function withSecond({ levels, second, w }: Tuned, g: number, other: Ratio): StraightQuotient {
  if (second === undefined) return byMain(levels, g, 0, 0);
  const y = susceptance(second, w, other);
  return byMain(levels, g, y * second.lossTangentAt(other), y);
}

function withMain({ levels, main, w }: Tuned, g: number, position: Ratio): StraightQuotient {
  const y = susceptance(main, w, position);
  return bySecond(levels, g, y * main.lossTangentAt(position), y);
}

/** With the capacitors at their places; ganged, the second is where the main one is. */
function levelAt(t: Tuned, g: number, position: Ratio, other: Ratio): number {
  const y = susceptance(t.main, t.w, position);
  return quotientAt(withSecond(t, g, t.ganged ? position : other), y * t.main.lossTangentAt(position), y);
}

/**
 * The top lies within so much of the capacitance to both sides of where a port's susceptance cancels: a tenth, or
 * (2/Q)² where the circuit is loaded so much that this is more.
 */
const STRETCH = 0.1;
const WIDEST = 0.95;

/** Where a tuning capacitor's susceptance cancels what it sees, and the stretch of its scale about it. */
interface Resonance {
  readonly capacitance: Farads;
  readonly from: Ratio;
  readonly to: Ratio;
}

function resonance(tuning: TuningPort, q: StraightQuotient, w: number): Resonance {
  // c + d·Y is d times Yₙ + Y, Yₙ being the admittance that the port shows: least where their susceptances cancel,
  // however much a strong signal's detector loads the port.
  const size = q[6] * q[6] + q[7] * q[7];
  const shown = { re: (q[4] * q[6] + q[5] * q[7]) / size, im: (q[5] * q[6] - q[4] * q[7]) / size };
  const capacitance = shown.im < 0 ? -shown.im / w : Number.POSITIVE_INFINITY;
  const broad = ((2 * shown.re) / shown.im) ** 2;
  const stretch = broad > STRETCH ? Math.min(broad, WIDEST) : STRETCH;
  const a = positionOf(tuning, capacitance * (1 - stretch));
  const b = positionOf(tuning, capacitance * (1 + stretch));
  return { capacitance, from: Math.min(a, b), to: Math.max(a, b) };
}

const positionOf = (tuning: TuningPort, capacitance: Farads): Ratio =>
  tuning.positionFor(capacitance) ?? (nearer(capacitance, tuning.capacitanceAt(0), tuning.capacitanceAt(1)) ? 0 : 1);

const nearer = (x: number, a: number, b: number): boolean => Math.abs(x - a) <= Math.abs(x - b);

/** The place of the greatest response on a stretch, in closed form. */
function topOn(tuning: TuningPort, q: StraightQuotient, w: number, { from, to }: Resonance): Ratio {
  if (from === to) return from;
  const [a, b] = [loadOf(tuning, w, from), loadOf(tuning, w, to)];
  const [low, high] = a.im <= b.im ? [a, b] : [b, a];
  const C = greatest(q, { w, low: low.im / w, high: high.im / w, lossLow: low.re, lossHigh: high.re });
  return Math.min(to, Math.max(from, positionOf(tuning, C)));
}

const isWithin = (tuning: TuningPort, { capacitance }: Resonance, position: Ratio): boolean =>
  (capacitance >= tuning.min && capacitance <= tuning.max) || (position > 1e-6 && position < 1 - 1e-6);

function peakOfOne({ levels, main, w }: Tuned, g: number): Peak {
  const q = byMain(levels, g, 0, 0);
  const at = resonance(main, q, w);
  const position = topOn(main, q, w, at);
  return { position, other: position, within: isWithin(main, at, position), capacitance: at.capacitance };
}

/** Both on one spindle: the two loads move at once, and the top is looked for near that of the main one. */
function peakOfGanged(t: Tuned, g: number): Peak {
  const { main, w } = t;
  const at = resonance(main, withSecond(t, g, 0.5), w);
  const position = at.from === at.to ? at.from : maximum((p) => levelAt(t, g, p, p), at.from, at.to, 1e-6).x;
  return { position, other: position, within: isWithin(main, at, position), capacitance: at.capacitance };
}

/** Rounds of turning one and then the other, and the movement from which on neither is turned again. */
const MOST_ROUNDS = 12;
const SETTLED = 1e-5;

/** The second near its own resonance first, with the main one well off tune, then alternately, as by hand. */
function peakOfTwo(t: Tuned, g: number): Peak {
  const { main, w } = t;
  const second = t.second!;
  let other = resonance(second, withMain(t, g, 0), w).from;
  let position = Number.NaN;
  for (let round = 0; ; round++) {
    const q = withSecond(t, g, other);
    const at = resonance(main, q, w);
    const moved = topOn(main, q, w, at);
    const settled = Math.abs(moved - position) < SETTLED;
    position = moved;
    const r = withMain(t, g, position);
    const there = resonance(second, r, w);
    other = topOn(second, r, w, there);
    if (settled || round + 1 >= MOST_ROUNDS)
      return {
        position,
        other,
        within: isWithin(main, at, position),
        otherWithin: isWithin(second, there, other),
        capacitance: at.capacitance,
      };
  }
}
