import * as v from 'valibot';
import {
  type Circuit,
  coilPart,
  type Detector,
  detectByEnvelope,
  detectByTransient,
  type Element,
  ImpossibleValues,
  LONGEST_SIGNAL,
  MOST_CYCLES,
  owned,
  PART,
  quantity,
  refuse,
  type StationWave,
} from '../../engine/index.ts';
import { calculation, figure, figureIn } from './calculation.ts';
import { detectorFrom, detectorSchema } from './detector.ts';
import { expected, oneOf } from './expect.ts';
import { buildable } from './shape.ts';

const frequency = quantity('frequency', { min: 10e3, max: 30e6 });
const audio = quantity('frequency', { above: 0, max: 100e3 });
const fields = v.object({
  stations: v.pipe(
    v.array(
      v.object(
        {
          frequency,
          emf: quantity('voltage', { min: 0, max: 1000 }),
          phase: v.optional(quantity('angle', { min: -360, max: 360 })),
          modulation: v.optional(
            v.array(v.object({ frequency: audio, depth: quantity('ratio', { min: 0, max: 2 }) })),
            [],
          ),
        },
        expected('wave-station'),
      ),
      expected('wave-stations'),
    ),
    v.minLength(1, refuse({ code: 'list.at-least', of: 'stations', count: 1 })),
    v.maxLength(40, refuse({ code: 'list.at-most', of: 'stations', count: 40 })),
  ),
  aerial: v.object(
    {
      resistance: quantity('resistance', { min: 0, max: 1e6 }),
      capacitance: quantity('capacitance', { above: 0, max: 1e-6 }),
    },
    expected('wave-aerial'),
  ),
  couplingCapacitor: v.optional(quantity('capacitance', { above: 0, max: 1e-3 })),
  tunedCircuit: v.object(
    {
      inductance: quantity('inductance', { above: 0, max: 1 }),
      capacitance: quantity('capacitance', { min: 0, max: 1e-6 }),
      parallelResistance: v.optional(quantity('resistance', { above: 0, max: 1e9 })),
    },
    expected('wave-circuit'),
  ),
  detector: detectorSchema,
  load: v.object(
    {
      resistance: quantity('resistance', { above: 0, max: 1e9 }),
      capacitance: v.optional(quantity('capacitance', { min: 0, max: 1e-3 })),
    },
    expected('wave-load'),
  ),
  settle: v.optional(quantity('time', { min: 0, max: 100 }), 5e-3),
  duration: v.optional(quantity('time', { above: 0, max: 100 }), 60e-3),
  tones: v.optional(v.pipe(v.array(audio), v.maxLength(100, refuse({ code: 'items.at-most', count: 100 })))),
  temperature: v.optional(quantity('temperature', { min: 100, max: 600 }), 300),
  method: v.optional(oneOf(['transient', 'envelope']), 'transient'),
});
type Input = v.InferOutput<typeof fields>;

/** Emf, aerial, coupling capacitor, parallel tuned circuit, detector from its top, load: all else at earth. */
function circuitOf(input: Input, detector: Detector): Circuit {
  const { aerial, couplingCapacitor, tunedCircuit, load } = input;
  const join = couplingCapacitor === undefined ? 'top' : 'aerial';
  const aerialPart = (detail: string) => owned(PART.aerial, 'aerial', { detail });
  const elements: Element[] = [
    { kind: 'source', ...owned(PART.aerial, 'emf'), from: 'earth', to: 'sky', emf: { re: 1, im: 0 } },
    { kind: 'resistor', ...aerialPart('resistance'), from: 'sky', to: 'wire', resistance: aerial.resistance },
    { kind: 'capacitor', ...aerialPart('capacitance'), from: 'wire', to: join, capacitance: aerial.capacitance },
    {
      kind: 'inductor',
      ...owned(coilPart(0), 'winding'),
      from: 'top',
      to: 'earth',
      inductance: tunedCircuit.inductance,
      resistance: 0,
    },
    {
      kind: 'capacitor',
      ...owned(PART.tuning, 'part'),
      from: 'top',
      to: 'earth',
      capacitance: tunedCircuit.capacitance,
    },
    { kind: 'detector', ...owned(PART.detector, 'device'), from: 'top', to: 'out' },
    {
      kind: 'capacitor',
      ...owned(PART.detector, 'junction-capacitance'),
      from: 'top',
      to: 'out',
      capacitance: detector.junctionCapacitance,
    },
    { kind: 'resistor', ...owned(PART.load, 'transducer'), from: 'out', to: 'earth', resistance: load.resistance },
    {
      kind: 'capacitor',
      ...owned(PART.byPass, 'by-pass'),
      from: 'out',
      to: 'earth',
      capacitance: load.capacitance ?? 0,
    },
  ];
  if (couplingCapacitor !== undefined)
    elements.push({
      kind: 'capacitor',
      ...owned(PART.seriesCapacitor, 'part'),
      from: join,
      to: 'top',
      capacitance: couplingCapacitor,
    });
  if (tunedCircuit.parallelResistance !== undefined) {
    const loss = owned(coilPart(0), 'part', { detail: 'loss' });
    elements.push({
      kind: 'resistor',
      ...loss,
      from: 'top',
      to: 'earth',
      resistance: tunedCircuit.parallelResistance,
    });
  }
  return { elements };
}

function work(input: Input) {
  const detector = detectorFrom(input.detector, input.temperature);
  const stations = input.stations.map(
    (s): StationWave => ({ ...s, phase: ((s.phase ?? 0) * Math.PI) / 180, modulation: s.modulation }),
  );
  const listed = [...new Set(stations.flatMap((s) => (s.modulation ?? []).map((m) => m.frequency)))];
  const options = {
    devices: [detector],
    stations,
    output: { node: 'out' },
    input: { node: 'top' },
    settle: input.settle,
    duration: input.duration,
    tones: input.tones ?? listed,
  };
  return { detector, circuit: circuitOf(input, detector), options };
}

const runnable = buildable(fields, (input) => {
  if (input.stations.length === 0) return; // said already
  const { options } = work(input);
  const carrier = input.stations[0].frequency;
  const time = input.settle + input.duration;
  for (const f of options.tones) {
    if (!(f < carrier / 4)) throw new ImpossibleValues({ code: 'signal.tone-too-high', frequency: f });
  }
  if (!(input.duration * carrier >= 2)) throw new ImpossibleValues({ code: 'signal.too-short' });
  if (input.method === 'envelope') {
    if (!(time <= LONGEST_SIGNAL))
      throw new ImpossibleValues({ code: 'signal.too-long', longest: LONGEST_SIGNAL, time });
  } else if (!(time * carrier <= MOST_CYCLES)) {
    throw new ImpossibleValues({
      code: 'signal.too-many-cycles',
      most: MOST_CYCLES,
      cycles: Math.round(time * carrier),
    });
  }
});

/** `calc detection`: what the detector of a whole receiver makes of one or more modulated stations, in time. */
export const detectionCalculation = calculation({
  name: 'detection',
  example: {
    stations: [{ frequency: '1 MHz', emf: '10 mV', modulation: [{ frequency: '1 kHz', depth: 0.3 }] }],
    aerial: { resistance: '25 Ω', capacitance: '200 pF' },
    couplingCapacitor: '47 pF',
    tunedCircuit: { inductance: '220 µH', capacitance: '77.08 pF', parallelResistance: '207 kΩ' },
    detector: { saturationCurrent: '0.5 µA', ideality: 1.1 },
    load: { resistance: '47 kΩ', capacitance: '470 pF' },
    settle: '2 ms',
    duration: '10 ms',
    tones: ['1 kHz'],
    method: 'transient',
  },
  schema: runnable,
  answer(input) {
    const { detector, circuit, options } = work(input);
    const began = performance.now();
    const r = input.method === 'envelope' ? detectByEnvelope(circuit, options) : detectByTransient(circuit, options);
    return {
      directVoltage: figure(r.directVoltage, 'voltage'),
      tones: r.tones.map((t) => ({
        frequency: figure(t.frequency, 'frequency'),
        amplitude: figure(t.amplitude, 'voltage'),
        phase: figureIn(t.phase, 'rad'),
      })),
      secondHarmonic: figure(r.secondHarmonic, 'ratio'),
      thirdHarmonic: figure(r.thirdHarmonic, 'ratio'),
      inputResistance: figure(r.inputResistance, 'resistance'),
      elapsed: figure((performance.now() - began) / 1000, 'time'),
      warnings: [...detector.warnings, ...r.warnings],
    };
  },
});
