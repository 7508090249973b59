import { demandWithin, ImpossibleValues } from '../../facts/impossible-values.ts';
import { warning } from '../../facts/warning.ts';
import type { Element } from '../../network/elements.ts';
import { elementId, owned } from '../../network/ids.ts';
import { PART } from '../../network/part-ids.ts';
import { add, type Complex, complex, divide, magnitude, multiply, reciprocal } from '../../numerics/complex.ts';
import type { Farads, Henries, Ohms } from '../../units/quantities.ts';
import { type Load, loadOf } from './model.ts';

/** A transformer between detector and phones. Everything but the ratio left out: ideal. */
export interface Transformer {
  /** Turns of the detector's side over turns of the phones' side. */
  readonly ratio: number;
  /** Winding resistances; default 0. */
  readonly primaryResistance?: Ohms;
  readonly secondaryResistance?: Ohms;
  /** Of the primary with the secondary open; default so large that it does not matter. */
  readonly primaryInductance?: Henries;
  /** Share of the primary's inductance that the secondary does not link; default 0. */
  readonly leakage?: number;
  /** Loss in the iron, as a resistance across the primary; default three times its reactance at 1 kHz, none when ideal. */
  readonly coreLoss?: Ohms;
  /** Across the primary; default 0. */
  readonly windingCapacitance?: Farads;
}

/** "Ideal": at 50 Hz its inductance has this many times the load's impedance, which costs 0.005 dB and keeps solvers happy. */
const IDEAL_RATIO = 30;
/** Windings closer than this cannot be told from perfect; 1 itself would leave the inductance matrix singular. */
const CLOSEST = 1 - 1e-9;
/** Q of the iron at 1 kHz. From memory. */
const IRON_Q = 3;

/**
 * A load seen through a transformer: leakage and primary resistance in series, iron across, then two tightly coupled
 * inductances L₁ = (1 − leakage)·Lp and L₂ = L₁/n², M = k√(L₁L₂), and the secondary's resistance. The cold ends are joined.
 * @throws RangeError for values no transformer has.
 */
export function throughTransformer(t: Transformer, load: Load): Load {
  const {
    ratio: n,
    primaryResistance: R1 = 0,
    secondaryResistance: R2 = 0,
    leakage = 0,
    windingCapacitance: Cw = 0,
  } = t;
  const Lp = t.primaryInductance ?? (IDEAL_RATIO * n * n * magnitude(load.impedanceAt(50))) / (2 * Math.PI * 50);
  if (!(n > 0) || !(R1 >= 0) || !(R2 >= 0) || !(Lp > 0) || !(leakage >= 0 && leakage < 1) || !(Cw >= 0))
    throw new ImpossibleValues({ code: 'transformer.sizes' });
  const iron =
    t.coreLoss ?? (t.primaryInductance === undefined ? Number.POSITIVE_INFINITY : IRON_Q * 2 * Math.PI * 1000 * Lp);
  demandWithin('transformer.core-loss', iron, { above: 0 });
  const L1 = (1 - leakage) * Lp;
  const L2 = L1 / (n * n);
  const M = CLOSEST * Math.sqrt(L1 * L2);
  const Ls = leakage * Lp;

  /** Impedances at one angular frequency: of the coupled pair with the iron across, and of the whole without Cw. */
  const at = (f: number) => {
    const w = 2 * Math.PI * f;
    const secondary = add(load.impedanceAt(f), complex(R2, w * L2));
    const reflected = divide(complex(w * w * M * M), secondary);
    const pair = add(complex(0, w * L1), reflected);
    const core = reciprocal(add(reciprocal(pair), complex(1 / iron)));
    const series = complex(R1, w * Ls);
    // Voltage on the secondary's load over that on the pair: jωM·Z/(secondary·pair).
    const step = divide(multiply(complex(0, w * M), load.impedanceAt(f)), multiply(secondary, pair));
    return { w, core, whole: add(series, core), step };
  };
  const warnings = [...load.warnings];
  if (t.primaryInductance !== undefined) {
    const reflected = magnitude(load.impedanceAt(300)) * n * n;
    if (2 * Math.PI * 300 * Lp < reflected) warnings.push(warning('load.transformer-primary-small'));
  }
  return loadOf({
    ...load,
    warnings,
    sort: { ...load.sort, transformer: true },
    elements: (from, to) => {
      const primary = (detail: string) => owned(PART.transformer, 'primary', { detail });
      const list: Element[] = [];
      const inner = 'load primary';
      const hot = R1 > 0 || Ls > 0 ? inner : from;
      if (Ls > 0)
        list.push({
          kind: 'inductor',
          ...primary('leakage'),
          from,
          to: hot,
          inductance: Ls,
          resistance: R1,
        });
      else if (R1 > 0)
        list.push({
          kind: 'resistor',
          ...primary('resistance'),
          from,
          to: hot,
          resistance: R1,
        });
      if (Number.isFinite(iron)) list.push({ kind: 'resistor', ...primary('iron'), from: hot, to, resistance: iron });
      if (Cw > 0) list.push({ kind: 'capacitor', ...primary('capacitance'), from, to, capacitance: Cw });
      const [one, other] = [primary('winding'), owned(PART.transformer, 'secondary')];
      const out = 'load secondary';
      list.push(
        { kind: 'inductor', ...one, from: hot, to, inductance: L1, resistance: 0 },
        { kind: 'inductor', ...other, from: out, to, inductance: L2, resistance: R2 },
        {
          kind: 'mutual',
          id: elementId('transformer/coupling'),
          first: one.id,
          second: other.id,
          mutual: M,
        },
      );
      const network = load.elements(out, to);
      return { elements: [...list, ...network.elements], output: network.output };
    },
    directResistance: R1,
    impedanceAt: (f) => {
      const { w, whole } = at(f);
      return Cw > 0 ? reciprocal(add(reciprocal(whole), complex(0, w * Cw))) : whole;
    },
    transferAt: (f): Complex => {
      const { core, whole, step } = at(f);
      return multiply(multiply(divide(core, whole), step), load.transferAt(f));
    },
    transducerImpedanceAt: load.transducerImpedanceAt,
  });
}
