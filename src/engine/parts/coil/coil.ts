import { type Warning, warning } from '../../facts/warning.ts';
import { type Hertz, MU_0 } from '../../units/quantities.ts';
import { ROOM, resistivity } from '../wire/metal.ts';
import { skinParameter } from '../wire/skin.ts';
import { metalArea, overallDiameter, wireWeight } from '../wire/wire.ts';
import { coreCoil } from './core.ts';
import { FORMER_FIGURES } from './dielectrics.ts';
import { type EddyImpedance, eddyImpedance, litzImpedance, remembered } from './eddy.ts';
import { measuredCoil } from './measured.ts';
import type { CoilModel } from './model.ts';
import { dielectricShares, type SelfCapacitance, selfCapacitance } from './self-capacitance.ts';
import { windingOf } from './shapes.ts';
import type { CoilSpec, WoundSpec } from './spec.ts';
import { turnSums } from './turn-sums.ts';
import { type Winding, wireLengthTo } from './winding.ts';

/** A coil from its description. @throws RangeError for sizes that cannot be wound. */
export function makeCoil(spec: CoilSpec): CoilModel {
  if (spec.shape === 'core') return coreCoil(spec);
  if (spec.shape === 'measured') return measuredCoil(spec);
  return woundCoil(spec);
}

/** Low-frequency inductance alone, without setting up the rest. @returns H. */
export const coilInductance = (spec: WoundSpec): number => turnSums(windingOf(spec)).total;

function woundCoil(spec: WoundSpec): CoilModel {
  const { wire } = spec;
  const strands = wire.strands ?? 1;
  const w = windingOf(spec);
  const sums = turnSums(w);
  const L = sums.total;
  const rho = resistivity(wire.metal, spec.temperature ?? ROOM);
  const wireLength = wireLengthTo(w);
  // Strands twisted together run a little longer than their bundle.
  const lay = strands > 1 ? 1.03 : 1;
  const dcResistance = (rho * wireLength * lay) / metalArea(wire);

  let impedance: EddyImpedance | undefined;
  const eddy = (frequency: Hertz) => {
    impedance ??= remembered(strands > 1 ? litzImpedance(w, wire) : eddyImpedance(w));
    return impedance(skinParameter(wire.diameter, frequency, rho));
  };
  let stray: (SelfCapacitance & { loss: number; spread: number }) | undefined;
  const strays = () => {
    stray ??= withLoss(spec, w);
    return stray;
  };

  const model: CoilModel = {
    shape: spec.shape,
    turns: w.turns,
    inductance: L,
    dcResistance,
    wireLength,
    winding: w,
    ...outline(spec, w),
    weight: wireWeight(wire, wireLength),
    get selfCapacitance() {
      return strays().capacitance;
    },
    get selfCapacitanceMethod() {
      return strays().method;
    },
    get selfCapacitanceLoss() {
      return strays().loss;
    },
    get selfResonance() {
      return 1 / (2 * Math.PI * Math.sqrt(L * strays().capacitance));
    },
    inductanceAt(frequency) {
      if (!(frequency > 0)) return L;
      const x = skinParameter(wire.diameter, frequency, rho);
      // The imaginary part over R₀ back to henries per metre: R₀/ω = μ₀/(πx²); x²/8 is already in L.
      const change = (wireLength * MU_0 * (eddy(frequency).im - (x * x) / 8)) / (Math.PI * x * x);
      return L + change / strands;
    },
    wireResistanceAt: (frequency) => (frequency > 0 ? dcResistance * eddy(frequency).re : dcResistance),
    dielectricResistanceAt(frequency) {
      const omega = 2 * Math.PI * frequency;
      const { capacitance, loss } = strays();
      return omega ** 3 * L * L * capacitance * loss;
    },
    resistanceAt: (frequency) => model.wireResistanceAt(frequency) + model.dielectricResistanceAt(frequency),
    qAt: (frequency) => (2 * Math.PI * frequency * model.inductanceAt(frequency)) / model.resistanceAt(frequency),
    qRangeAt(frequency) {
      const reactance = 2 * Math.PI * frequency * model.inductanceAt(frequency);
      const wireLoss = model.wireResistanceAt(frequency);
      const dielectric = model.dielectricResistanceAt(frequency);
      const e = wireUncertainty(spec, w);
      const { spread } = strays();
      return [
        reactance / (wireLoss * (1 + e) + dielectric * spread),
        reactance / (wireLoss * (1 - e) + dielectric / spread),
      ];
    },
    partial: (from, to) => sums.block(to, to) - 2 * sums.block(from, to) + sums.block(from, from),
    mutual: ([a, b], [c, d]) => sums.block(b, d) - sums.block(b, c) - sums.block(a, d) + sums.block(a, c),
    wireLengthTo: (turn) => wireLengthTo(w, turn),
    get warnings() {
      return [...windingWarnings(spec, w), ...strays().warnings];
    },
  };
  return model;
}

function withLoss(spec: WoundSpec, w: Winding) {
  const found = selfCapacitance(spec, w);
  const shares = dielectricShares(spec, w, found.capacitance);
  const loss = shares.reduce((s, x) => s + x.capacitance * x.insulator.loss, 0) / found.capacitance;
  // The shares themselves are known to a factor of two.
  const spread = Math.max(2, ...shares.map((x) => x.insulator.spread * 1.5));
  return { ...found, loss, spread };
}

function outline(spec: WoundSpec, w: Winding) {
  const overall = overallDiameter(spec.wire);
  const last = w.radii[w.radii.length - 1];
  const side = w.weave ? Math.max(...w.weave.outward) : 0;
  const thick = w.weave ? 2 * Math.max(...w.weave.along) : 0;
  const axial = w.columns > 1 || w.radii.length === 1;
  return {
    windingLength: axial ? Math.max(w.columns * w.zStep, overall) : overall + thick,
    outerDiameter: 2 * (last + side) + overall,
  };
}

/** Relative uncertainty of the wire's resistance: the model's measured error, and 5 % for the copper and the winding. */
function wireUncertainty(spec: WoundSpec, w: Winding): number {
  const close = (2 * w.wireRadius) / w.pitch;
  const model =
    (spec.wire.strands ?? 1) > 1 || w.weave
      ? 0.2
      : w.columns > 1 && w.radii.length > 1
        ? 0.02 + 0.15 * close ** 2
        : 0.01;
  // Nearly touching turns: Medhurst's table and the field solution part, most for short coils, and the true pitch decides.
  const short = w.columns * w.zStep < 2 * w.radius[0];
  const touching = close > 0.6 ? (short ? 1.2 : 0.7) * (Math.min(close, 1) - 0.6) : 0;
  return 0.05 + model + touching;
}

function windingWarnings(spec: WoundSpec, w: Winding): Warning[] {
  const warnings: Warning[] = [];
  const covered = overallDiameter(spec.wire);
  const bare = 2 * w.wireRadius;
  const former = spec.former ?? 'air';
  if (w.pitch < bare) warnings.push(warning('coil.turns-overlap', { spacing: w.pitch, wire: bare }));
  else if (w.pitch < covered * 0.98) warnings.push(warning('coil.turns-do-not-fit', { spacing: w.pitch, covered }));
  if (w.rowPitch < covered * 0.85) warnings.push(warning('coil.layers-do-not-fit', { spacing: w.rowPitch, covered }));
  if (former === 'damp card') warnings.push(warning('coil.damp-former'));
  else if (FORMER_FIGURES[former].spread >= 2 && former !== 'styrene')
    warnings.push(warning('coil.former-loss-varies', { former }));
  if (bare / w.pitch > 0.6 && (spec.wire.strands ?? 1) === 1) warnings.push(warning('coil.close-wound-resistance'));
  return warnings;
}
