import * as v from 'valibot';
import {
  capacitance,
  choice,
  number,
  object,
  resistance,
  variantMessage,
  voltage,
  withDefault,
} from '../../fields/fields.ts';
import { LIMITS } from '../../fields/limits.ts';
import { refuse } from '../../units/refusal.ts';
import { quantity } from '../../units/schema.ts';

const wiring = withDefault(
  choice(
    'Detectors',
    ['single', 'full-wave', 'doubler'],
    'One; two fed from both ends of a centre-tapped coil; or two that add their voltages.',
  ),
  'single',
);
const temperature = withDefault(
  quantity('temperature', { ...LIMITS.temperature, label: 'Temperature', typical: [263, 313] }),
  '27 °C',
);
const bias = v.optional(
  voltage('Bias', {
    min: -10,
    max: 10,
    typical: [0, 0.5],
    about: 'From a cell, in the direction that helps conduction.',
  }),
);
const overrides = {
  saturationCurrent: v.optional(
    quantity('current', {
      ...LIMITS.saturationCurrent,
      label: 'Saturation current',
      typical: [1e-9, 5e-5],
      about: 'As measured; left out: usual for its kind.',
    }),
  ),
  ideality: v.optional(number('Ideality', 0.5, 10, 'As measured; left out: usual for its kind.', [1, 3])),
  seriesResistance: v.optional(resistance('Series resistance', { typical: [1, 1000] })),
  leakage: v.optional(resistance('Leakage', { typical: [1e4, 1e7], about: 'Reverse resistance in parallel.' })),
  junctionCapacitance: v.optional(capacitance('Junction capacitance', { max: 1e-9, typical: [1e-13, 2e-11] })),
  temperature,
  bias,
  wiring,
};

const galena = object({
  kind: v.literal('galena'),
  spot: withDefault(choice('Spot', ['good', 'fair', 'poor'], 'How lucky the whisker’s place is.'), 'fair'),
  ...overrides,
});
const mineral = object({
  kind: v.literal('mineral'),
  mineral: choice(
    'Mineral',
    ['iron pyrites', 'zincite-bornite', 'carborundum', 'silicon crystal'],
    'A pair is touched together; carborundum wants a bias cell.',
  ),
  ...overrides,
});
const germanium = object({
  kind: v.literal('germanium'),
  make: withDefault(choice('Make', ['point contact', 'gold-bonded']), 'point contact'),
  ...overrides,
});
const schottky = object({
  kind: v.literal('schottky'),
  type: withDefault(
    choice(
      'Type',
      ['HSMS-2850', 'HSMS-2860', 'HSMS-2820', 'HSMS-2810', 'HSMS-2800', '1N5711'],
      'They differ a thousandfold in resistance near zero.',
    ),
    'HSMS-2850',
  ),
  ...overrides,
});
const silicon = object({ kind: v.literal('silicon'), ...overrides });
const exponential = object({
  kind: v.literal('exponential'),
  ...overrides,
  saturationCurrent: quantity('current', {
    ...LIMITS.saturationCurrent,
    label: 'Saturation current',
    typical: [1e-9, 5e-5],
  }),
  ideality: number('Ideality', 0.5, 10, '', [1, 3]),
});
const valve = object({
  kind: v.literal('valve'),
  heaterVoltage: withDefault(voltage('Heater voltage', { min: 0, max: 10, typical: [3, 6.9] }), '6.3 V'),
  ratedHeaterVoltage: withDefault(voltage('Rated heater voltage', { min: 0.5, max: 60 }), '6.3 V'),
  junctionCapacitance: v.optional(capacitance('Anode capacitance', { max: 1e-10, typical: [1e-12, 1e-11] })),
  bias,
  wiring,
});
const measured = object({
  kind: v.literal('measured'),
  points: v.pipe(
    v.array(
      object({
        voltage: voltage('Voltage', { typical: [-2, 2] }),
        current: quantity('current', { label: 'Current', min: -10, max: 10, typical: [-1e-3, 1e-2] }),
      }),
      refuse('a list of { voltage, current }'),
    ),
    v.minLength(3, refuse('at least three measured points')),
    v.maxLength(500, refuse('at most 500 points')),
    v.check(
      (list) => list.every((p, i) => i === 0 || (p.voltage > list[i - 1].voltage && p.current >= list[i - 1].current)),
      refuse('voltages that rise, and currents that never fall, from point to point'),
    ),
  ),
  junctionCapacitance: v.optional(capacitance('Junction capacitance', { max: 1e-9 })),
  bias,
  wiring,
});

export const detector = v.variant(
  'kind',
  [galena, mineral, germanium, schottky, silicon, exponential, valve, measured],
  variantMessage('kind'),
);
export type DetectorDescription = v.InferOutput<typeof detector>;
