import { demandWithin } from '../../facts/impossible-values.ts';
import { type Warning, warning } from '../../facts/warning.ts';
import { type Hertz, MU_0 } from '../../units/quantities.ts';
import { ROOM, resistivity } from '../wire/metal.ts';
import { skinParameter } from '../wire/skin.ts';
import {
  conductorDiameter,
  isCoveringUnknown,
  metalArea,
  overallDiameter,
  strandingOf,
  wireWeight,
} from '../wire/wire.ts';
import { coreCoil } from './core.ts';
import { FORMER_FIGURES } from './dielectrics.ts';
import { type EddyImpedance, eddyImpedance, litzImpedance, remembered } from './eddy.ts';
import { measuredCoil } from './measured.ts';
import type { CoilModel } from './model.ts';
import { pitchEnds } from './pitch-ends.ts';
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
  // Diameters are shown to three digits.
  if (wire.overall !== undefined)
    demandWithin('coil.over-covering', wire.overall, { min: 0.995 * conductorDiameter(wire), below: 1 });
  const w = windingOf(spec);
  const sums = turnSums(w);
  const L = sums.total;
  const rho = resistivity(wire.metal, spec.temperature ?? ROOM);
  const wireLength = wireLengthTo(w);
  // Strands twisted together run a little longer than their bundle.
  const lay = strands > 1 ? 1.03 : 1;
  const dcResistance = (rho * wireLength * lay) / metalArea(wire);
  const stranding = strandingOf(wire);
  // Of the outline as if it were solid; of Litz, of its strands.
  const solid = dcResistance * (stranding?.copper ?? 1);
  const built = solid * (litz ? LITZ_LOSS : (stranding?.loss ?? 1));

  let impedance: EddyImpedance | undefined;
  const eddy = (frequency: Hertz) => {
    impedance ??= remembered(strands > 1 ? litzImpedance(w, wire) : eddyImpedance(w));
    return impedance(skinParameter(wire.diameter, frequency, rho));
  };
  let stray: (SelfCapacitance & { loss: number; lossSpread: number }) | undefined;
  const strays = () => {
    stray ??= withLoss(spec, w);
    return stray;
  };
  let wound: readonly CoilModel[] | undefined;
  const ends = () => {
    wound ??= pitchEnds(spec)?.map(woundCoil) ?? [];
    return wound;
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
    wireResistanceAt: (frequency) => (frequency > 0 ? built * eddy(frequency).re : dcResistance),
    dielectricResistanceAt(frequency) {
      const omega = 2 * Math.PI * frequency;
      const { capacitance, loss } = strays();
      return omega ** 3 * L * L * capacitance * loss;
    },
    resistanceAt: (frequency) => model.wireResistanceAt(frequency) + model.dielectricResistanceAt(frequency),
    qAt: (frequency) => (2 * Math.PI * frequency * model.inductanceAt(frequency)) / model.resistanceAt(frequency),
    get inductanceRange() {
      const others = isPitchGiven(spec) ? [] : ends().map((end) => end.inductance / L);
      return spreadOut(L, [inductanceFactor(spec), 1 / inductanceFactor(spec)], others);
    },
    get selfCapacitanceRange() {
      const { capacitance, spread, method } = strays();
      const others = method === 'field-energy' ? ends().map((end) => end.selfCapacitance / capacitance) : [];
      return spreadOut(capacitance, [spread, 1 / spread], others);
    },
    qRangeAt(frequency) {
      const q = model.qAt(frequency);
      const omega = 2 * Math.PI * frequency;
      const wireLoss = model.wireResistanceAt(frequency);
      const dielectric = model.dielectricResistanceAt(frequency);
      const { lossSpread } = strays();
      const withLosses = (wires: number, rest: number) =>
        (wireLoss + dielectric) / (wires * wireLoss + rest * dielectric);
      const otherPitches = ends().map((end) => {
        const loss = (end.wireResistanceAt(frequency) + dielectric) / end.inductanceAt(frequency);
        return (wireLoss + dielectric) / model.inductanceAt(frequency) / loss;
      });
      const [low, high] = spreadOut(
        q,
        ...wireLossFactors(spec, w).map((wires) => [withLosses(wires, 1)]),
        [withLosses(1, lossSpread), withLosses(1, 1 / lossSpread)],
        otherPitches,
      );
      // Litz never comes out better than its strands do by themselves, in their covering and on their former.
      const least = solid * eddy(frequency).re + dielectric / lossSpread;
      const ceiling = litz ? (omega * model.inductanceAt(frequency)) / least : high;
      return [low, Math.min(high, ceiling)];
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
  const estimate = selfCapacitance(spec, w);
  const shares = dielectricShares(spec, w, estimate.capacitance);
  const loss = shares.reduce((s, x) => s + x.capacitance * x.insulator.loss, 0) / estimate.capacitance;
  // The shares themselves are known to a factor of two, apart from what their insulators lose.
  const insulators = Math.max(1, ...shares.map((x) => x.insulator.spread));
  const lossSpread = Math.exp(Math.hypot(Math.log(2), Math.log(insulators)));
  return { ...estimate, loss, lossSpread };
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

/** Measured Q of three published coils of Litz wire against Butterworth's formula: 0.85. */
const LITZ_LOSS = 1 / 0.85;

/**
 * Resistance of the built coil's wire against the calculated, beside its pitch: factors below and above, 90 %. The formula's
 * own doubt is 4 % (10 % in a pile), a Q meter's 10 %; joints, leads, the wire's surface and what stands near only add.
 * Four built coils have 0.75 to 1.0 of the calculated Q. Where not even the covering is said, two published coils of 600
 * and 800 at 180 kHz have 1.43 times it, for reasons not known.
 */
function wireLossFactors(spec: WoundSpec, w: Winding): readonly number[] {
  if ((spec.wire.strands ?? 1) > 1) return [1 / 1.5, 1.5];
  const spread = strandingOf(spec.wire)?.spread;
  if (isCoveringUnknown(spec.wire) && !isPitchGiven(spec)) return [1 / 1.5, 1.6];
  const usual = w.columns > 1 && w.radii.length > 1 ? [1 / 1.3, 1.5] : [1 / 1.2, 1.4];
  return spread === undefined ? usual : [...usual, 1 / spread, spread];
}

const isPitchGiven = (spec: WoundSpec): boolean => 'pitch' in spec && spec.pitch !== undefined;

/**
 * Inductance of the built coil against the calculated, beside its pitch: ×/÷, 90 %. Three built coils and common practice:
 * the diameter measured to 1 %, and the winding length where it is given; woven and piled windings go by hand.
 */
function inductanceFactor(spec: WoundSpec): number {
  if (spec.shape !== 'solenoid') return 1.08;
  return isPitchGiven(spec) ? 1.02 : 1.04;
}

/**
 * Range of a value from independent doubts, each given by the factors at its ends: those above and those below 1 add as
 * squares of logarithms.
 */
function spreadOut(value: number, ...doubts: readonly (readonly number[])[]): readonly [number, number] {
  let below = 0;
  let above = 0;
  for (const factors of doubts) {
    const logarithms = factors.map(Math.log);
    below += Math.min(0, ...logarithms) ** 2;
    above += Math.max(0, ...logarithms) ** 2;
  }
  return [value * Math.exp(-Math.sqrt(below)), value * Math.exp(Math.sqrt(above))];
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
  return warnings;
}
