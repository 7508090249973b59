import * as v from 'valibot';
import {
  CAPACITANCE_FACTOR,
  count,
  distinctWarnings,
  ferriteRod,
  frameAerial,
  heightRange,
  ImpossibleValues,
  LIGHT_SPEED,
  LOOP_FACTORS,
  measuredImpedance,
  quantity,
  readTouchstone,
  refuse,
  SURROUNDINGS,
  SURROUNDINGS_LOSS_FACTOR,
  type Surroundings,
  surroundingsEffect,
  type TouchstoneRead,
  type Warning,
  type WireAerialShape,
  wireAerial,
  wireTree,
} from '../../engine/index.ts';
import { calculation, type FigureRange, factorRange, figure, figureIn } from './calculation.ts';
import { byShape, expected, numberIn, oneOf } from './expect.ts';
import { buildable } from './shape.ts';

const length = (above = 0) => quantity('length', above === 0 ? { above: 0, max: 2000 } : { min: 0, max: 2000 });
const wire = v.object({ diameter: quantity('length', { min: 1e-5, max: 0.1 }) }, expected('aerial-wire'));
/** Where the lead-in ends, at the set. */
const base = v.nullish(quantity('length', { min: 0, max: 2000 }), '1 m');
const top = quantity('length', { min: 0, max: 2000 });
const coordinate = v.pipe(v.number(expected('metres')), v.finite(expected('metres')));
const points = v.pipe(
  v.array(v.tuple([coordinate, coordinate, coordinate], expected('corner')), expected('corners')),
  v.minLength(2, refuse({ code: 'list.at-least', of: 'corners', count: 2 })),
  v.maxLength(100, refuse({ code: 'list.at-most', of: 'corners', count: 100 })),
);
const use = {
  /** What stands around it; left out: a garden with trees and a house, for a frame or rod a room. */
  surroundings: v.optional(oneOf(SURROUNDINGS)),
  frequency: v.optional(quantity('frequency', { min: 1e3, max: 3e7 })),
  /** In series with the aerial in the impedance answered. */
  earthResistance: v.optional(quantity('resistance', { min: 0, max: 1e6 }), 0),
};
const several = { wires: v.optional(count(1, 16)), spacing: v.optional(length()) };

const effectiveHeight = quantity('length', { above: 0, max: 1000 });

const schema = byShape([
  v.object({ shape: v.literal('inverted-L'), height: length(), length: top, base, wire, ...several, ...use }),
  v.object({ shape: v.literal('T'), height: length(), length: top, base, wire, ...several, ...use }),
  v.object({ shape: v.literal('vertical'), height: length(), base, wire, ...use }),
  v.object({ shape: v.literal('horizontal'), height: length(), length: length(), wire, ...use }),
  v.object({
    shape: v.literal('sloping'),
    height: length(),
    length: length(),
    farHeight: length(),
    base,
    wire,
    ...use,
  }),
  v.object({ shape: v.literal('bent'), points, wire, ...use }),
  v.object({ shape: v.literal('branched'), points, joins: v.array(count(0, 100)), wire, ...use }),
  v.object({
    shape: v.literal('frame'),
    outline: v.optional(oneOf(['square', 'round']), 'square'),
    side: length(),
    turns: numberIn(1, 400),
    pitch: v.optional(quantity('length', { above: 0, max: 10 }), '5 mm'),
    winding: v.optional(oneOf(['box', 'spiral'])),
    wire,
    ...use,
  }),
  v.object({
    shape: v.literal('ferrite rod'),
    length: length(),
    diameter: length(),
    permeability: numberIn(1, 1e5),
    turns: numberIn(0.25, 5000),
    winding: length(),
    coilDiameter: v.optional(length()),
    position: v.optional(numberIn(-1, 1)),
    lossFactor: v.optional(numberIn(0, 0.1)),
    ...use,
  }),
  v.object({
    shape: v.literal('measured'),
    capacitance: quantity('capacitance', { above: 0, max: 1e-3 }),
    resistance: v.optional(quantity('resistance', { min: 0, max: 1e6 }), 0),
    effectiveHeight,
    ...use,
  }),
  v.object({
    shape: v.literal('impedance'),
    points: v.optional(
      v.array(
        v.object({
          frequency: quantity('frequency', { above: 0 }),
          resistance: quantity('resistance'),
          reactance: quantity('resistance'),
        }),
        expected('impedance-points'),
      ),
    ),
    touchstone: v.optional(v.string(expected('touchstone-text'))),
    effectiveHeight,
    frequency: quantity('frequency', { min: 1e3, max: 3e7 }),
    earthResistance: use.earthResistance,
  }),
]);
type Input = v.InferOutput<typeof schema>;

export const aerialCalculation = calculation({
  name: 'aerial',
  example: {
    shape: 'inverted-L',
    height: '10 m',
    length: '30 m',
    base: '1 m',
    wire: { diameter: '2 mm' },
    frequency: '549 kHz',
  },
  schema: buildable(schema, check),
  answer,
});

/** Cheap, where there is a cheap way; @throws RangeError with what does not fit. */
function check(input: Input): void {
  if (input.shape === 'frame') frameAerial(input);
  else if (input.shape === 'ferrite rod') ferriteRod(input);
  else if (input.shape === 'impedance') measuredImpedance(table(input).points);
  else if (input.shape !== 'measured') wireTree(input as WireAerialShape);
}

function table(
  input: Extract<Input, { shape: 'impedance' }>,
): Extract<TouchstoneRead, { ok: true }> | { points: NonNullable<typeof input.points>; warnings: Warning[] } {
  if (input.touchstone === undefined) return { points: input.points ?? [], warnings: [] };
  const read = readTouchstone(input.touchstone);
  if (!read.ok) throw new ImpossibleValues({ code: 'touchstone.problems', problems: read.problems });
  return read;
}

/** Effective height and radiation resistance, calculated for the aerial by itself, ranged as what is around it has it. */
const inPlace = (loop: boolean, surroundings?: Surroundings) => {
  const effect = surroundingsEffect(loop, surroundings);
  return {
    height: (h: number) => figure(h, 'length', heightRange(h, effect)),
    radiation: (R: number) =>
      figure(R, 'resistance', heightRange(Math.sqrt(Math.max(R, 0)), effect).map((x) => x * x) as [number, number]),
  };
};

/** ± 1.5 dB on a height that was measured. */
const MEASURED_HEIGHT = 1.19;
const measuredHeight = (h: number) => figure(h, 'length', factorRange(h, MEASURED_HEIGHT));

/** Against the calculated: the inductance of a wire (one published aerial), of a frame and of a rod. */
const INDUCTANCE = { wire: 1.2, ...LOOP_FACTORS.inductance } as const;
/** The loss of a loop, and of a wire among what is around it: common practice; a figure that was measured keeps a meter's error. */
const LOSS = { loop: LOOP_FACTORS.loss, wire: 1.3, measured: 1.05 } as const;
const reactance = (value: number, factor: number) => figure(value, 'resistance', factorRange(value, factor));

function answer(input: Input): Record<string, unknown> & { warnings: readonly Warning[] } {
  const { frequency: f, earthResistance } = input;
  // An earth given here is taken as it is given.
  const impedance = (resistance: number, byLoss: number, X: ReturnType<typeof reactance>, around = 0) => {
    const [low, high] = factorRange(resistance, byLoss);
    // The value leaves out what stands around the aerial, so it may be the lower end.
    const least = Math.min(resistance, low + around / SURROUNDINGS_LOSS_FACTOR);
    const range: FigureRange = [least, high + around * SURROUNDINGS_LOSS_FACTOR].map(
      (end) => end + earthResistance,
    ) as [number, number];
    return { resistance: figure(resistance + earthResistance, 'resistance', range), reactance: X };
  };
  const radiation = (h: number, at: number) => {
    const R = 160 * Math.PI ** 2 * ((h * at) / LIGHT_SPEED) ** 2;
    return figure(R, 'resistance', factorRange(R, MEASURED_HEIGHT ** 2));
  };
  switch (input.shape) {
    case 'frame': {
      const model = frameAerial(input);
      const place = inPlace(true, input.surroundings);
      const still = {
        inductance: figure(model.inductance, 'inductance', factorRange(model.inductance, INDUCTANCE.frame)),
        totalArea: figureIn(model.totalArea, 'm²'),
        wireLength: figure(model.wireLength, 'length'),
        dcResistance: figure(model.dcResistance, 'resistance'),
        nullDirection: figure(model.nullDirection, 'angle'),
      };
      if (f === undefined) return { ...still, warnings: model.warnings };
      return {
        ...still,
        effectiveHeight: place.height(model.effectiveHeightAt(f)),
        radiationResistance: place.radiation(model.radiationResistanceAt(f)),
        impedance: impedance(
          model.resistanceAt(f) + model.radiationResistanceAt(f),
          LOSS.loop,
          reactance(2 * Math.PI * f * model.inductance, INDUCTANCE.frame),
        ),
        warnings: model.warningsAt(f),
      };
    }
    case 'ferrite rod': {
      const model = ferriteRod(input);
      const still = {
        inductance: figure(model.inductance, 'inductance', factorRange(model.inductance, INDUCTANCE.rod)),
        coilPermeability: figureIn(model.coilPermeability, ''),
        rodPermeability: figureIn(model.rodPermeability, ''),
        rodQ: figureIn(model.rodQ, ''),
        warnings: model.warnings,
      };
      if (f === undefined) return still;
      const loss = model.lossResistanceAt(f);
      return {
        ...still,
        effectiveHeight: inPlace(true, input.surroundings).height(model.effectiveHeightAt(f)),
        lossResistance: figure(loss.resistance, 'resistance', loss.range),
        lossResistanceRange: loss.range.map((end) => figure(end, 'resistance')),
        impedance: impedance(
          loss.resistance,
          Math.sqrt(loss.range[1] / loss.range[0]),
          reactance(2 * Math.PI * f * model.inductance, INDUCTANCE.rod),
        ),
      };
    }
    case 'measured':
      return {
        capacitance: figure(input.capacitance, 'capacitance'),
        effectiveHeight: measuredHeight(input.effectiveHeight),
        ...(f === undefined
          ? {}
          : {
              radiationResistance: radiation(input.effectiveHeight, f),
              impedance: impedance(
                input.resistance,
                LOSS.measured,
                reactance(-1 / (2 * Math.PI * f * input.capacitance), LOSS.measured),
              ),
            }),
        warnings: [],
      };
    case 'impedance': {
      const read = table(input);
      const model = measuredImpedance(read.points);
      const z = model.impedanceAt(input.frequency);
      return {
        effectiveHeight: measuredHeight(input.effectiveHeight),
        radiationResistance: radiation(input.effectiveHeight, input.frequency),
        impedance: impedance(z.re, LOSS.measured, reactance(z.im, LOSS.measured)),
        warnings: distinctWarnings([...read.warnings, ...model.warningsAt(input.frequency)]),
      };
    }
  }
  const model = wireAerial(input as WireAerialShape);
  const around = 'surroundings' in input ? input.surroundings : undefined;
  const place = inPlace(false, around);
  const still = {
    capacitance: figure(model.capacitance, 'capacitance', [
      model.capacitance / CAPACITANCE_FACTOR,
      model.capacitance * CAPACITANCE_FACTOR,
    ]),
    effectiveHeight: place.height(model.effectiveHeight),
    wireLength: figure(model.wireLength, 'length'),
    inductance: figure(model.inductance, 'inductance', factorRange(model.inductance, INDUCTANCE.wire)),
    naturalFrequency: figure(
      model.naturalFrequency,
      'frequency',
      // Half of each decibel of inductance and capacitance.
      factorRange(
        model.naturalFrequency,
        Math.exp(Math.hypot(Math.log(INDUCTANCE.wire), Math.log(CAPACITANCE_FACTOR)) / 2),
      ),
    ),
  };
  if (f === undefined) return { ...still, warnings: model.warnings };
  const z = model.impedanceAt(f);
  return {
    ...still,
    radiationResistance: place.radiation(model.radiationResistanceAt(f)),
    effectiveHeightAtFrequency: place.height(model.effectiveHeightAt(f)),
    impedance: impedance(
      z.re,
      LOSS.wire,
      reactance(z.im, CAPACITANCE_FACTOR),
      surroundingsEffect(false, around).lossTangent / (2 * Math.PI * f * model.capacitance),
    ),
    warnings: model.warningsAt(f),
  };
}
