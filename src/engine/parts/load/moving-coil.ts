import { demandWithin } from '../../facts/impossible-values.ts';
import { type Warning, warning } from '../../facts/warning.ts';
import { owned } from '../../network/ids.ts';
import { PART } from '../../network/part-ids.ts';
import { complex } from '../../numerics/complex.ts';
import { type Decibels, decibels, type Ohms } from '../../units/quantities.ts';
import { type Load, loadOf } from './model.ts';
import { flatBetween, measuredResponse, type ResponsePoints } from './response.ts';

/** Modern moving-coil phones; they want a transformer. */
export interface MovingCoilPhones {
  readonly kind: 'moving-coil phones';
  /** As marked; close to a plain resistance over the speech band. What is connected, both together. */
  readonly impedance: Ohms;
  /** dB SPL at 1 kHz for one milliwatt, V²/impedance; left out: usual. */
  readonly sensitivity?: Decibels;
  readonly response?: ResponsePoints;
  readonly ears?: 1 | 2;
}

/** From memory of data sheets: most lie between 92 and 106 dB SPL for 1 mW. */
const USUAL: Decibels = 99;
const USUAL_SPREAD: Decibels = 7;

/** @throws RangeError unless the impedance is above 0. */
export function movingCoilPhones(spec: MovingCoilPhones): Load {
  const { impedance: R, ears = 2 } = spec;
  demandWithin('load.impedance', R, { above: 0 });
  const level = spec.sensitivity ?? USUAL;
  const response = spec.response ? measuredResponse(spec.response) : flatBetween(40, 14000);
  const warnings: Warning[] = [];
  if (spec.sensitivity === undefined)
    warnings.push(warning('load.phones-sensitivity-typical', { level: USUAL, spread: USUAL_SPREAD }));
  return loadOf({
    sort: { kind: 'moving-coil phones' },
    elements: (from, to) => ({
      elements: [{ kind: 'resistor', ...owned(PART.load, 'transducer'), from, to, resistance: R }],
      output: { from, to },
    }),
    directResistance: R,
    impedanceAt: () => complex(R),
    soundPressureAt: (f, V) => level + decibels(V / Math.sqrt(1e-3 * R)) + response(f),
    sensitivity: { level, per: 'mW', assumed: spec.sensitivity === undefined },
    spread: spec.sensitivity === undefined ? USUAL_SPREAD : 2,
    listening: 'phones',
    ears,
    warnings,
    cautions: [],
  });
}
