import * as v from 'valibot';
import {
  COVERINGS,
  type CoilModel,
  count,
  FORMERS,
  METALS,
  makeCoil,
  productRange,
  quantity,
  refuse,
  warning,
} from '../../engine/index.ts';
import { selfCapacitanceMethods } from '../../outputs/words/index.ts';
import { calculation, type FigureRange, figure } from './calculation.ts';
import { atLeastOne, byShape, expected, oneOf } from './expect.ts';
import { buildable } from './shape.ts';

const size = quantity('length', { above: 0, max: 10 });
const turns = v.pipe(
  v.number(expected('turns')),
  v.check((n) => n >= 0.25 && n <= 20_000, refuse({ code: 'number', min: 0.25, max: 20_000 })),
);
const wire = v.object(
  {
    diameter: quantity('length', { min: 1e-6, max: 0.05 }),
    covering: v.optional(oneOf(COVERINGS)),
    metal: v.optional(oneOf(METALS)),
    strands: v.optional(count(1, 5000)),
    overall: v.optional(quantity('length', { min: 1e-6, max: 0.05 })),
  },
  expected('coil-wire'),
);
const common = {
  wire,
  former: v.optional(oneOf(FORMERS)),
  wall: v.optional(size),
  temperature: v.optional(quantity('temperature', { min: 200, max: 500 })),
  frequency: v.optional(quantity('frequency', { above: 0, max: 1e9 })),
};
const inside = { innerDiameter: v.optional(size), formerDiameter: v.optional(size) };

/** A coil as `calc` takes it; `frequency` may stand beside its sizes. */
export const coilSchema = buildable(
  byShape([
    v.object({
      shape: v.literal('solenoid'),
      turns,
      meanDiameter: v.optional(size),
      formerDiameter: v.optional(size),
      pitch: v.optional(size),
      ...common,
    }),
    v.object({
      shape: v.literal('multilayer'),
      turnsPerLayer: count(1, 20_000),
      layers: count(1, 200),
      ...inside,
      pitch: v.optional(size),
      layerPitch: v.optional(size),
      ...common,
    }),
    v.object({
      shape: v.literal('bank-wound'),
      turns,
      layers: count(2, 8),
      ...inside,
      pitch: v.optional(size),
      ...common,
    }),
    v.object({ shape: v.literal('spiral'), turns, innerDiameter: size, pitch: v.optional(size), ...common }),
    v.object({
      shape: v.literal('spider'),
      turns,
      innerDiameter: size,
      slots: v.optional(count(3, 99)),
      over: v.optional(count(1, 4)),
      discThickness: v.optional(size),
      pitch: v.optional(size),
      ...common,
    }),
    v.object({
      shape: v.literal('basket'),
      turns,
      pegCircle: size,
      pegs: v.optional(count(3, 99)),
      over: v.optional(count(1, 4)),
      pegDiameter: v.optional(size),
      pitch: v.optional(size),
      ...common,
    }),
    v.object({
      shape: v.literal('core'),
      turns,
      perTurnSquared: quantity('inductance', { above: 0, max: 1 }),
      turnLength: v.optional(size),
      coreQ: v.optional(atLeastOne),
      form: v.optional(oneOf(['toroid', 'pot core'])),
      ...common,
    }),
  ]),
  makeCoil,
);

const scaled = ([low, high]: FigureRange, factor: number): FigureRange => [low * factor, high * factor];

/** The range of Q is all of the resistance's. */
function resistanceRange(model: CoilModel, f: number): FigureRange {
  const reactance = 2 * Math.PI * f * model.inductanceAt(f);
  const [low, high] = model.qRangeAt(f);
  return [reactance / high, reactance / low];
}

export const coilCalculation = calculation({
  name: 'coil',
  example: {
    shape: 'solenoid',
    turns: 75,
    meanDiameter: '63 mm',
    pitch: '0.45 mm',
    wire: { diameter: '28 SWG' },
    frequency: '909 kHz',
  },
  schema: coilSchema,
  answer(input) {
    const model = makeCoil(input);
    const { frequency: f } = input;
    const warnings = [...model.warnings];
    if (f !== undefined && f > model.selfResonance / 3) {
      warnings.push(warning('coil.above-third-of-self-resonance'));
    }
    return {
      inductance: figure(model.inductance, 'inductance', model.inductanceRange),
      wireLength: figure(model.wireLength, 'length'),
      dcResistance: figure(model.dcResistance, 'resistance'),
      selfCapacitance: figure(model.selfCapacitance, 'capacitance', model.selfCapacitanceRange),
      selfCapacitanceMethod: selfCapacitanceMethods[model.selfCapacitanceMethod],
      selfCapacitanceLoss: figure(model.selfCapacitanceLoss, 'ratio'),
      selfResonance: figure(
        model.selfResonance,
        'frequency',
        productRange(model.selfResonance, [
          { value: model.inductance, range: model.inductanceRange, power: -0.5 },
          { value: model.selfCapacitance, range: model.selfCapacitanceRange, power: -0.5 },
        ]),
      ),
      windingLength: figure(model.windingLength, 'length'),
      outerDiameter: figure(model.outerDiameter, 'length'),
      weight: figure(model.weight, 'mass'),
      ...(f === undefined
        ? {}
        : {
            inductanceAtFrequency: figure(
              model.inductanceAt(f),
              'inductance',
              scaled(model.inductanceRange, model.inductanceAt(f) / model.inductance),
            ),
            resistance: figure(model.resistanceAt(f), 'resistance', resistanceRange(model, f)),
            wireResistance: figure(
              model.wireResistanceAt(f),
              'resistance',
              scaled(resistanceRange(model, f), model.wireResistanceAt(f) / model.resistanceAt(f)),
            ),
            dielectricResistance: figure(model.dielectricResistanceAt(f), 'resistance'),
            q: figure(model.qAt(f), 'ratio', model.qRangeAt(f)),
            qRange: model.qRangeAt(f).map((end) => figure(end, 'ratio')),
          }),
      warnings,
    };
  },
});
