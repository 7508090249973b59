import type { CoilModel, Part } from '../parts/coil/model.ts';
import { ringMutual } from '../parts/coil/ring.ts';
import type { SetDescription } from '../set/description.ts';
import { coilModel } from '../set/models.ts';
import type { Henries, Hertz, Ohms } from '../units/quantities.ts';
import type { SectionedCoil } from './arrangements/coil-sections.ts';

/** A coil of the set, as made. */
export interface CoilPart extends SectionedCoil {
  readonly part: string;
  readonly model: CoilModel;
  readonly dcResistance: Ohms;
  readonly warnings: readonly string[];
}

/** Make every coil a set describes. @param loss multiplies their resistance, for what-ifs. */
export const coilsOf = (set: SetDescription, loss: number): CoilPart[] =>
  set.coils.map((description, i) => {
    const model = coilModel(description);
    return {
      name: description.name,
      part: `coils.${i}`,
      model,
      turns: model.turns,
      inductance: model.inductance,
      selfCapacitance: model.selfCapacitance,
      resistanceAt: (f: Hertz) => (f > 0 ? loss * model.resistanceAt(f) : model.dcResistance),
      partial: model.partial,
      mutual: model.mutual,
      wireShare: (from, to) => (model.wireLengthTo(to) - model.wireLengthTo(from)) / model.wireLength,
      dcResistance: model.dcResistance,
      warnings: model.warnings,
    };
  });

/**
 * Mutual inductance between stretches of two coils on one axis, middles `distance` apart, one turned by `tilt` degrees
 * (0 to 180). Coils without turns in space (cores, measured ones) do not reach each other.
 */
export function mutualOf(
  first: CoilPart,
  second: CoilPart,
  placing: { distance: number; tilt: number },
): (a: Part, b: Part) => Henries {
  const [w1, w2] = [first.model.winding, second.model.winding];
  if (!w1 || !w2) return () => 0;
  const middle = (z: Float64Array) => (Math.min(...z) + Math.max(...z)) / 2;
  const [m1, m2] = [middle(w1.z), middle(w2.z)];
  const turned = Math.cos((placing.tilt * Math.PI) / 180);
  const share = (turn: number, [from, to]: Part): number => Math.max(0, Math.min(turn + 1, to) - Math.max(turn, from));
  return (a, b) => {
    let sum = 0;
    for (let i = 0; i < w1.radius.length; i++) {
      const p = share(i, a);
      if (p === 0) continue;
      for (let j = 0; j < w2.radius.length; j++) {
        const q = share(j, b);
        if (q > 0)
          sum += p * q * ringMutual(w1.radius[i], w2.radius[j], w2.z[j] - m2 + placing.distance - (w1.z[i] - m1));
      }
    }
    return sum * turned;
  };
}
