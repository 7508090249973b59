import * as v from 'valibot';
import {
  capacitance,
  choice,
  list,
  number,
  object,
  quantityField,
  resistance,
  variantMessage,
  voltage,
  withDefault,
} from '../../fields/fields.ts';
import { LIMITS } from '../../fields/limits.ts';
import { refuse } from '../../fields/refusal.ts';
import { measuredJunction } from '../measured/measured-schema.ts';

const wiring = withDefault(choice('detector.wiring', ['single', 'full-wave', 'doubler']), 'single');
const temperature = withDefault(
  quantityField('detector.temperature', 'temperature', { ...LIMITS.temperature, typical: [263, 313] }),
  '27 °C',
);
const bias = v.optional(
  voltage('detector.bias', {
    min: -10,
    max: 10,
    typical: [0, 0.5],
  }),
);
const overrides = {
  saturationCurrent: v.optional(
    quantityField('detector.saturationCurrent', 'current', { ...LIMITS.saturationCurrent, typical: [1e-9, 5e-5] }),
  ),
  ideality: v.optional(number('detector.ideality', 0.5, 10, [1, 3])),
  seriesResistance: v.optional(resistance('detector.seriesResistance', { typical: [1, 1000] })),
  leakage: v.optional(resistance('detector.leakage', { typical: [1e4, 1e7] })),
  junctionCapacitance: v.optional(capacitance('detector.junctionCapacitance', { max: 1e-9, typical: [1e-13, 2e-11] })),
  temperature,
  bias,
  wiring,
  measured: measuredJunction,
};

const galena = object({
  kind: v.literal('galena'),
  spot: withDefault(choice('detector.spot', ['good', 'fair', 'poor']), 'fair'),
  ...overrides,
});
const mineral = object({
  kind: v.literal('mineral'),
  mineral: choice('detector.mineral', ['iron pyrites', 'zincite-bornite', 'carborundum', 'silicon crystal']),
  ...overrides,
});
const germanium = object({
  kind: v.literal('germanium'),
  make: withDefault(choice('detector.make', ['point contact', 'gold-bonded']), 'point contact'),
  ...overrides,
});
const schottky = object({
  kind: v.literal('schottky'),
  type: withDefault(
    choice('detector.type', ['HSMS-2850', 'HSMS-2860', 'HSMS-2820', 'HSMS-2810', 'HSMS-2800', '1N5711']),
    'HSMS-2850',
  ),
  ...overrides,
});
const silicon = object({ kind: v.literal('silicon'), ...overrides });
const exponential = object({
  kind: v.literal('exponential'),
  ...overrides,
  saturationCurrent: quantityField('detector.saturationCurrent:exponential', 'current', {
    ...LIMITS.saturationCurrent,
    typical: [1e-9, 5e-5],
  }),
  ideality: number('detector.ideality:exponential', 0.5, 10, [1, 3]),
});
const valve = object({
  kind: v.literal('valve'),
  heaterVoltage: withDefault(voltage('detector.heaterVoltage', { min: 0, max: 10, typical: [3, 6.9] }), '6.3 V'),
  ratedHeaterVoltage: withDefault(voltage('detector.ratedHeaterVoltage', { min: 0.5, max: 60 }), '6.3 V'),
  junctionCapacitance: v.optional(
    capacitance('detector.valve.junctionCapacitance', { max: 1e-10, typical: [1e-12, 1e-11] }),
  ),
  bias,
  wiring,
});
const measured = object({
  kind: v.literal('measured'),
  points: v.pipe(
    list(
      'detector.points',
      'detector-points',
      object({
        voltage: voltage('detector.points.voltage', { typical: [-2, 2] }),
        current: quantityField('detector.points.current', 'current', { min: -10, max: 10, typical: [-1e-3, 1e-2] }),
      }),
      { min: 3, max: 500 },
    ),
    v.check(
      (all) => all.every((p, i) => i === 0 || (p.voltage > all[i - 1].voltage && p.current >= all[i - 1].current)),
      refuse({ code: 'rising-voltages' }),
    ),
  ),
  junctionCapacitance: v.optional(capacitance('detector.junctionCapacitance', { max: 1e-9 })),
  bias,
  wiring,
});

export const detector = v.variant(
  'kind',
  [galena, mineral, germanium, schottky, silicon, exponential, valve, measured],
  variantMessage('kind'),
);
export type DetectorDescription = v.InferOutput<typeof detector>;
