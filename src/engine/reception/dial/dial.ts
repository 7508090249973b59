import { type Warning, warning } from '../../facts/warning.ts';
import { lazilyOf, once } from '../../numerics/lazily.ts';
import { boundary } from '../../numerics/roots.ts';
import type { StationDescription } from '../../set/place.ts';
import type { FrequencyView, Peak } from '../../solvers/linear/views.ts';
import type { Farads, Hertz, Ratio } from '../../units/quantities.ts';
import {
  qFromSidebands,
  type Receiver,
  receiveStation,
  TEST_TONE,
  type TunedStation,
} from '../path/receive-station.ts';
import type { Dial, DialPlace, DialPoint, Verdict } from '../path/types.ts';

/** Where along frequency the tuning curve is solved; between them it is smooth. */
const CURVE_POINTS = 18;
const LOWEST: Hertz = 60e3;
const HIGHEST: Hertz = 6e6;
/** Of one neper. */
const DECIBELS = 20 / Math.LN10;
/** Where a set stands for a frequency. */
interface Pointers {
  readonly position: Ratio;
  /** Of a separate aerial tuning. */
  readonly other: Ratio;
}
/** What is peaked at one frequency. */
interface Peaked extends Pointers {
  readonly frequency: Hertz;
}
interface Tuned extends Peaked {
  readonly loadedQ: number;
}

/** The tuning curve: which frequency is peaked where on the scale, and how sharply. Each part is solved when first asked for. */
export interface TuningCurve {
  /** Rising frequency, falling place of the scale. */
  readonly points: readonly Peaked[];
  /** Stretches, Hz, in which the pointer runs back against frequency, so that a place is that of several frequencies. */
  readonly folds: readonly (readonly [lowest: Hertz, highest: Hertz])[];
  readonly lowest: Hertz;
  readonly highest: Hertz;
  /** False where an end is only that of the search and nothing resonates there: such a dial covers nothing. */
  readonly isTuned: boolean;
  frequencyAt(position: Ratio): Hertz;
  qAt(frequency: Hertz): number;
  /** Where a frequency, given by its natural logarithm, is peaked; beyond the ends a little further, not to be read off. */
  positionForLog(logFrequency: number): Ratio;
}

/**
 * The tuning curve of a receiver: once for each.
 * @param set ready to receive
 * @returns frequencies, Hz, and places of the scale, 0 open to 1 meshed
 */
export const tuningCurve = lazilyOf((set: Receiver): TuningCurve => {
  const endsOf = once(() => coverage(set));
  const curveOf = once(() => unfolded(pointsBetween(set, endsOf())));
  const pointsOf = () => curveOf().points;
  const isTunedOf = once(() =>
    endsOf().every((f) => !isEndOfSearch(f) || set.network.at(f).peak(set.smallConductance).within),
  );
  const columnOf = (figure: (point: Peaked) => number) => once(() => Float64Array.from(pointsOf(), figure));
  const logFrequencies = columnOf(({ frequency }) => Math.log(frequency));
  const positions = columnOf(({ position }) => position);
  const sharpness = columnOf((point) => tunedAt(set, point.frequency, point).loadedQ);
  return {
    get points() {
      return pointsOf();
    },
    get folds() {
      return curveOf().folds;
    },
    get lowest() {
      return endsOf()[0];
    },
    get highest() {
      return endsOf()[1];
    },
    get isTuned() {
      return isTunedOf();
    },
    frequencyAt: (position) => Math.exp(along(positions(), logFrequencies(), position)),
    positionForLog: (logFrequency) => along(logFrequencies(), positions(), logFrequency),
    qAt: (frequency) => along(logFrequencies(), sharpness(), Math.log(frequency)),
  };
});

function coverage({ network, circuit, smallConductance }: Receiver): [Hertz, Hertz] {
  const { tuning, assembly } = circuit;
  const peakAt = (f: Hertz) => network.at(f).peak(smallConductance);
  return endsOfScale(peakAt, assembly.tuning.length > 0 ? [tuning.min, tuning.max] : undefined);
}

/** A strong signal's detector moves the end of the scale a little, a share of its frequency. */
const MOVED_END = 0.01;

/**
 * A station as the dial of a set has it: one above the end of the scale is beyond it, though past the aerial's own
 * resonance the set may tune there once more.
 * @param set ready to receive
 * @param station as `receiveStation` has it on the same set
 * @returns the same station, `within` false where the scale ends before it
 */
export const onDial = (set: Receiver, station: TunedStation): TunedStation =>
  station.within && station.station.frequency > tuningCurve(set).highest * (1 + MOVED_END)
    ? { ...station, within: false }
    : station;

/**
 * Tune a set to a station by its dial.
 * @param set ready to receive
 * @param station as read
 * @returns as `receiveStation`, `within` false for a station beyond the scale
 * @throws RangeError as `receiveStation`
 */
export const receiveOnDial = (set: Receiver, station: StationDescription): TunedStation =>
  onDial(set, receiveStation(set, station));

/** Where the curve is solved besides, on either side of a wave trap, which bends it there: shares of its frequency. */
const BESIDE_TRAP = [0, 0.005, 0.01, 0.015, 0.02, 0.03, 0.04, 0.055, 0.07, 0.09, 0.12, 0.16, 0.2];

function pointsBetween({ network, smallConductance, circuit }: Receiver, [lowest, highest]: readonly [Hertz, Hertz]) {
  const frequencies = Array.from(
    { length: CURVE_POINTS },
    (_, i) => lowest * (highest / lowest) ** (i / (CURVE_POINTS - 1)),
  );
  const besideTraps = circuit.traps.flatMap(({ frequency }) =>
    BESIDE_TRAP.flatMap((share) => [frequency * (1 + share), frequency / (1 + share)]),
  );
  const all = [...frequencies, ...besideTraps.filter((f) => f > lowest && f < highest)].sort((a, b) => a - b);
  return all.map((frequency, i) => {
    const { position, other, within } = network.at(frequency).peak(smallConductance);
    // An end is found to some nearness, and may lie a little beyond.
    return { frequency, position, other, isReached: within || i === 0 || i === all.length - 1 };
  });
}

/** Rounding only: places of the scale closer than this are one. */
const SAME_PLACE = 1e-9;

/**
 * A scale that can be read: where a trap makes the pointer run back, the stretch of the dial whose points together span
 * most of it in order stays, and the rest are folds.
 * @param points rising frequency
 */
function unfolded(points: ReturnType<typeof pointsBetween>): Pick<TuningCurve, 'points' | 'folds'> {
  type Candidate = (typeof points)[number];
  const isInOrder = (a: Candidate, b: Candidate): boolean =>
    a.isReached && b.isReached && b.position <= a.position + SAME_PLACE;
  if (points.every((point, i) => i === 0 || isInOrder(points[i - 1], point))) return { points, folds: [] };
  const between = (a: number, b: number): number => Math.log(points[b].frequency / points[a].frequency);
  const best: { readonly spans: number; readonly before: number }[] = [];
  for (const [i, point] of points.entries()) {
    let spans = 0;
    let before = -1;
    for (let k = 0; k < i; k++) {
      // Only neighbours span what lies between them; a fold that is jumped over adds nothing.
      const spanned = best[k].spans + (k === i - 1 ? between(k, i) : 0);
      if (isInOrder(points[k], point) && spanned > spans) [spans, before] = [spanned, k];
    }
    best.push({ spans, before });
  }
  let at = best.reduce((most, { spans }, i) => (spans >= best[most].spans ? i : most), 0);
  const kept: number[] = [];
  for (; at >= 0; at = best[at].before) kept.unshift(at);
  // Where nothing resonates no stretch is in order, and a scale needs two points.
  if (kept.length < 2) return { points, folds: [] };
  const folds = kept.flatMap((place, i) =>
    i > 0 && place > kept[i - 1] + 1 ? [[points[kept[i - 1]].frequency, points[place].frequency] as const] : [],
  );
  const last = points.length - 1;
  return {
    points: kept.map((place) => points[place]),
    folds: [
      ...(kept[0] > 0 ? [[points[0].frequency, points[kept[0]].frequency] as const] : []),
      ...folds,
      ...(kept[kept.length - 1] < last
        ? [[points[kept[kept.length - 1]].frequency, points[last].frequency] as const]
        : []),
    ],
  };
}

/** A set at one frequency, faintly received. @param pointers where they stand; default where it is peaked. */
export function tunedAt(
  { network, smallConductance: g }: Receiver,
  frequency: Hertz,
  pointers: Pointers = network.at(frequency).peak(g),
): Tuned {
  const { position, other } = pointers;
  const at = (f: Hertz) => network.at(f).at(position, other);
  return {
    frequency,
    position,
    other,
    loadedQ: qFromSidebands(at(frequency), at(frequency - TEST_TONE), at(frequency + TEST_TONE), g, frequency),
  };
}

/** On the straight line between the two points about a value, or a little beyond the last. */
function along(x: Float64Array, y: Float64Array, value: number): number {
  const last = x.length - 1;
  let i = 1;
  while (i <= last && !((x[i] - value) * (x[i - 1] - value) <= 0)) i++;
  if (i > last) i = Math.abs(x[0] - value) < Math.abs(x[last] - value) ? 1 : last;
  const t = x[i] === x[i - 1] ? 0 : (value - x[i - 1]) / (x[i] - x[i - 1]);
  return y[i - 1] + Math.max(-0.2, Math.min(1.2, t)) * (y[i] - y[i - 1]);
}

/** Steps in which an end of the scale is looked for, and how near it is then closed in on, where a coil does the tuning. */
const STRIDE = 1.15;
const NEAR = 1.002;

const isEndOfSearch = (frequency: Hertz): boolean => frequency < LOWEST * NEAR || frequency > HIGHEST / NEAR;

/** Lowest and highest frequency peaked within the scale: meshed (1) is the low end. */
function endsOfScale(peakAt: (f: Hertz) => Peak, capacitances: readonly [Farads, Farads] | undefined): [Hertz, Hertz] {
  if (capacitances) {
    const low = peakedWith(peakAt, capacitances[1], 3e5);
    return [low, beforeTurning(peakAt, low, firstPeakedWith(peakAt, capacitances[0], low))];
  }
  // Places of a coil are resolved to 1/4096.
  const open = (f: Hertz): boolean => peakAt(f).position < 1e-4;
  const meshed = (f: Hertz): boolean => peakAt(f).position > 1 - 1e-4;
  // Upward step by step: beyond the aerial's own resonance the set may seem to tune once more.
  const lowest = lastWhile(meshed, LOWEST);
  return [lowest, lastWhile((f) => !open(f), lowest * NEAR)];
}

/** The last frequency upward for which something holds, which it is taken to do at the first. */
function lastWhile(holds: (f: Hertz) => boolean, from: Hertz): Hertz {
  let low = from;
  let high = from * STRIDE;
  while (high < HIGHEST && holds(high)) [low, high] = [high, high * STRIDE];
  return boundary(holds, low, high, NEAR, 'logarithmic')[0];
}

/** How far below the high end it is looked whether the scale turns back, and in how many steps. */
const LOOK_BACK = 1.6;
const LOOKS = 8;

/**
 * Near the aerial's own resonance the capacitance for resonance falls, and then rises again: there the scale ends, for
 * beyond it a position would mean two frequencies.
 */
function beforeTurning(peakAt: (f: Hertz) => Peak, lowest: Hertz, highest: Hertz): Hertz {
  const capacitanceAt = (f: Hertz): Farads => peakAt(f).capacitance ?? Number.NaN;
  const from = Math.max(lowest, highest / LOOK_BACK);
  const at = (i: number): Hertz => from * (highest / from) ** (i / LOOKS);
  let turn = 1;
  while (turn <= LOOKS && !(capacitanceAt(at(turn)) > capacitanceAt(at(turn - 1)))) turn++;
  if (turn > LOOKS) return highest;
  let [low, high] = [at(Math.max(0, turn - 2)), at(turn)];
  while (high / low > NEAR) {
    const third = (high / low) ** (1 / 3);
    if (capacitanceAt(low * third) < capacitanceAt(low * third * third)) high = low * third * third;
    else low *= third;
  }
  return low;
}

/**
 * The first frequency above another whose tuning wants no more than a capacitance. Upward step by step: beyond the
 * aerial's own resonance the set may tune once more.
 */
function firstPeakedWith(peakAt: (f: Hertz) => Peak, capacitance: Farads, from: Hertz): Hertz {
  // Where no capacitance resonates, that across the coil is too much already.
  const over = (f: Hertz): Farads => {
    const { capacitance: atPeak = capacitance } = peakAt(f);
    return Number.isFinite(atPeak) ? atPeak - capacitance : -capacitance;
  };
  let low = from;
  let atLow = over(low);
  let high = low;
  let atHigh = atLow;
  while (high < HIGHEST && atHigh > 0) {
    [low, atLow] = [high, atHigh];
    high = Math.min(HIGHEST, high * 1.15);
    atHigh = over(high);
  }
  if (!(atLow > 0)) return low;
  if (atHigh > 0) return HIGHEST;
  // The capacitance for resonance runs nearly straight with 1/f².
  for (let i = 0; i < 24 && high / low - 1 > 1e-5; i++) {
    const [a, b] = [low ** -2, high ** -2];
    const line = (b - a) * (atLow / (atLow - atHigh)) + a;
    // Every third time by halves, so that a bent line cannot stall.
    const f = (i % 3 === 2 ? (a + b) / 2 : line) ** -0.5;
    const at = over(f);
    if (Math.abs(at) < 1e-5 * capacitance) return f;
    if (at > 0) [low, atLow] = [f, at];
    else [high, atHigh] = [f, at];
  }
  return low;
}

/**
 * Frequency that resonates with this capacitance, which runs nearly straight with 1/f², as K/f² less what lies
 * across the coil already, so a line through the last two tries finds it, however much lies there.
 */
function peakedWith(peakAt: (f: Hertz) => Peak, capacitance: Farads, start: Hertz): Hertz {
  const capacitanceAt = (f: Hertz): Farads => peakAt(f).capacitance ?? capacitance;
  const within = (f: Hertz): Hertz => Math.min(HIGHEST, Math.max(LOWEST, f));
  let last = within(start * 0.9);
  let lastC = capacitanceAt(last);
  let f = within(start);
  for (let i = 0; i < 16; i++) {
    const C = capacitanceAt(f);
    const slope = (C - lastC) / (f ** -2 - last ** -2);
    const u = f ** -2 + (capacitance - C) / slope;
    // Past a resonance of the aerial no capacitance resonates, or the line slopes the wrong way: step back.
    const next = Number.isFinite(C) && slope > 0 && u > 0 ? u ** -0.5 : 0.75 * f;
    const to = within(Math.min(1.5 * f, Math.max(0.65 * f, next)));
    if (Math.abs(to / f - 1) < 1e-5) return to;
    [last, lastC, f] = [f, C, to];
  }
  return f;
}

/** Place of a station on the dial. */
export function dialPlace({ circuit: { tuning } }: Receiver, position: Ratio): DialPlace {
  return {
    position,
    scale: tuning.angleAt(Math.max(0, Math.min(1, position))),
    capacitance: tuning.capacitanceAt(position),
  };
}

/** The whole scale: frequency, sharpness, and every station's level at every position. */
export function dialOf(
  set: Receiver,
  curve: TuningCurve,
  stations: readonly TunedStation[],
  verdicts: readonly Verdict[],
  positions = 200,
): Dial {
  const { tuning, assembly } = set.circuit;
  const byCoil = assembly.tuning.length === 0;
  const points = Array.from({ length: positions }, (_, i): DialPoint => {
    const position = i / (positions - 1);
    const frequency = curve.frequencyAt(position);
    const loadedQ = curve.qAt(frequency);
    return {
      position,
      scale: tuning.angleAt(position),
      frequency,
      capacitance: byCoil ? undefined : tuning.capacitanceAt(position),
      loadedQ,
      bandwidth: frequency / loadedQ,
    };
  });
  const views: FrequencyView[] = stations.map((s) => set.network.at(s.station.frequency));
  const g = set.smallConductance;
  const capacitances = Float64Array.from(points, ({ position }) => tuning.capacitanceAt(position));
  const lossTangents = Float64Array.from(points, ({ position }) => tuning.lossTangentAt(position));
  const all = new Float64Array(positions * views.length);
  const levels = points.map((_, i) => all.subarray(i * views.length, (i + 1) * views.length));
  let strongest = Number.NEGATIVE_INFINITY;
  // Station by station: what is asked of one again and again stays at hand.
  for (const [k, view] of views.entries()) {
    const { emf, other } = stations[k];
    const isFound = view.levelsWith(g, other, { capacitances, lossTangents }, all, k, views.length);
    for (let i = 0; i < positions; i++) {
      const at = i * views.length + k;
      const level = isFound ? all[at] : view.level(g, points[i].position, other);
      const decibels = DECIBELS * Math.log(Math.max(emf * level, 1e-15));
      if (decibels > strongest) strongest = decibels;
      all[at] = decibels;
    }
  }
  for (let i = 0; i < all.length; i++) all[i] -= strongest;
  return {
    points,
    lowest: curve.lowest,
    highest: curve.highest,
    folds: curve.folds,
    swing: tuning.swing,
    levels,
    stations: stations.map((s, index) => ({
      name: s.station.name,
      index,
      verdict: verdicts[index],
      place: s.within ? dialPlace(set, s.position) : undefined,
    })),
    warnings: dialWarnings(points, curve.folds),
  };
}

/**
 * What is said of a dial as a whole.
 * @param points of the scale, bandwidth in Hz
 * @param folds stretches in which the pointer runs back, Hz
 * @returns a warning for the broadest place where stations three channels apart are not separated, and one for each fold
 */
export function dialWarnings(points: readonly DialPoint[], folds: Dial['folds']): Warning[] {
  const runsBack = folds.map(([lowest, highest]) => warning('reception.dial-runs-back', { lowest, highest }));
  const broad = points.filter((p) => p.bandwidth > 30e3);
  if (broad.length === 0) return runsBack;
  const worst = broad.reduce((a, b) => (b.bandwidth > a.bandwidth ? b : a));
  return [warning('reception.dial-broad', { frequency: worst.frequency, bandwidth: worst.bandwidth }), ...runsBack];
}
