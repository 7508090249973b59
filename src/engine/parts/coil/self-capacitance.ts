import { type Warning, warning } from '../../facts/warning.ts';
import { EPSILON_0, type Farads, type Ratio } from '../../units/quantities.ts';
import { overallDiameter } from '../wire/wire.ts';
import { COVERING_FIGURES, FORMER_FIGURES, type Insulator } from './dielectrics.ts';
import { energyCapacitance } from './energy-capacitance.ts';
import { MEDHURST_RANGE, medhurstCapacitance } from './medhurst.ts';
import type { SelfCapacitanceMethod } from './model.ts';
import { windingOf } from './shapes.ts';
import type { WoundSpec } from './spec.ts';
import type { Winding } from './winding.ts';

export interface SelfCapacitance {
  readonly capacitance: Farads;
  /** How it was found, for the builder to judge it by. */
  readonly method: SelfCapacitanceMethod;
  /** Of the built coil with its leads, ×/÷, 90 %. */
  readonly spread: Ratio;
  readonly warnings: readonly Warning[];
}

/** Part of the distance from metal to metal that is covering. */
function coveringPart(spec: WoundSpec, w: Winding): number {
  const bare = 2 * w.wireRadius;
  // In a bank winding neighbours of the next layer are one pitch off, in the hollows.
  const gap = (w.full ? Math.min(w.pitch, w.rowPitch) : w.pitch) - bare;
  return gap > 0 ? Math.min(1, Math.max(0, overallDiameter(spec.wire) - bare) / gap) : 1;
}

/**
 * Three built coils of one layer with their leads lie within ×/÷ 1.25 of Medhurst's table, whose own 5 % is that of his
 * measurements; the energy of the field is good to about 30 %.
 */
const BUILT = { table: 1.25, energy: 1.35 };

export function selfCapacitance(spec: WoundSpec, w: Winding): SelfCapacitance {
  const length = w.turns * w.pitch;
  const mean = 2 * w.radius[0];
  if (w.radii.length === 1 && !w.weave) {
    const l = w.columns * w.zStep;
    const [low, high] = MEDHURST_RANGE;
    const outside = l / mean < low || l / mean > high;
    return {
      capacitance: medhurstCapacitance(l, mean),
      method: 'single-layer-table',
      spread: outside ? BUILT.energy : BUILT.table,
      warnings: outside ? [warning('coil.self-capacitance-range', { ratio: l / mean, low, high })] : [],
    };
  }
  const filled = {
    part: coveringPart(spec, w),
    permittivity: COVERING_FIGURES[spec.wire.covering ?? 'bare'].permittivity,
  };
  let capacitance = energyCapacitance(w, filled);
  if (w.rows === 'axial') {
    // What is measured on one layer exceeds its energy in free space (an earthed end is not in free space): the same
    // excess is given to other coils of that outline.
    const across = w.radii[0] + w.radii[w.radii.length - 1];
    const l = w.weave ? length : Math.max(w.columns * w.zStep, w.pitch);
    const turns = 40;
    const sheet = windingOf({
      shape: 'solenoid',
      turns,
      meanDiameter: across,
      pitch: l / turns,
      wire: { diameter: Math.min((0.8 * l) / turns, 0.4 * across) },
    });
    capacitance += Math.max(0, medhurstCapacitance(l, across) - energyCapacitance(sheet, { part: 0, permittivity: 1 }));
  }
  return {
    capacitance,
    method: 'field-energy',
    spread: BUILT.energy,
    warnings: [],
  };
}

/** A part of the self-capacitance whose field lies in one insulator. */
interface Share {
  readonly capacitance: Farads;
  readonly insulator: Insulator;
}

/**
 * Which part of the self-capacitance lies in the former's wall and in the covering, from the fields: one volt falls evenly
 * along the winding, and between neighbours stands a turn's worth of it.
 * An estimate within a factor of about two, which the uncertainty of Q carries.
 */
export function dielectricShares(spec: WoundSpec, w: Winding, capacitance: Farads): readonly Share[] {
  const former = FORMER_FIGURES[spec.former ?? 'air'];
  const covering = COVERING_FIGURES[spec.wire.covering ?? 'bare'];
  const first = w.radii[0];
  const last = w.radii[w.radii.length - 1];
  const piled = w.full && w.radii.length > 1 && w.columns > 1;
  // Two parallel round wires a pitch apart, half their field on the former's side.
  const perMetre = (Math.PI * EPSILON_0) / Math.acosh(Math.max(1.02, w.pitch / (2 * w.wireRadius)));
  const turnToTurn = (perMetre * Math.PI * (first + last)) / Math.max(1, w.turns);
  const shares: Share[] = [];
  if (former.loss > 0) {
    const wall = spec.shape === 'spider' ? (spec.discThickness ?? 1.5e-3) : (spec.wall ?? former.wall);
    let inWall: number;
    if (w.rows === 'radial' && !piled) {
      const breadth = Math.max(w.pitch, last - first);
      inWall = (Math.PI * (last * last - first * first) * wall) / breadth ** 2;
    } else {
      const length = w.columns * w.zStep;
      // Only the bottom layer lies on the former; a self-supporting basket keeps little but its pegs' field.
      const voltage = (piled ? 1 / w.radii.length : 1) * (w.weave ? 0.3 : 1);
      inWall = ((2 * Math.PI * first * wall) / length) * voltage ** 2;
    }
    const fringe = w.weave ? 0.2 : 0.5 / (piled ? w.radii.length : 1);
    shares.push({ insulator: former, capacitance: former.permittivity * (EPSILON_0 * inWall + fringe * turnToTurn) });
  }
  if (covering.loss > 0) {
    const part = coveringPart(spec, w);
    const inCovering = part / covering.permittivity / (1 - part + part / covering.permittivity);
    shares.push({ insulator: covering, capacitance: piled ? capacitance * inCovering : turnToTurn * part });
  }
  const sum = shares.reduce((s, x) => s + x.capacitance, 0);
  const most = 0.9 * capacitance;
  return sum > most ? shares.map((x) => ({ ...x, capacitance: (x.capacitance * most) / sum })) : shares;
}
