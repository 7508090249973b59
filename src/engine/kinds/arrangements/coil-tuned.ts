import { EARTH, type Element } from '../../network/elements.ts';
import { owned, type PartId } from '../../network/ids.ts';
import { PART } from '../../network/part-ids.ts';
import type { Henries, Radians } from '../../units/quantities.ts';
import type { Assembly } from './assembly.ts';
import { coilInCircuit, coupleCoils } from './coil-sections.ts';
import { type ArrangementOf, assembled, type Kit } from './kit.ts';
import { trapElements } from './traps.ts';

const parallelCapacitor = (from: string, capacitance: number): Element[] =>
  capacitance > 0
    ? [{ kind: 'capacitor', ...owned(PART.parallelCapacitor, 'part'), from, to: EARTH, capacitance }]
    : [];

/** Tuned by how many turns a slider leaves in use; the rest of the coil hangs on as a dead end. */
export function sliderTuned(arrangement: ArrangementOf<'slider'>, kit: Kit): Assembly {
  const coil = kit.coil(arrangement.coil);
  const fewest = Math.min(arrangement.fewest, coil.turns);
  const fixedTap = arrangement.detectorTap;
  const sliderAt = (position: number): number => fewest + (coil.turns - fewest) * position;
  const elementsAt = (position: number): Element[] => {
    const turn = sliderAt(position);
    const wound = coilInCircuit(coil, fixedTap === undefined ? [turn] : [turn, fixedTap], {
      first: EARTH,
      last: 'far end',
    });
    const traps = trapElements(kit.traps, { coil, wound });
    const contact = (part: PartId, from: string, to: string): Element => ({
      kind: 'resistor',
      ...owned(part, 'contact'),
      from,
      to,
      resistance: 0.02,
    });
    return [
      ...wound.elements,
      ...traps.elements,
      contact(coil.id, 'top', wound.nodeAt(turn)),
      contact(PART.aerial, traps.feed, 'top'),
      ...(fixedTap === undefined ? [] : [contact(PART.detector, 'detector tap', wound.nodeAt(fixedTap))]),
      ...parallelCapacitor('top', arrangement.parallelCapacitor),
    ];
  };
  return assembled(kit, {
    elementsAt,
    tuning: [],
    live: fixedTap === undefined ? 'top' : 'detector tap',
    other: EARTH,
    tunedPort: { from: 'top', to: EARTH },
    warnings: [],
  });
}

/** Tuned by turning one coil within another, in series: from opposing (position 0) to aiding (position 1). */
export function variometerTuned(arrangement: ArrangementOf<'variometer'>, kit: Kit): Assembly {
  const stator = kit.coil(arrangement.coil);
  const rotor = kit.coil(arrangement.rotor);
  const fixed = coilInCircuit(stator, [], { first: 'middle', last: 'top' });
  const traps = trapElements(kit.traps, { coil: stator, wound: fixed });
  const turning = coilInCircuit(rotor, [], { first: EARTH, last: 'middle' });
  const mutualAt = turnedMutual((tilt) =>
    kit.mutual(arrangement.coil, arrangement.rotor, { distance: 0, tilt: (180 * tilt) / Math.PI })(
      [0, stator.turns],
      [0, rotor.turns],
    ),
  );
  const elementsAt = (position: number): Element[] => [
    ...fixed.elements,
    ...turning.elements,
    ...traps.elements,
    ...coupleCoils(fixed, turning, () => mutualAt(Math.PI * (1 - position))),
    { kind: 'resistor', ...owned(PART.aerial, 'contact'), from: traps.feed, to: 'top', resistance: 0.01 },
    ...parallelCapacitor('top', arrangement.parallelCapacitor),
  ];
  return assembled(kit, {
    elementsAt,
    tuning: [],
    live: 'top',
    other: EARTH,
    tunedPort: { from: 'top', to: EARTH },
    warnings: traps.warnings,
  });
}

/** Cosines of the tilts at which the mutual inductance is summed over the turns. */
const TILTS = [0.15, 0.45, 0.7, 0.9, 1];

/**
 * Mutual inductance of two coils with one middle, by tilt. It is an odd function of the cosine, so M/cos θ is a smooth
 * one of cos² θ: five sums over the turns give it, and a whole scale is then cheap.
 */
function turnedMutual(exact: (tilt: Radians) => Henries): (tilt: Radians) => Henries {
  let known: number[] | undefined;
  return (tilt) => {
    known ??= TILTS.map((c) => exact(Math.acos(c)) / c);
    const cos = Math.cos(tilt);
    const x = cos * cos;
    let sum = 0;
    TILTS.forEach((c, i) => {
      let weight = 1;
      TILTS.forEach((d, j) => {
        if (j !== i) weight *= (x - d * d) / (c * c - d * d);
      });
      sum += weight * known![i];
    });
    return cos * sum;
  };
}
