import * as v from 'valibot';
import {
  type Fitted,
  fieldEntries,
  MEASUREMENTS,
  type Measured,
  type MeasurementKind,
  type QuantityKind,
  refuse,
  refuseWith,
  UnfitReadings,
} from '../../engine/index.ts';
import { calculation, figure, figureIn } from './calculation.ts';

const KINDS = Object.keys(MEASUREMENTS) as MeasurementKind[];

/** The readings of a kind, and its kind. */
const readingsOf = (kind: MeasurementKind) =>
  v.object({ kind: v.literal(kind), ...fieldEntries(MEASUREMENTS[kind].fields) });

const kinds = v.variant(
  'kind',
  KINDS.map(readingsOf) as [ReturnType<typeof readingsOf>, ...ReturnType<typeof readingsOf>[]],
  refuse({ code: 'kind', key: 'kind', options: KINDS }),
);
type Input = Readonly<Record<string, unknown>> & { readonly kind: MeasurementKind };

const shown = (fitted: Fitted, kind: QuantityKind | undefined) => ({
  ...(kind ? figure(fitted.value, kind) : figureIn(fitted.value, '')),
  standardError: fitted.standardError,
  range: fitted.range,
});

/** What a measurement says, its figures with units. */
function answerOf(kind: MeasurementKind, { figures, scatter, suspects, sweep, warnings }: Measured) {
  const { yields } = MEASUREMENTS[kind];
  return {
    ...Object.fromEntries(Object.entries(figures).map(([name, one]) => [name, shown(one, yields[name].quantity)])),
    ...(scatter !== undefined && { scatter: figureIn(scatter, '') }),
    ...(sweep && {
      impedance: sweep.map(({ frequency, resistance, reactance, standardError }) => ({
        frequency: figure(frequency, 'frequency'),
        resistance: { ...figure(resistance, 'resistance'), standardError },
        reactance: { ...figure(reactance, 'resistance'), standardError },
      })),
    }),
    ...(suspects && {
      suspects: suspects.map((s) => s.index),
      suspectFrequencies: suspects.map((s) => shown(s.frequencyThere, 'frequency')),
    }),
    warnings,
  };
}

// The fit belongs to reading: what no model follows is a problem of the input, at the readings.
const schema = v.pipe(
  kinds,
  v.rawTransform(({ dataset, addIssue, NEVER }) => {
    const input = dataset.value as Input;
    const { fit: fitted, readings } = MEASUREMENTS[input.kind];
    try {
      return { ...input, answer: answerOf(input.kind, fitted(input)) };
    } catch (refusal) {
      if (!(refusal instanceof UnfitReadings)) throw refusal;
      addIssue({
        message: refuseWith({ expected: { code: 'unfit', reason: refusal.reason } }),
        path: [{ type: 'object', origin: 'value', input: { ...input }, key: readings, value: input[readings] }],
      });
      return NEVER;
    }
  }),
);

/** `calc fit`: figures with standard errors and 90 % ranges from readings of the bench. */
export const fitCalculation = calculation({
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
