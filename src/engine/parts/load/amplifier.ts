import { supplyCautions } from '../../facts/cautions.ts';
import { demandWithin, ImpossibleValues } from '../../facts/impossible-values.ts';
import { type Warning, warning } from '../../facts/warning.ts';
import { owned } from '../../network/ids.ts';
import { PART } from '../../network/part-ids.ts';
import { add, complex, divide, reciprocal } from '../../numerics/complex.ts';
import { type Decibels, decibels, type Farads, type Hertz, type Ohms } from '../../units/quantities.ts';
import { type Load, loadOf } from './model.ts';
import { flatBetween, measuredResponse, type ResponsePoints } from './response.ts';

/** The input of an amplifier, with what it drives. */
export interface Amplifier {
  readonly kind: 'amplifier';
  readonly inputResistance: Ohms;
  /** With its lead; default 100 pF. */
  readonly inputCapacitance?: Farads;
  /** In series with the input; none if left out. */
  readonly couplingCapacitor?: Farads;
  /** Across the detector's output, ahead of the coupling capacitor. */
  readonly loadResistor?: Ohms;
  /** dB SPL at 1 kHz for 10 mV rms at the input, with the volume as set; this, or `gain` and `speaker`. */
  readonly soundAtFullInput?: Decibels;
  /** Voltage gain in dB, with what it drives. */
  readonly gain?: Decibels;
  readonly speaker?: {
    /** dB SPL at 1 m for `volts` across it. */
    readonly level: Decibels;
    /** Default 2.83 V, one watt in 8 Ω. */
    readonly volts?: number;
    /** Metres from the listener; default 1. */
    readonly distance?: number;
  };
  /** Loudest it can play before it clips; default 100 dB SPL. */
  readonly loudest?: Decibels;
  /** Into phones instead of a loudspeaker. */
  readonly listening?: 'phones' | 'loudspeaker';
  readonly supply?: 'battery' | 'mains';
  readonly response?: ResponsePoints;
}

const RATED_INPUT = 0.01;

/** @throws RangeError for values that no amplifier has. */
export function amplifier(spec: Amplifier): Load {
  const { inputResistance: R, inputCapacitance: C = 1e-10, couplingCapacitor, loadResistor, supply = 'battery' } = spec;
  const { loudest = 100, listening = 'loudspeaker' } = spec;
  for (const value of [R, couplingCapacitor, loadResistor])
    if (value !== undefined && !(value > 0)) throw new ImpossibleValues({ code: 'load.sizes' });
  demandWithin('load.input-capacitance', C, { min: 0 });
  const warnings: Warning[] = [];
  const level = spec.soundAtFullInput ?? fromSpeaker(spec);
  const response = spec.response ? measuredResponse(spec.response) : flatBetween(100, 10000);
  if (couplingCapacitor !== undefined && loadResistor === undefined)
    warnings.push(warning('load.coupling-capacitor-blocks-direct-current'));
  if (supply === 'mains') warnings.push(warning('load.mains-hum'));
  const input = (f: Hertz) => reciprocal(complex(1 / R, 2 * Math.PI * f * C));
  const series = (f: Hertz) =>
    couplingCapacitor === undefined ? complex(0) : complex(0, -1 / (2 * Math.PI * f * couplingCapacitor));
  const direct = (loadResistor === undefined ? 0 : 1 / loadResistor) + (couplingCapacitor === undefined ? 1 / R : 0);
  return loadOf({
    sort: { kind: 'amplifier' },
    elements: (from, to) => {
      const transducer = (detail: string) => owned(PART.load, 'transducer', { detail });
      const inner = couplingCapacitor === undefined ? from : 'load in';
      return {
        elements: [
          ...(loadResistor === undefined
            ? []
            : ([
                { kind: 'resistor', ...owned(PART.loadResistor, 'part'), from, to, resistance: loadResistor },
              ] as const)),
          ...(couplingCapacitor === undefined
            ? []
            : ([
                {
                  kind: 'capacitor',
                  ...owned(PART.couplingCapacitor, 'part'),
                  from,
                  to: inner,
                  capacitance: couplingCapacitor,
                },
              ] as const)),
          { kind: 'resistor', ...transducer('input resistance'), from: inner, to, resistance: R },
          ...(C > 0
            ? ([{ kind: 'capacitor', ...transducer('input capacitance'), from: inner, to, capacitance: C }] as const)
            : []),
        ],
        output: { from: inner, to },
      };
    },
    directResistance: direct > 0 ? 1 / direct : Number.POSITIVE_INFINITY,
    impedanceAt: (f) => {
      const z = add(series(f), input(f));
      return loadResistor === undefined ? z : reciprocal(add(complex(1 / loadResistor), reciprocal(z)));
    },
    transferAt: (f) => divide(input(f), add(series(f), input(f))),
    transducerImpedanceAt: input,
    soundPressureAt: (f, V) => Math.min(loudest, level + decibels(V / RATED_INPUT) + response(f)),
    sensitivity: { level, per: '10 mV', assumed: spec.soundAtFullInput === undefined && spec.gain === undefined },
    spread: 3,
    listening,
    ears: 2,
    warnings,
    cautions: supplyCautions(supply),
  });
}

/** Level for the rated input from gain, the speaker's rating and the distance (free field, 6 dB a doubling). */
function fromSpeaker({ gain = 40, speaker }: Amplifier): Decibels {
  const { level = 86, volts = 2.83, distance = 1 } = speaker ?? {};
  if (!(volts > 0) || !(distance > 0)) throw new ImpossibleValues({ code: 'load.sizes' });
  return level + gain + decibels(RATED_INPUT / volts) - decibels(distance);
}
