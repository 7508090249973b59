import { demandWithin } from '../../facts/impossible-values.ts';
import { warning } from '../../facts/warning.ts';
import { ROOM, resistivity } from '../wire/metal.ts';
import { skinImpedance, skinParameter } from '../wire/skin.ts';
import { metalArea, overallDiameter, wireWeight } from '../wire/wire.ts';
import type { CoilModel } from './model.ts';
import type { CoreSpec } from './spec.ts';
import { fromSquares } from './turn-sums.ts';

/** Two halves of a winding on a closed core share all but about 1 % of their flux (common practice, no source). */
const HALVES_COUPLING = 0.99;
/** Between neighbouring turns on a core; leads and handling come on top (common practice, no source). */
const CORE_SELF_CAPACITANCE = 5e-12;

/** A coil on a toroid or in a pot core: L = A_L·N². */
export function coreCoil(spec: CoreSpec): CoilModel {
  const { turns, perTurnSquared: A, turnLength = 0.04, coreQ = 150, wire, form = 'toroid' } = spec;
  demandWithin('coil.turns', turns, { above: 0, max: 20_000 });
  demandWithin('coil.per-turn-squared', A, { above: 0 });
  const rho = resistivity(wire.metal, spec.temperature ?? ROOM);
  const wireLength = turns * turnLength;
  const dcResistance = (rho * wireLength) / metalArea(wire);
  const L = A * turns * turns;
  const sums = leakySums(A, turns);
  const resistanceAt = (frequency: number) => wireAt(frequency) + coreAt(frequency);
  const wireAt = (frequency: number) => dcResistance * skinImpedance(skinParameter(wire.diameter, frequency, rho)).re;
  const coreAt = (frequency: number) => (2 * Math.PI * frequency * L) / coreQ;
  return {
    shape: 'core',
    turns,
    inductance: L,
    dcResistance,
    wireLength,
    windingLength: turns * overallDiameter(wire),
    outerDiameter: turnLength / Math.PI,
    weight: wireWeight(wire, wireLength),
    selfCapacitance: CORE_SELF_CAPACITANCE,
    selfCapacitanceMethod: 'typical',
    selfCapacitanceLoss: 0.01,
    selfResonance: 1 / (2 * Math.PI * Math.sqrt(L * CORE_SELF_CAPACITANCE)),
    inductanceAt: () => L,
    wireResistanceAt: wireAt,
    // The core's loss takes the place of former and covering.
    dielectricResistanceAt: coreAt,
    resistanceAt,
    qAt: (f) => (2 * Math.PI * f * L) / resistanceAt(f),
    // A_L of ungapped cores is sold to 25 %.
    inductanceRange: [L / 1.25, L * 1.25],
    selfCapacitanceRange: [CORE_SELF_CAPACITANCE / 2, CORE_SELF_CAPACITANCE * 2],
    qRangeAt: (f) => {
      const q = (2 * Math.PI * f * L) / resistanceAt(f);
      return [q / 1.5, q * 1.3];
    },
    partial: (from, to) => sums.block(to, to) - 2 * sums.block(from, to) + sums.block(from, from),
    mutual: ([a, b], [c, d]) => sums.block(b, d) - sums.block(b, c) - sums.block(a, d) + sums.block(a, c),
    wireLengthTo: (turn) => turn * turnLength,
    warnings: [warning('coil.core-inductance-varies', { core: form }), warning('coil.core-turns-resistance')],
  };
}

/** Every pair of turns alike but for a little leakage, so that parts never couple wholly and the whole is A_L·N². */
function leakySums(A: number, turns: number) {
  const n = Math.ceil(turns);
  const leak = (1 - HALVES_COUPLING) / (1 + HALVES_COUPLING);
  const mutual = A * (1 - leak);
  const self = A * (1 + leak * (turns - 1));
  const T = Float64Array.from({ length: n + 1 }, (_, k) => k * self + k * (k - 1) * mutual);
  return fromSquares(T, turns);
}
