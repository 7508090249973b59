import { demandWithin, ImpossibleValues } from '../../facts/impossible-values.ts';
import { type Warning, warning } from '../../facts/warning.ts';
import { owned } from '../../network/ids.ts';
import { PART } from '../../network/part-ids.ts';
import { add, type Complex, complex, divide, magnitude, multiply, reciprocal } from '../../numerics/complex.ts';
import { root } from '../../numerics/roots.ts';
import { type Decibels, decibels, type Farads, type Henries, type Hertz, type Ohms } from '../../units/quantities.ts';
import { type Load, type LoadSort, loadOf, meanImpedance } from './model.ts';
import {
  type Diaphragm,
  diaphragmResponse,
  measuredResponse,
  REFERENCE_FREQUENCY,
  type ResponsePoints,
} from './response.ts';

/** High-resistance phones: a winding on a magnet behind an iron diaphragm, or a balanced armature. */
export interface MagneticPhones {
  readonly kind: 'phones';
  /** Default magnetic. */
  readonly make?: 'magnetic' | 'balanced armature';
  /** Direct-current resistance of what is connected, both earpieces together. */
  readonly resistance: Ohms;
  /** Of the winding at low frequency; left out: from `impedance`, else usual for the resistance. */
  readonly inductance?: Henries;
  /** |Z| as measured at 1 kHz; used when the inductance is not given. */
  readonly impedance?: Ohms;
  /** ωL at 1 kHz over the resistance of the eddy currents in the iron, which lie across it; default 0.5. */
  readonly eddyFactor?: number;
  /** Of winding and cord; default 200 pF. */
  readonly capacitance?: Farads;
  /** dB SPL at 1 kHz for one milliwatt taken by the phones; left out: usual for its make. */
  readonly sensitivity?: Decibels;
  /** Main resonance of the diaphragm; default 1 kHz. */
  readonly resonance?: Hertz;
  readonly response?: ResponsePoints;
  readonly ears?: 1 | 2;
}

interface Make {
  readonly sort: LoadSort['kind'];
  readonly sensitivity: Decibels;
  readonly spread: Decibels;
  /** Mean |Z| from 300 to 3300 Hz over the direct resistance. */
  readonly rise: number;
  readonly diaphragm: Diaphragm;
}

/**
 * Rise of impedance: published rule of thumb for magnetic phones (reference/loads.json); for balanced armatures the
 * published 600 Ω of an element of some 65 Ω (the latter from memory). Sensitivities: middle of the ranges in
 * reference/loads.json, which are from memory and only an order of magnitude. Resonances likewise.
 */
const MAKES: Record<'magnetic' | 'balanced armature', Make> = {
  magnetic: {
    sort: 'magnetic phones',
    sensitivity: 102,
    spread: 8,
    rise: 6,
    diaphragm: { resonance: 1000, q: 3, second: [2.2, 0.3], leak: 300 },
  },
  'balanced armature': {
    sort: 'balanced-armature phones',
    sensitivity: 115,
    spread: 5,
    rise: 9,
    diaphragm: { resonance: 1100, q: 1.5, second: [2.5, 0.5], leak: 300 },
  },
};
const CORD: Farads = 2e-10;

/** Z = R + jωL ∥ R_eddy: resistance that rises and inductance that falls with frequency. */
const winding =
  (R: Ohms, L: Henries, eddy: Ohms) =>
  (f: Hertz): Complex => {
    const x = complex(0, 2 * Math.PI * f * L);
    return add(complex(R), divide(x, add(complex(1), complex(0, x.im / eddy))));
  };

/** Eddy resistance for a given factor: R_eddy = ωL/e at 1 kHz; no eddies for e = 0. */
const eddyOf = (L: Henries, e: number): Ohms => (e > 0 ? (2 * Math.PI * REFERENCE_FREQUENCY * L) / e : 1e15);

const MOST_INDUCTANCE: Henries = 1000;

/** The inductance that gives a wanted figure that rises with it. */
function inductanceFor(figure: (L: Henries) => Ohms, target: Ohms): Henries {
  if (!(figure(MOST_INDUCTANCE) > target)) return MOST_INDUCTANCE;
  return root((L) => figure(L) - target, 1e-12, MOST_INDUCTANCE);
}

/** @throws RangeError for values that no phones have. */
export function magneticPhones(spec: MagneticPhones): Load {
  const { resistance: R, eddyFactor: e = 0.5, capacitance: C = CORD, ears = 2 } = spec;
  const make = MAKES[spec.make ?? 'magnetic'];
  if (!(R > 0) || !(e >= 0) || !(C >= 0)) throw new ImpossibleValues({ code: 'load.sizes' });
  if (spec.impedance !== undefined && !(spec.impedance > R))
    throw new ImpossibleValues({ code: 'load.impedance-below-resistance', impedance: spec.impedance, resistance: R });
  if (spec.inductance !== undefined) demandWithin('load.inductance', spec.inductance, { above: 0 });
  const at = (L: Henries) => winding(R, L, eddyOf(L, e));
  const L =
    spec.inductance ??
    (spec.impedance !== undefined
      ? inductanceFor((l) => magnitude(at(l)(REFERENCE_FREQUENCY)), spec.impedance)
      : R * inductanceFor((l) => meanImpedance(winding(1, l, eddyOf(l, e))), make.rise));
  const eddy = eddyOf(L, e);
  const Z = winding(R, L, eddy);
  const level = spec.sensitivity ?? make.sensitivity;
  const response = spec.response
    ? measuredResponse(spec.response)
    : diaphragmResponse({ ...make.diaphragm, resonance: spec.resonance ?? make.diaphragm.resonance });
  // Force follows the current. One milliwatt taken at 1 kHz is this current in the winding.
  const rated = Math.sqrt(1e-3 / Z(REFERENCE_FREQUENCY).re);
  const warnings: Warning[] = [];
  if (spec.sensitivity === undefined)
    warnings.push(warning('load.phones-sensitivity-typical', { level, spread: make.spread }));
  if (R < 200 && spec.make !== 'balanced armature')
    warnings.push(warning('load.phones-low-resistance', { resistance: R }));
  return loadOf({
    sort: { kind: make.sort },
    elements: (from, to) => {
      const transducer = (detail: string) => owned(PART.load, 'transducer', { detail });
      const inner = 'load winding';
      return {
        elements: [
          { kind: 'resistor', ...transducer('resistance'), from, to: inner, resistance: R },
          { kind: 'inductor', ...transducer('inductance'), from: inner, to, inductance: L, resistance: 0 },
          ...(e > 0 ? ([{ kind: 'resistor', ...transducer('iron'), from: inner, to, resistance: eddy }] as const) : []),
          ...(C > 0 ? ([{ kind: 'capacitor', ...owned(PART.load, 'cord'), from, to, capacitance: C }] as const) : []),
        ],
        output: { from, to },
      };
    },
    directResistance: R,
    impedanceAt: (f) => {
      const z = Z(f);
      return divide(z, add(complex(1), multiply(z, complex(0, 2 * Math.PI * f * C))));
    },
    soundPressureAt: (f, V) => level + decibels((V * magnitude(reciprocal(Z(f)))) / rated) + response(f),
    sensitivity: { level, per: 'mW', assumed: spec.sensitivity === undefined },
    spread: spec.sensitivity === undefined ? make.spread : 2,
    listening: 'phones',
    ears,
    warnings,
    cautions: [],
  });
}
