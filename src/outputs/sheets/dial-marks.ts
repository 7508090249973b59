import { setCircuit } from '../../engine/circuit/set-circuit.ts';
import { receiver } from '../../engine/reception/receive-station.ts';
import type { Reception } from '../../engine/reception/types.ts';
import type { SetDescription } from '../../engine/set/description.ts';
import { coilModel, tuningModel } from '../../engine/set/models.ts';
import { printable } from './words.ts';

/** What the pointer does on this set, and how far its scale goes. */
export type Scale =
  | { readonly kind: 'round'; readonly swing: number }
  /** Full travel, mm. */
  | { readonly kind: 'straight'; readonly travel: number };

export interface DialMark {
  /** 0 open … 1 meshed. */
  readonly position: number;
  readonly frequency: number;
}

export interface DialMarks {
  readonly scale: Scale;
  /** Degrees or millimetres from the open end, at a position. */
  readonly at: (position: number) => number;
  readonly kilohertz: readonly DialMark[];
  readonly metres: readonly (DialMark & { readonly wavelength: number })[];
  readonly stations: readonly (DialMark & { readonly name: string; readonly heard: string })[];
  /** What turns or slides. */
  readonly moves: string;
}

const LIGHT = 299_792_458;

/** Where the marks of a set's dial belong, each solved from the circuit itself. */
export function dialMarks(set: SetDescription, reception: Reception): DialMarks {
  const { scale, at, moves } = scaleOf(set);
  const { network, smallConductance } = receiver(setCircuit(set));
  const { lowest, highest } = reception.dial;
  const mark = (frequency: number): DialMark[] => {
    const { position, within } = network.at(frequency).peak(smallConductance);
    return within ? [{ position, frequency }] : [];
  };
  const step = highest - lowest > 2.2e6 ? 5e4 : highest - lowest > 3e5 ? 1e4 : 5e3;
  const kilohertz: DialMark[] = [];
  for (let f = Math.ceil(lowest / step) * step; f <= highest && kilohertz.length < 400; f += step)
    kilohertz.push(...mark(f));
  const metres: (DialMark & { wavelength: number })[] = [];
  const [shortest, longest] = [LIGHT / highest, LIGHT / lowest];
  const stride = longest - shortest > 1200 ? 100 : longest - shortest > 300 ? 10 : 5;
  for (let m = Math.ceil(shortest / stride) * stride; m <= longest && metres.length < 400; m += stride)
    metres.push(...mark(LIGHT / m).map((x) => ({ ...x, wavelength: m })));
  const stations = reception.stations.flatMap((s) =>
    s.dial ? [{ position: s.dial.position, frequency: s.frequency, name: printable(s.name), heard: s.heard }] : [],
  );
  return { scale, at, kilohertz, metres, stations: stations.sort((a, b) => a.position - b.position), moves };
}

/** What the pointer does, and its reading at a position. */
export function scaleOf(set: SetDescription): { scale: Scale; at: (p: number) => number; moves: string } {
  const a = set.arrangement;
  if (a.kind === 'slider') {
    const coil = set.coils.find((c) => c.name === a.coil);
    const model = coil && coilModel(coil);
    const travel =
      model && Number.isFinite(model.windingLength)
        ? (model.windingLength * 1e3 * (model.turns - Math.min(a.fewest, model.turns))) / model.turns
        : 0;
    return straight(travel > 0 ? travel : 100, 'slider along the coil');
  }
  if (a.kind === 'variometer')
    return { scale: { kind: 'round', swing: 180 }, at: (p) => 180 * p, moves: 'turning coil' };
  const model = tuningModel(set.tuning);
  if (model.travel !== undefined)
    return straight(model.travel * 1e3, set.tuning.kind === 'tubes' ? 'inner tube' : 'moving sheet');
  const moves = set.tuning.kind === 'book' ? 'hinged leaf' : 'capacitor’s spindle';
  return { scale: { kind: 'round', swing: model.swing }, at: (p) => model.angleAt(p), moves };
}

const straight = (travel: number, moves: string) => ({
  scale: { kind: 'straight' as const, travel },
  at: (p: number) => travel * p,
  moves,
});
