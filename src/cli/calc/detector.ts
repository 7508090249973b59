import * as v from 'valibot';
import {
  averaged,
  DETECTOR_IDS,
  type Detector,
  detectorByKind,
  detectorRanges,
  exponentialDetector,
  givenValue,
  ImpossibleValues,
  quantity,
  refuseWith,
  steadyDetector,
  tunedDetector,
} from '../../engine/index.ts';
import type { CalcExpectation } from '../../outputs/words/index.ts';
import { calculation } from './calculation.ts';
import { expected, numberIn, oneOf } from './expect.ts';
import { refusalFor } from './shape.ts';

export const detectorSchema = v.object(
  {
    kind: v.optional(oneOf(DETECTOR_IDS)),
    saturationCurrent: v.optional(quantity('current', { above: 1e-30, max: 0.5 })),
    ideality: v.optional(numberIn(0.1, 50)),
    seriesResistance: v.optional(quantity('resistance', { min: 0, max: 1e9 })),
    leakage: v.optional(quantity('conductance', { min: 0, max: 1 })),
    junctionCapacitance: v.optional(quantity('capacitance', { min: 0, max: 1e-9 })),
    heaterVoltage: v.optional(quantity('voltage', { min: 0, max: 18 })),
  },
  expected('detector'),
);

/** The device of a `calc` input. @throws RangeError when it names neither a kind nor a saturation current and ideality. */
export function detectorFrom(input: v.InferOutput<typeof detectorSchema>, temperature: number): Detector {
  const { kind, saturationCurrent, ideality } = input;
  if (kind !== undefined) return detectorByKind(kind, { ...input, temperature });
  if (saturationCurrent === undefined || ideality === undefined) {
    throw new ImpossibleValues({ code: 'detector.neither-kind-nor-law' });
  }
  return exponentialDetector({ ...input, saturationCurrent, ideality, temperature });
}

const fields = v.object({
  detector: detectorSchema,
  load: v.object(
    {
      resistance: quantity('resistance', { above: 0, max: 1e13 }),
      capacitance: v.optional(quantity('capacitance', { min: 0, max: 1e-3 })),
    },
    expected('detector-load'),
  ),
  carrier: v.optional(quantity('voltage', { above: 0, max: 1000 })),
  tunedCircuit: v.optional(
    v.object(
      {
        inductance: quantity('inductance', { above: 0, max: 1e3 }),
        q: numberIn(0.1, 1e5),
        frequency: quantity('frequency', { min: 1e3, max: 1e9 }),
      },
      expected('detector-circuit'),
    ),
  ),
  tap: v.optional(v.pipe(numberIn(0, 1), v.gtValue(0, expected('tap')))),
  availablePower: v.optional(quantity('power', { above: 0, max: 100 })),
  temperature: v.optional(quantity('temperature', { min: 100, max: 600 })),
  bias: v.optional(quantity('voltage', { min: -100, max: 100 })),
});

/** What is missing or too much, by where. */
function incomplete({ carrier, tunedCircuit, availablePower, load }: v.InferOutput<typeof fields>) {
  if ((carrier === undefined) === (tunedCircuit === undefined)) {
    return { at: 'carrier', code: 'carrier-or-circuit' } as const;
  }
  if (tunedCircuit === undefined) return undefined;
  if (availablePower === undefined) return { at: 'availablePower', code: 'power-with-circuit' } as const;
  if (load.capacitance === undefined) return { at: 'load', code: 'capacitance-with-circuit' } as const;
  return undefined;
}

// The circuit is tried only when nothing is missing.
const whole = v.rawCheck<v.InferOutput<typeof fields>>(({ dataset, addIssue }) => {
  if (!dataset.typed) return;
  const input = dataset.value;
  const problem = incomplete(input);
  if (problem) {
    const { at: key, code } = problem;
    const given = givenValue(key === 'load' ? undefined : input[key]);
    addIssue({
      message: refuseWith({ expected: { code: code satisfies CalcExpectation }, given }),
      path: [{ type: 'object', origin: 'value', input: { ...input }, key, value: input[key] }],
    });
    return;
  }
  try {
    solve(input);
  } catch (refusal) {
    addIssue({ message: refuseWith(refusalFor('sizes-together', refusal)) });
  }
});
type Input = v.InferOutput<typeof fields>;

function solve(input: Input, device?: Detector) {
  const { load, tap = 1, temperature = 300, bias, carrier, tunedCircuit, availablePower } = input;
  const detector = device ?? detectorFrom(input.detector, temperature);
  if (tunedCircuit !== undefined) {
    return {
      detector,
      ...tunedDetector({
        detector,
        tunedCircuit,
        tap,
        availablePower: availablePower!,
        load: { resistance: load.resistance, capacitance: load.capacitance! },
        bias,
      }),
    };
  }
  const steady = steadyDetector({
    averaged: averaged(detector),
    openCircuit: carrier!,
    sourceImpedance: { re: 0, im: 0 },
    dcResistance: load.resistance,
    bias,
  });
  return { detector, ...steady, efficiency: steady.outputPower / steady.inputPower };
}

type Solved = ReturnType<typeof solve>;
const FIGURES = ['directVoltage', 'inputResistance', 'inputPower', 'outputPower', 'efficiency'] as const;
const TUNED_FIGURES = ['tunedCircuitVoltage', 'insertionLoss', 'loadedQ', 'carrierDistortion'] as const;
type Figure = (typeof FIGURES)[number] | (typeof TUNED_FIGURES)[number];
const UNITS: Readonly<Record<Figure | 'saturationCurrent' | 'ideality' | 'seriesResistance', string>> = {
  saturationCurrent: 'A',
  ideality: '',
  seriesResistance: 'Ω',
  directVoltage: 'V',
  inputResistance: 'Ω',
  inputPower: 'W',
  outputPower: 'W',
  efficiency: '',
  tunedCircuitVoltage: 'V',
  insertionLoss: 'dB',
  loadedQ: '',
  carrierDistortion: '',
};

const figuresOf = (solved: Solved): Readonly<Record<Figure, number>> => {
  const names = 'tunedCircuitVoltage' in solved ? [...FIGURES, ...TUNED_FIGURES] : FIGURES;
  return Object.fromEntries(names.map((name) => [name, (solved as unknown as Record<Figure, number>)[name]])) as Record<
    Figure,
    number
  >;
};

/** `calc detector`: a steady carrier into a detector, straight or on the tap of a tuned circuit. */
export const detectorCalculation = calculation({
  name: 'detector',
  example: {
    detector: { saturationCurrent: '0.5 µA', ideality: 1.1 },
    tunedCircuit: { inductance: '220 µH', q: 150, frequency: '1 MHz' },
    tap: 0.5,
    availablePower: '10 nW',
    load: { resistance: '47 kΩ', capacitance: '470 pF' },
  },
  schema: v.pipe(fields, whole),
  answer(input) {
    const r = solve(input);
    const { kind: id, ...given } = input.detector;
    const ranged = detectorRanges({ id, given, model: r.detector }, (device) =>
      figuresOf(device === r.detector ? r : solve(input, device)),
    );
    const figures = Object.entries(ranged).map(([name, { value, range }]) => [
      name,
      { value, unit: UNITS[name as keyof typeof UNITS], range },
    ]);
    return {
      ...Object.fromEntries(figures),
      warnings: [...r.detector.warnings, ...r.warnings],
    };
  },
});
