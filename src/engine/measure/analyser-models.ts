import { add, type Complex, complex, divide, multiply, reciprocal } from '../numerics/complex.ts';
import type { ImpedanceReading } from './measurement.ts';

/** A part as an analyser sees it: unknowns, their starts, and what is known of them beforehand. */
export interface PartModel {
  /** Impedance at f by the unknowns, and by how resistance rises with frequency. */
  readonly impedance: (x: ArrayLike<number> & Iterable<number>, frequency: number, exponent: number) => Complex;
  /** How resistance rises with frequency, and the standard deviation of that; left out where there is none. */
  readonly exponent?: { readonly value: number; readonly deviation: number };
  /** What the third unknown, resistance at the reference frequency, is in units of, Ω; left out where it is none. */
  readonly unit?: number;
  readonly starts: readonly (readonly number[])[];
  /** Unknowns that have a usual value, and its standard deviation. */
  readonly priors: readonly { readonly unknown: number; readonly value: number; readonly deviation: number }[];
}

/** Which part was measured. */
export type AnalysedPart = 'coil' | 'capacitor' | 'aerial' | 'crystal earpiece';

/** How resistance rises with frequency: of a winding nearly with its skin effect, of others unknown in sign. */
const WINDING_EXPONENT = { value: 0.8, deviation: 0.4 };
const OTHER_EXPONENT = { value: 0, deviation: 0.5 };
/** Self-capacitance of a coil, F; inductance of a capacitor's leads and of an aerial, H; with deviations of the logarithms. */
const SELF_CAPACITANCE = { value: Math.log(8e-12), deviation: 1 };
const LEAD_INDUCTANCE = { value: Math.log(2e-8), deviation: 1 };
const AERIAL_INDUCTANCE = { value: Math.log(1e-5), deviation: 1 };

const middle = (values: number[]): number => values.sort((a, b) => a - b)[Math.floor(values.length / 2)];
const omega = (f: number): number => 2 * Math.PI * f;

/** Of the lowest tenth of a sweep, where a coil or a capacitor is most nearly only that. */
const lowest = (sweep: readonly ImpedanceReading[]) => sweep.slice(0, Math.max(3, Math.ceil(sweep.length / 10)));

/** ln L, ln C, R as a share of 1 % of the reactance: (R + jωL) with C across it. */
function coilModel(sweep: readonly ImpedanceReading[], reference: number): PartModel {
  const L = middle(lowest(sweep).map((p) => Math.abs(p.reactance) / omega(p.frequency)));
  const unit = 0.01 * omega(reference) * L;
  return {
    unit,
    exponent: WINDING_EXPONENT,
    impedance([lnL, lnC, r], f, a) {
      const w = omega(f);
      const z = complex(r * unit * (f / reference) ** a, w * Math.exp(lnL));
      return divide(z, add(complex(1), multiply(complex(0, w * Math.exp(lnC)), z)));
    },
    starts: [3e-12, 1e-11, 4e-11, 1.5e-10].map((C) => [Math.log(L), Math.log(C), 1]),
    priors: [{ unknown: 1, ...SELF_CAPACITANCE }],
  };
}

/** ln C, ln L, R as a share of 1 % of the reactance: all in series. */
function seriesModel(
  sweep: readonly ImpedanceReading[],
  reference: number,
  inductance: { readonly value: number; readonly deviation: number },
): PartModel {
  const C = middle(lowest(sweep).map((p) => 1 / (Math.abs(p.reactance) * omega(p.frequency))));
  const unit = 0.01 / (omega(reference) * C);
  return {
    unit,
    exponent: OTHER_EXPONENT,
    impedance([lnC, lnL, r], f, a) {
      const w = omega(f);
      return complex(r * unit * (f / reference) ** a, w * Math.exp(lnL) - 1 / (w * Math.exp(lnC)));
    },
    starts: [0.5, 1, 2].map((times) => [Math.log(C), inductance.value + Math.log(times), 1]),
    priors: [{ unknown: 1, ...inductance }],
  };
}

/** ln C, ln of the resonance, ln of the series capacitance as a share of C, ln Q: C with a series R-L-C across it. */
function earpieceModel(sweep: readonly ImpedanceReading[]): PartModel {
  const C = middle(lowest(sweep).map((p) => 1 / (Math.abs(p.reactance) * omega(p.frequency))));
  const [low, high] = [sweep[0].frequency, sweep[sweep.length - 1].frequency];
  return {
    impedance([lnC, lnF, lnShare, lnQ], f) {
      const w = omega(f);
      const w0 = omega(Math.exp(lnF));
      const motional = Math.exp(lnC + lnShare);
      const z = complex(1 / (w0 * motional * Math.exp(lnQ)), w / (w0 * w0 * motional) - 1 / (w * motional));
      return reciprocal(add(complex(0, w * Math.exp(lnC)), reciprocal(z)));
    },
    starts: Array.from({ length: 8 }, (_, i) => [
      Math.log(C),
      Math.log(low * (high / low) ** ((i + 0.5) / 8)),
      Math.log(0.1),
      Math.log(8),
    ]),
    priors: [],
  };
}

/** The model of a part, and where its fit may start. */
export function modelOf(part: AnalysedPart, sweep: readonly ImpedanceReading[], reference: number): PartModel {
  switch (part) {
    case 'coil':
      return coilModel(sweep, reference);
    case 'capacitor':
      return seriesModel(sweep, reference, LEAD_INDUCTANCE);
    case 'aerial':
      return seriesModel(sweep, reference, AERIAL_INDUCTANCE);
    case 'crystal earpiece':
      return earpieceModel(sweep);
  }
}
