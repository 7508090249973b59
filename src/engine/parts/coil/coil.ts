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

/**
 * A coil from its description.
 * @param spec shape, turns, wire and sizes, SI
 * @returns inductance (H), loss resistance at any frequency (Ω), self-capacitance (F), each with its spread and its
 * warnings
 * @throws RangeError for sizes that cannot be wound.
 */
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
  const litz = strands > 1;
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
    get inductanceRange() {
      return timesOrOver(L, inductanceFactor(spec));
    },
    get selfCapacitanceRange() {
      return timesOrOver(strays().capacitance, selfCapacitanceFactor(spec));
    },
    qRangeAt(frequency) {
      const reactance = 2 * Math.PI * frequency * model.inductanceAt(frequency);
      const wireLoss = model.wireResistanceAt(frequency);
      const dielectric = model.dielectricResistanceAt(frequency);
      const factor = wireLossFactor(spec, w);
      const { spread } = strays();
      // Litz is built worse than calculated, and never better than its bare strands.
      const usual = litz ? LITZ_LOSS : 1;
      const middle = usual * wireLoss + dielectric;
      const most = middle + Math.hypot(usual * wireLoss * (factor - 1), dielectric * (spread - 1));
      const least = middle - Math.hypot(usual * wireLoss * (1 - 1 / factor), dielectric * (1 - 1 / spread));
      return [reactance / most, reactance / (litz ? Math.max(least, wireLoss / 1.1) : least)];
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

/** Measured Q of three published coils of Litz wire against the calculated: 0.85. */
const LITZ_LOSS = 1 / 0.85;

/**
 * Resistance of the built coil's wire against the calculated: ×/÷, 90 %. The formula's own doubt is 4 %; the rest is the
 * true pitch of close turns, the covering and what stands near. Four built coils lie between 0.75 and 1.0 of the
 * calculated Q; where the covering is not said it may be thick or thin, and the pitch with it.
 */
function wireLossFactor(spec: WoundSpec, w: Winding): number {
  if ((spec.wire.strands ?? 1) > 1) return 1.5;
  const isPitchSaid = 'pitch' in spec && spec.pitch !== undefined;
  if (spec.wire.covering === undefined && !isPitchSaid) return 2;
  const close = (2 * w.wireRadius) / w.pitch;
  const layers = w.columns > 1 && w.radii.length > 1 ? 1.5 : 1.4;
  return 1.2 + (layers - 1.2) * Math.min(1, Math.max(0, (close - 0.6) / 0.2));
}

/**
 * Inductance of the built coil against the calculated: ×/÷, 90 %. Three built coils and common practice: the winding
 * length decides, measured (the pitch is given) or from the wire's covering; woven and piled windings go by hand.
 */
function inductanceFactor(spec: WoundSpec): number {
  if (spec.shape !== 'solenoid') return 1.08;
  if (spec.pitch !== undefined) return 1.02;
  return spec.wire.covering === 'enamel' ? 1.05 : 1.08;
}

/** Three built coils of one layer with their leads, ×/÷ 1.25; other windings are calculated to about 30 %. */
const selfCapacitanceFactor = ({ shape }: WoundSpec): number => (shape === 'solenoid' ? 1.25 : 1.35);

const timesOrOver = (value: number, factor: number): readonly [number, number] => [value / factor, value * factor];

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
