import { changedCircuit, type SetCircuit } from '../../src/engine/built/set-circuit.ts';
import { normalQuantile } from '../../src/engine/numerics/normal.ts';
import { uniform } from '../../src/engine/numerics/random.ts';
import { type FieldOptions, fieldsAtSite } from '../../src/engine/reception/path/field.ts';
import { receiver, receiveStation, type TunedStation } from '../../src/engine/reception/path/receive-station.ts';
import { following } from '../../src/engine/uncertainty/deviates-of.ts';
import { fieldDraws } from '../../src/engine/uncertainty/field-draws.ts';
import { FIGURE_IDS, FIGURES, type FigureId } from '../../src/engine/uncertainty/figures.ts';
import { MODULATION } from '../../src/engine/uncertainty/hearing-spreads.ts';
import type { PartInput } from '../../src/engine/uncertainty/input.ts';
import { changesFor, setInputs } from '../../src/engine/uncertainty/inputs.ts';
import { valueAtDeviate } from '../../src/engine/uncertainty/spread.ts';

const figuresOf = (s: TunedStation) =>
  Object.fromEntries(FIGURE_IDS.map((id) => [id, FIGURES[id](s)])) as Record<FigureId, number>;

/** One station in one set drawn. */
export interface PlainDraw {
  readonly fieldStrength: number;
  /** Whether the dial reaches it. */
  readonly within: boolean;
  /** Where the pointer then stands, 0 open to 1 meshed. */
  readonly position: number;
  readonly figures: Readonly<Record<FigureId, number>>;
}

/**
 * Sets drawn and followed one by one through the whole engine: what `uncertaintyOf` stands for, at a hundred times the
 * work. For checking it.
 * @param seed the same seed draws the same sets. @returns of every set, its stations in the set's order; undefined where
 * nothing arrives or the set cannot be.
 */
export function plainDraws(
  circuit: SetCircuit,
  count: number,
  seed: number,
  options: FieldOptions = {},
): readonly (readonly (PlainDraw | undefined)[])[] {
  const { set } = circuit;
  const inputs = setInputs(circuit);
  const next = uniform(seed);
  const normal = (): number => normalQuantile((Math.floor(next() * 2 ** 30) + 0.5) / 2 ** 30);
  const fields = set.place.stations.map((station) => fieldDraws(set, station, options));
  const fieldOf = fieldsAtSite(set.place, options);
  return Array.from({ length: count }, () => {
    const alone = new Map<PartInput | 'ground', number>(inputs.map(({ id }) => [id, normal()]));
    const ground = normal();
    alone.set('ground', ground);
    const own = new Map(
      inputs.map(({ id, follows }) => {
        const deviate = alone.get(id)!;
        const others = (follows ?? []).map(({ share, other }) => ({ share, other: alone.get(other)! }));
        return [id, following(others, deviate)];
      }),
    );
    const drawn = changedCircuit(
      circuit,
      changesFor(inputs, ({ id }) => own.get(id) ?? 0),
    );
    const sites: number[] = [];
    let dB = 0;
    const ready = receiver(drawn, (station) => {
      const field = fieldOf(station);
      return { ...field, fieldStrength: field.fieldStrength * 10 ** (dB / 20) };
    });
    return set.place.stations.map((station, i): PlainDraw | undefined => {
      const [site, sky, depth] = [normal(), normal(), normal()];
      sites.push(site);
      const field = fields[i];
      if (!field) return undefined;
      const byItself = { ground, site, 'sky wave': sky, sensitivity: alone.get('sensitivity') ?? 0 };
      dB = field.at((input) => (typeof input === 'number' ? sites[input] : byItself[input]));
      try {
        const tuned = receiveStation(ready, {
          ...station,
          modulation: station.modulation * valueAtDeviate(MODULATION, depth),
        });
        return {
          fieldStrength: tuned.field.fieldStrength,
          within: tuned.within,
          position: tuned.position,
          figures: figuresOf(tuned),
        };
      } catch (refusal) {
        if (refusal instanceof RangeError) return undefined;
        throw refusal;
      }
    });
  });
}
