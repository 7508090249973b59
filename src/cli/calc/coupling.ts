import * as v from 'valibot';
import { couple, makeCoil, productRange, quantity } from '../../engine/index.ts';
import { calculation, factorRange, figure } from './calculation.ts';
import { coilSchema } from './coil.ts';
import { expected } from './expect.ts';
import { buildable } from './shape.ts';

const WHOLE_TURN = 2 * Math.PI;
/** A plain number is SI, radians; one of more than a turn can only be meant in degrees. In degrees from here on. */
const plainAngle = v.pipe(
  v.number(expected('angle')),
  v.check((angle) => Math.abs(angle) <= 360, expected('tilt')),
  v.transform((angle) => (Math.abs(angle) <= WHOLE_TURN ? (angle * 180) / Math.PI : angle)),
);

const schema = v.object(
  {
    first: coilSchema,
    second: coilSchema,
    offset: quantity('length', { min: -100, max: 100 }),
    tilt: v.optional(v.union([plainAngle, quantity('angle', { min: -360, max: 360 })], expected('angle'))),
    shift: v.optional(quantity('length', { min: -100, max: 100 })),
  },
  expected('coupling'),
);

const solve = ({ first, second, offset, tilt = 0, shift = 0 }: v.InferOutput<typeof schema>) =>
  couple(makeCoil(first), makeCoil(second), { offset, shift, tilt: (tilt * Math.PI) / 180 });

/** How well two coils stand where they are said to stand, as their coupling has it: common practice, no source. */
const PLACED = 1.1;

export const couplingCalculation = calculation({
  name: 'coupling',
  example: {
    first: { shape: 'solenoid', turns: 60, meanDiameter: '50 mm', pitch: '0.5 mm', wire: { diameter: '0.45 mm' } },
    second: { shape: 'solenoid', turns: 20, meanDiameter: '50 mm', pitch: '0.5 mm', wire: { diameter: '0.45 mm' } },
    offset: '35 mm',
  },
  schema: buildable(schema, solve),
  answer(input) {
    const { mutualInductance, couplingCoefficient, warnings } = solve(input);
    const coils = [makeCoil(input.first), makeCoil(input.second)].map(({ inductance, inductanceRange }) => ({
      value: inductance,
      range: inductanceRange,
      power: 0.5,
    }));
    const placed = { value: 1, range: factorRange(1, PLACED) };
    return {
      mutualInductance: figure(mutualInductance, 'inductance', productRange(mutualInductance, [...coils, placed])),
      couplingCoefficient: figure(couplingCoefficient, 'ratio', factorRange(couplingCoefficient, PLACED)),
      warnings,
    };
  },
});
