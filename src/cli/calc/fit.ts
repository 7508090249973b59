import * as v from 'valibot';
import {
  type Fitted,
  fitDecay,
  fitDetector,
  fitDial,
  fitResonance,
  fitWidth,
  type QuantityKind,
  quantity,
  refuse,
  refuseWith,
  UnfitReadings,
} from '../../engine/index.ts';
import type { CalcExpectation } from '../../outputs/words/index.ts';
import { calculation, figure, figureIn } from './calculation.ts';
import { expected } from './expect.ts';

const MOST_POINTS = 10_000;
const MOST_SAMPLES = 200_000;

/** A list of readings: at least one more than there are unknowns, or nothing can be said of errors. */
const listOf = <S extends v.GenericSchema>(item: S, least: number, code: CalcExpectation, most = MOST_POINTS) =>
  v.pipe(
    v.array(item, expected(code)),
    v.minLength(least, refuse({ code: 'items.at-least', count: least })),
    v.maxLength(most, refuse({ code: 'items.at-most', count: most })),
  );

const frequency = quantity('frequency', { above: 0, max: 1e12 });

const resonance = v.object({
  kind: v.literal('resonance'),
  points: listOf(
    v.object({ capacitance: quantity('capacitance', { min: 0, max: 1 }), frequency }, expected('resonance-point')),
    3,
    'resonance-points',
  ),
});

const POSITION = expected('position');
const dial = v.object({
  kind: v.literal('dial'),
  capacitor: v.pipe(
    v.object(
      {
        law: v.literal('semicircular', expected('dial-law')),
        minimum: quantity('capacitance', { min: 0, max: 1 }),
        maximum: quantity('capacitance', { above: 0, max: 1 }),
      },
      expected('dial-capacitor'),
    ),
    v.check((c) => c.maximum > c.minimum, expected('maximum-above-minimum')),
  ),
  readings: listOf(
    v.object(
      { position: v.pipe(v.number(POSITION), v.minValue(-1, POSITION), v.maxValue(2, POSITION)), frequency },
      expected('dial-reading'),
    ),
    3,
    'dial-readings',
  ),
});

const detector = v.object({
  kind: v.literal('detector'),
  temperature: quantity('temperature', { min: 100, max: 600 }),
  points: listOf(
    v.object(
      {
        voltage: quantity('voltage', { above: 0, max: 1000 }),
        current: quantity('current', { above: 0, max: 1000 }),
      },
      expected('detector-point'),
    ),
    4,
    'detector-points',
  ),
});

const width = v.object({
  kind: v.literal('width'),
  points: listOf(
    v.object({ frequency, level: quantity('voltage', { above: 0, max: 1e12 }) }, expected('width-point')),
    4,
    'width-points',
  ),
});

const decay = v.object({
  kind: v.literal('decay'),
  sampleRate: frequency,
  samples: listOf(v.pipe(v.number(expected('sample')), v.finite(expected('sample'))), 16, 'samples', MOST_SAMPLES),
});

const shown = (fitted: Fitted, kind: QuantityKind | undefined) => ({
  ...(kind ? figure(fitted.value, kind) : figureIn(fitted.value, '')),
  standardError: fitted.standardError,
  range: fitted.range,
});

/** Where the readings of a kind stand. */
const READINGS = { resonance: 'points', dial: 'readings', detector: 'points', width: 'points', decay: 'samples' };

type Input = v.InferOutput<typeof kinds>;
const kinds = v.variant(
  'kind',
  [resonance, dial, detector, width, decay],
  refuse({ code: 'kind', key: 'kind', options: Object.keys(READINGS) }),
);

/** The answer of a fit. @throws UnfitReadings */
function fitOf(input: Input) {
  switch (input.kind) {
    case 'resonance': {
      const { inductance, selfCapacitance, scatter } = fitResonance(input.points);
      return {
        inductance: shown(inductance, 'inductance'),
        selfCapacitance: shown(selfCapacitance, 'capacitance'),
        scatter: figureIn(scatter, ''),
        warnings: [],
      };
    }
    case 'dial': {
      const { inductance, strayCapacitance, suspects, scatter, warnings } = fitDial(input.readings, input.capacitor);
      return {
        inductance: shown(inductance, 'inductance'),
        strayCapacitance: shown(strayCapacitance, 'capacitance'),
        suspects: suspects.map((s) => s.index),
        suspectFrequencies: suspects.map((s) => shown(s.frequencyThere, 'frequency')),
        scatter: figureIn(scatter, ''),
        warnings,
      };
    }
    case 'detector': {
      const found = fitDetector(input.points, input.temperature);
      return {
        saturationCurrent: shown(found.saturationCurrent, 'current'),
        ideality: shown(found.ideality, undefined),
        seriesResistance: shown(found.seriesResistance, 'resistance'),
        zeroBiasResistance: shown(found.zeroBiasResistance, 'resistance'),
        scatter: figureIn(found.scatter, ''),
        warnings: found.warnings,
      };
    }
    case 'width': {
      const { resonance: f0, q, scatter } = fitWidth(input.points);
      return {
        resonance: shown(f0, 'frequency'),
        q: shown(q, undefined),
        scatter: figureIn(scatter, ''),
        warnings: [],
      };
    }
    case 'decay': {
      const { frequency: f0, q, scatter } = fitDecay(input.samples, input.sampleRate);
      return {
        frequency: shown(f0, 'frequency'),
        q: shown(q, undefined),
        scatter: figureIn(scatter, ''),
        warnings: [],
      };
    }
  }
}

// The fit belongs to reading: what no model follows is a problem of the input, at the readings.
const schema = v.pipe(
  kinds,
  v.rawTransform<Input, Input & { readonly answer: ReturnType<typeof fitOf> }>(({ dataset, addIssue, NEVER }) => {
    const input = dataset.value;
    try {
      return { ...input, answer: fitOf(input) };
    } catch (refusal) {
      if (!(refusal instanceof UnfitReadings)) throw refusal;
      const key = READINGS[input.kind];
      const value = (input as unknown as Record<string, unknown>)[key];
      addIssue({
        message: refuseWith({ expected: { code: 'unfit', reason: refusal.reason } }),
        path: [{ type: 'object', origin: 'value', input: { ...input }, key, value }],
      });
      return NEVER;
    }
  }),
);

/** `calc fit`: figures with standard errors and 90 % ranges from readings of the bench. */
export const fit = calculation({
  name: 'fit',
  example: {
    kind: 'resonance',
    points: [
      { capacitance: '100 pF', frequency: '1022 kHz' },
      { capacitance: '220 pF', frequency: '704 kHz' },
      { capacitance: '330 pF', frequency: '579 kHz' },
      { capacitance: '470 pF', frequency: '487 kHz' },
    ],
  },
  schema,
  answer: ({ answer }) => answer,
});
