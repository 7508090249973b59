import { setCircuit } from '../../../engine/built/set-circuit.ts';
import { tunedBy } from '../../../engine/kinds/arrangements/tuned-by.ts';
import { type ByKind, byKind } from '../../../engine/kinds/by-kind.ts';
import { coilModel, tuningModel } from '../../../engine/kinds/models.ts';
import type { TuningDescription } from '../../../engine/kinds/tunings/tuning-schema.ts';
import { receiver } from '../../../engine/reception/path/receive-station.ts';
import type { Reception, StationReception, Verdict } from '../../../engine/reception/path/types.ts';
import type { SetDescription } from '../../../engine/set/description.ts';
import type { Peak } from '../../../engine/solvers/linear/views.ts';
import type { Mover, ScaleStart } from '../../words/index.ts';
import { printable } from './words.ts';

/** What the pointer does on this set, and how far its scale goes. */
export type PointerScale =
  | { readonly kind: 'round'; readonly swing: number }
  /** Full travel, mm, and which end it is read from. */
  | { readonly kind: 'straight'; readonly travel: number; readonly from: ScaleStart };

/** A scale and what moves along it. */
export interface Pointer {
  readonly scale: PointerScale;
  /** Degrees or millimetres from the open end, at a position. */
  readonly at: (position: number) => number;
  /** What turns or slides. */
  readonly moves: Mover;
}

export interface DialMark {
  /** 0 open … 1 meshed. */
  readonly position: number;
  readonly frequency: number;
}

/** A stretch beside a wave trap whose frequencies cannot be read: the pointer runs back in it. */
export interface DialFold {
  readonly lowest: number;
  readonly highest: number;
  /** Positions of its two ends. */
  readonly ends: readonly [number, number];
}

export interface DialMarks extends Pointer {
  /** "C2": of the capacitor that this dial is for, where a set has two. */
  readonly tag?: string;
  readonly kilohertz: readonly DialMark[];
  readonly metres: readonly (DialMark & { readonly wavelength: number })[];
  readonly stations: readonly (DialMark & { readonly name: string; readonly heard: Verdict })[];
  readonly folds: readonly DialFold[];
}

const LIGHT = 299_792_458;

/** A round figure that a dial may have a line for, with how the set is tuned to it. */
interface Tick {
  readonly frequency: number;
  readonly peak: Peak;
}

/** The figures of a set's dials, each solved from the circuit itself once, however many pointers show it. */
export interface DialTicks {
  readonly kilohertz: readonly Tick[];
  readonly metres: readonly (Tick & { readonly wavelength: number })[];
}

export function dialTicks(set: SetDescription, { dial: { lowest, highest, folds } }: Reception): DialTicks {
  const { network, smallConductance } = receiver(setCircuit(set));
  const tick = (frequency: number): Tick => ({ frequency, peak: network.at(frequency).peak(smallConductance) });
  const isRead = ({ frequency: f }: Tick): boolean => folds.every(([from, to]) => f <= from || f >= to);
  const step = highest - lowest > 2.2e6 ? 5e4 : highest - lowest > 3e5 ? 1e4 : 5e3;
  const kilohertz: Tick[] = [];
  for (let f = Math.ceil(lowest / step) * step; f <= highest && kilohertz.length < 400; f += step)
    kilohertz.push(tick(f));
  const metres: (Tick & { wavelength: number })[] = [];
  const [shortest, longest] = [LIGHT / highest, LIGHT / lowest];
  const stride = longest - shortest > 1200 ? 100 : longest - shortest > 300 ? 10 : 5;
  for (let m = Math.ceil(shortest / stride) * stride; m <= longest && metres.length < 400; m += stride)
    metres.push({ ...tick(LIGHT / m), wavelength: m });
  return { kilohertz: kilohertz.filter(isRead), metres: metres.filter(isRead) };
}

/** Where the marks of a set's dial belong. */
export const dialMarks = (set: SetDescription, reception: Reception, ticks: DialTicks): DialMarks => ({
  ...pointerOf(set),
  ...marksAlong(
    ticks,
    reception,
    (peak) => peak,
    ({ dial }) => dial,
  ),
  folds: dialFolds(reception),
});

function dialFolds({ dial: { points, folds } }: Reception): DialFold[] {
  // Points of a dial rise by their place and fall by their frequency.
  const positionOf = (frequency: number): number => {
    const after = points.findIndex((point) => point.frequency <= frequency);
    if (after < 0) return points[points.length - 1].position;
    if (after === 0) return points[0].position;
    const [high, low] = [points[after - 1], points[after]];
    const share = Math.log(high.frequency / frequency) / Math.log(high.frequency / low.frequency);
    return high.position + share * (low.position - high.position);
  };
  return folds.map(([lowest, highest]) => ({ lowest, highest, ends: [positionOf(lowest), positionOf(highest)] }));
}

/** The marks of one pointer. @param place where a peak has that pointer. @param stationAt where a station has it. */
export function marksAlong(
  ticks: DialTicks,
  reception: Reception,
  place: (peak: Peak) => { readonly position: number; readonly within: boolean },
  stationAt: (station: StationReception) => { readonly position: number } | undefined,
): Pick<DialMarks, 'kilohertz' | 'metres' | 'stations'> {
  const marked = <T extends Tick>(list: readonly T[]) =>
    list.flatMap(({ peak, ...figure }) => {
      const { position, within } = place(peak);
      return within ? [{ ...figure, position }] : [];
    });
  const stations = reception.stations.flatMap((s) => {
    const at = s.dial && stationAt(s);
    return at ? [{ position: at.position, frequency: s.frequency, name: printable(s.name), heard: s.verdict }] : [];
  });
  return {
    kilohertz: marked(ticks.kilohertz),
    metres: marked(ticks.metres),
    stations: stations.sort((a, b) => a.position - b.position),
  };
}

/** What the pointer does, and its reading at a position. */
export function pointerOf(set: SetDescription): Pointer {
  const { arrangement, tuning } = set;
  switch (tunedBy(arrangement)) {
    case 'slider':
      return straight(sliderTravel(set), 'slider', 'fewest turns');
    case 'rotor':
      return { scale: { kind: 'round', swing: 180 }, at: (p) => 180 * p, moves: 'rotor' };
    case 'capacitor':
      return scaleOfTuning(tuning);
  }
}

/** How far a slider goes along its coil, mm; 100 where the coil's length is not known. */
function sliderTravel({ arrangement, coils }: SetDescription): number {
  const coil = arrangement.kind === 'slider' ? coils.find((c) => c.name === arrangement.coil) : undefined;
  if (arrangement.kind !== 'slider' || !coil) return 100;
  const { windingLength, turns } = coilModel(coil);
  const travel = (windingLength * 1e3 * (turns - Math.min(arrangement.fewest, turns))) / turns;
  return Number.isFinite(travel) && travel > 0 ? travel : 100;
}

/** What of each kind the hand moves. */
const MOVER: ByKind<TuningDescription, Mover> = {
  variable: () => 'spindle',
  vanes: () => 'spindle',
  measured: () => 'spindle',
  foil: () => 'sheet',
  tubes: () => 'tube',
  book: () => 'leaf',
  // Nothing moves; its scale has one mark only.
  fixed: () => 'spindle',
};

/** The scale of a capacitor by itself. */
export function scaleOfTuning(tuning: TuningDescription): Pointer {
  const model = tuningModel(tuning);
  const moves = byKind(MOVER, tuning);
  if (model.travel !== undefined) return straight(model.travel * 1e3, moves, 'open');
  return { scale: { kind: 'round', swing: model.swing }, at: (p) => model.angleAt(p), moves };
}

const straight = (travel: number, moves: Mover, from: ScaleStart): Pointer => ({
  scale: { kind: 'straight', travel, from },
  at: (p: number) => travel * p,
  moves,
});
