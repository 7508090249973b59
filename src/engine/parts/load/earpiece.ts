import { ImpossibleValues } from '../../facts/impossible-values.ts';
import { type Warning, warning } from '../../facts/warning.ts';
import { owned } from '../../network/ids.ts';
import { PART } from '../../network/part-ids.ts';
import { add, complex, reciprocal } from '../../numerics/complex.ts';
import { type Decibels, decibels, type Farads, type Ohms } from '../../units/quantities.ts';
import { type Load, loadOf } from './model.ts';
import { flatBetween, measuredResponse, type ResponsePoints } from './response.ts';

/** A crystal (Rochelle salt) or ceramic earpiece: a capacitor that bends. */
export interface CrystalEarpiece {
  readonly kind: 'crystal earpiece';
  /** Sources differ thirtyfold: 0.5 nF for Rochelle salt, 15 nF for ceramic. Measure it. */
  readonly capacitance: Farads;
  /** Across it, for the detector's direct current; none if left out. */
  readonly resistor?: Ohms;
  /** dB SPL at 1 kHz for 1 V rms; left out: usual. */
  readonly sensitivity?: Decibels;
  /** Default 0.02 (from memory). */
  readonly lossTangent?: number;
  readonly response?: ResponsePoints;
  readonly ears?: 1 | 2;
}

/** Published for Rochelle salt (reference/loads.json). */
const LEAK: Ohms = 2e7;
/** From memory, an order of magnitude only. */
const USUAL: Decibels = 98;
const USUAL_SPREAD: Decibels = 10;

/** @throws RangeError for values that no earpiece has. */
export function crystalEarpiece(spec: CrystalEarpiece): Load {
  const { capacitance: C, resistor, lossTangent = 0.02, ears = 1 } = spec;
  if (!(C > 0) || !(lossTangent >= 0) || (resistor !== undefined && !(resistor > 0)))
    throw new ImpossibleValues({ code: 'load.sizes' });
  const level = spec.sensitivity ?? USUAL;
  const response = spec.response ? measuredResponse(spec.response) : flatBetween(200, 8000);
  const conductance = 1 / LEAK + (resistor === undefined ? 0 : 1 / resistor);
  const warnings: Warning[] = [];
  if (resistor === undefined) warnings.push(warning('load.earpiece-without-resistor'));
  else if (resistor < 1e4) warnings.push(warning('load.earpiece-resistor-small'));
  else if (resistor > 1e6) warnings.push(warning('load.earpiece-resistor-large'));
  if (spec.sensitivity === undefined)
    warnings.push(warning('load.earpiece-sensitivity-typical', { level: USUAL, spread: USUAL_SPREAD }));
  return loadOf({
    sort: { kind: 'crystal earpiece' },
    elements: (from, to) => ({
      elements: [
        {
          kind: 'capacitor',
          ...owned(PART.load, 'transducer', { detail: 'crystal' }),
          from,
          to,
          capacitance: C,
          lossTangent,
        },
        { kind: 'resistor', ...owned(PART.load, 'transducer', { detail: 'leakage' }), from, to, resistance: LEAK },
        ...(resistor === undefined
          ? []
          : ([{ kind: 'resistor', ...owned(PART.loadResistor, 'part'), from, to, resistance: resistor }] as const)),
      ],
      output: { from, to },
    }),
    directResistance: 1 / conductance,
    impedanceAt: (f) => {
      const B = 2 * Math.PI * f * C;
      return reciprocal(add(complex(conductance), complex(B * lossTangent, B)));
    },
    soundPressureAt: (f, V) => level + decibels(V) + response(f),
    sensitivity: { level, per: 'V', assumed: spec.sensitivity === undefined },
    spread: spec.sensitivity === undefined ? USUAL_SPREAD : 2,
    listening: 'phones',
    ears,
    warnings,
    cautions: [],
  });
}
