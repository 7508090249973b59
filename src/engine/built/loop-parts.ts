import type { Warning } from '../facts/warning.ts';
import type { AerialDescription } from '../kinds/aerials/aerial-schema.ts';
import type { SectionedCoil, Stretch } from '../kinds/arrangements/coil-sections.ts';
import { isLoop } from '../kinds/loops.ts';
import { USUAL_FREQUENCY } from '../kinds/measured/usual-errors.ts';
import { windingFactors } from '../kinds/measured/winding-as-measured.ts';
import type { Element } from '../network/elements.ts';
import { owned } from '../network/ids.ts';
import { PART } from '../network/part-ids.ts';
import { ferriteRod } from '../parts/aerial/ferrite-rod.ts';
import { frameAerial } from '../parts/aerial/frame.ts';
import { wireResistance } from '../parts/wire/skin.ts';
import type { Henries, Hertz, Metres, Ohms } from '../units/quantities.ts';
import { scaledCoil } from './coil-parts.ts';

/** A frame or ferrite rod as tuning coil and aerial at once. */
export interface LoopAerial extends SectionedCoil {
  /** Of 1 V peak, for the solver to scale: what lies between two counts of turns. */
  readonly source: (from: string, to: string, turns: Stretch) => Element;
  readonly effectiveHeightAt: (frequency: Hertz) => Metres;
  readonly wireLength: Metres;
  readonly dcResistance: Ohms;
  readonly warningsAt: (frequency: Hertz) => readonly Warning[];
}

/** Picofarads per centimetre of diameter of a short coil of its proportions, as Medhurst's table has it near l/D = 0.2–1. */
const CAPACITANCE_PER_METRE = 50e-12;

/**
 * A frame or rod aerial as the coil it is.
 * @param aerial as described
 * @param lossFactor by which losses are greater than computed, 1 as computed
 * @returns its turns, inductance (H), resistance (Ω) and effective height (m); undefined for an aerial that is no loop
 * @throws RangeError for sizes that cannot be wound.
 */
export function loopOf(aerial: AerialDescription, lossFactor: number): LoopAerial | undefined {
  const calculated = calculatedLoop(aerial, lossFactor);
  if (!calculated || !isLoop(aerial) || !aerial.measured) return calculated;
  const { selfCapacitance, effectiveHeight } = aerial.measured;
  const factors = windingFactors(
    { inductanceAt: () => calculated.inductance, resistanceAt: calculated.resistanceAt },
    aerial.measured,
  );
  const height = effectiveHeight
    ? effectiveHeight.value / calculated.effectiveHeightAt(effectiveHeight.at ?? USUAL_FREQUENCY)
    : 1;
  return {
    ...scaledCoil(calculated, { inductance: factors.inductance, loss: factors.resistance }),
    selfCapacitance: selfCapacitance?.value ?? calculated.selfCapacitance,
    effectiveHeightAt: (f) => height * calculated.effectiveHeightAt(f),
  };
}

function calculatedLoop(aerial: AerialDescription, lossFactor: number): LoopAerial | undefined {
  const sourceOf =
    (whole: number) =>
    (from: string, to: string, turns: Stretch): Element => ({
      kind: 'source',
      ...owned(PART.loop, 'emf', { turns }),
      from,
      to,
      emf: { re: (turns[1] - turns[0]) / whole, im: 0 },
    });
  if (aerial.kind === 'frame') {
    const wire = { diameter: aerial.wire.size };
    const resistancePerMetre = (f: Hertz) =>
      wireResistance({ diameter: wire.diameter, frequency: f, metal: aerial.wire.metal }).resistancePerMetre;
    const frameOf = (turns: number) =>
      frameAerial(
        { outline: aerial.outline, side: aerial.side, turns, pitch: aerial.pitch, winding: aerial.winding, wire },
        { resistancePerMetre },
      );
    const frame = frameOf(aerial.turns);
    const byTurns = new Map<number, Henries>();
    const inductanceOf = (n: number): Henries => {
      if (!(n > 1e-9)) return 0;
      // Part of one turn: its current flows round only that share of it.
      if (n < 1) return n * n * inductanceOf(1);
      let L = byTurns.get(n);
      if (L === undefined) byTurns.set(n, (L = frameOf(n).inductance));
      return L;
    };
    return {
      ...stretches(aerial.turns, inductanceOf),
      id: PART.loop,
      source: sourceOf(aerial.turns),
      inductance: frame.inductance,
      selfCapacitance: CAPACITANCE_PER_METRE * aerial.side * (aerial.outline === 'square' ? 1.13 : 1),
      resistanceAt: (f) =>
        f > 0 ? lossFactor * frame.resistanceAt(Math.max(f, 1)) + frame.radiationResistanceAt(f) : frame.dcResistance,
      effectiveHeightAt: frame.effectiveHeightAt,
      wireLength: frame.wireLength,
      dcResistance: frame.dcResistance,
      warningsAt: frame.warningsAt,
    };
  }
  if (aerial.kind !== 'ferrite rod') return undefined;
  const rod = ferriteRod({ ...aerial });
  const diameter = aerial.coilDiameter ?? aerial.diameter + 1e-3;
  const wireLength = Math.PI * diameter * aerial.turns;
  const perMetre = (f: Hertz) =>
    wireResistance({ diameter: aerial.wire.size, frequency: Math.max(f, 1), metal: aerial.wire.metal })
      .resistancePerMetre;
  // Turns on one rod share nearly all their flux; the exponent stands for what they do not.
  const inductanceOf = (n: number): Henries => rod.inductance * (Math.max(n, 0) / aerial.turns) ** 1.9;
  return {
    ...stretches(aerial.turns, inductanceOf),
    id: PART.loop,
    source: sourceOf(aerial.turns),
    inductance: rod.inductance,
    selfCapacitance: 5e-12,
    resistanceAt: (f) =>
      f > 0
        ? lossFactor * (1.5 * wireLength * perMetre(f) + rod.lossResistanceAt(f).resistance)
        : wireLength * perMetre(0),
    effectiveHeightAt: rod.effectiveHeightAt,
    wireLength,
    dcResistance: wireLength * perMetre(0),
    warningsAt: () => rod.warnings,
  };
}

/** Parts and mutuals of an even winding from its inductance by number of turns, so that they always add up to the whole. */
function stretches(
  turns: number,
  inductanceOf: (turns: number) => Henries,
): Pick<SectionedCoil, 'turns' | 'partial' | 'mutual' | 'wireShare'> {
  return {
    turns,
    partial: (from, to) => inductanceOf(to - from),
    mutual([a, b], [c, d]) {
      if (c < a) return this.mutual([c, d], [a, b]);
      return (inductanceOf(d - a) + inductanceOf(c - b) - inductanceOf(c - a) - inductanceOf(d - b)) / 2;
    },
    wireShare: (from, to) => (to - from) / turns,
  };
}
