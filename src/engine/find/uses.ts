import { loopOf } from '../built/loop-parts.ts';
import type { Metres } from '../units/quantities.ts';
import type { BoxDescription } from './box-schema.ts';
import type { SetChoice, WindingChoice } from './choices.ts';
import { windingSize } from './winding-size.ts';
import { loopOn } from './wound.ts';

/** What a set takes from one place of the box. */
export interface Use {
  readonly list: 'formers' | 'wires' | 'capacitors' | 'foils' | 'dielectrics' | 'detectors' | 'loads' | 'transformers';
  /** Place in that list. */
  readonly index: number;
  /** Pieces taken; of wire none, but its length. */
  readonly count?: number;
  /** m of wire. */
  readonly length?: Metres;
  /** Pieces, or m of wire, that stay in the box. */
  readonly left: number;
}

/**
 * What a set takes from its box, and what stays of it.
 * @param box as read
 * @param options the choice of its parts
 * @returns one entry for each place of the box that something is taken from
 */
export function usesOf(box: BoxDescription, { front, back, turns }: SetChoice): Use[] {
  const pieces = new Map<string, { list: Exclude<Use['list'], 'wires'>; index: number; count: number }>();
  const wire = new Map<number, Metres>();
  const take = (list: Exclude<Use['list'], 'wires'>, index: number | undefined, count = 1): void => {
    if (index === undefined) return;
    const key = `${list} ${index}`;
    pieces.set(key, { list, index, count: count + (pieces.get(key)?.count ?? 0) });
  };
  const wind = (at: WindingChoice, n: number): void => {
    const kind = box.formers[at.former].former.kind;
    const length =
      kind === 'frame' || kind === 'rod'
        ? loopOf(loopOn(box, at, n), 1)!.wireLength
        : windingSize(box, at, n).wireLength;
    wire.set(at.reel, length + (wire.get(at.reel) ?? 0));
    // Two coils on one tube take it once, unless there is a second like it.
    if (!pieces.has(`formers ${at.former}`) || box.formers[at.former].count > 1) take('formers', at.former);
  };
  wind(front.winding, turns.turns);
  if (front.second) wind(front.second, turns.secondTurns!);
  if (front.tuner && 'capacitor' in front.tuner) take('capacitors', front.tuner.capacitor);
  else if (front.tuner) {
    take('foils', front.tuner.foil, front.tuner.sheets);
    take('dielectrics', front.tuner.dielectric, front.tuner.sheets - 1);
  }
  take('capacitors', front.series);
  take('detectors', back.detector);
  take('loads', back.load);
  take('transformers', back.transformer);
  return [
    ...[...pieces.values()].map((one) => ({ ...one, left: box[one.list][one.index].count - one.count })),
    ...[...wire].map(([index, length]) => ({
      list: 'wires' as const,
      index,
      length,
      left: box.wires[index].length - length,
    })),
  ];
}
