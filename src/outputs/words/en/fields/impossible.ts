import {
  type ImpossibleReason,
  type ImpossibleReasons,
  ImpossibleValues,
  SIZES,
  type SizeBounds,
  type SizeId,
} from '../../../../engine/facts/impossible-values.ts';
import { formatNumber, formatQuantity } from '../../../../engine/units/format.ts';
import type { QuantityKind } from '../../../../engine/units/quantity-kind.ts';
import type { SentencesFor } from '../warnings/sentences-for.ts';
import { touchstoneProblem } from './touchstone.ts';

const NAMES: Readonly<Record<SizeId, string>> = {
  'aerial.wire': 'the thickness of the wire',
  'aerial.height': 'the height',
  'aerial.length': 'the length',
  'aerial.far-height': 'the height of the far end',
  'aerial.base': 'the height of the foot of the lead-in',
  'aerial.wires': 'the number of wires',
  'aerial.spacing': 'the spacing of the wires',
  'frame.side': 'the side of a frame',
  'frame.turns': 'the turns of a frame',
  'frame.wire': 'the thickness of the wire of a frame',
  'frame.pitch': 'the pitch of the turns',
  'rod.diameter': 'the diameter of the rod',
  'rod.length': 'the length of the rod',
  'rod.permeability': 'the permeability',
  'rod.turns': 'the turns on the rod',
  'rod.winding': 'the length of the winding on the rod',
  'rod.coil-diameter': 'the diameter of the coil over the rod',
  'rod.position': 'the position on the rod',
  'rod.loss-factor': 'the loss factor',
  'earth.length': 'the length',
  'earth.height': 'the height',
  'earth.rod-diameter': 'the diameter of the rod',
  'earth.wire': 'the thickness of the wire',
  'earth.spacing': 'the spacing',
  'earth.depth': 'the depth',
  'earth.plate-size': 'the size of the plate',
  'earth.rods': 'the number of rods',
  'earth.radials': 'the number of radials',
  'earth.counterpoise-wires': 'the number of counterpoise wires',
  'earth.resistance': 'the resistance of the earth',
  'earth.soil-resistivity': 'the resistivity of the soil',
  'earth.ground-conductivity': 'the conductivity of the ground',
  'earth.frequency': 'the frequency',
  'coil.turns': 'the number of turns',
  'coil.pitch': 'the pitch',
  'coil.over-covering': 'the diameter over the covering',
  'coil.posts': 'the number of slots or pegs',
  'coil.per-turn-squared': 'the inductance per turn squared',
  'coil.inductance': 'the inductance',
  'coil.q': 'Q',
  'coil.at': 'the frequency of the measurement',
  'capacitor.capacitance': 'the capacitance',
  'capacitor.minimum': 'the minimum capacitance',
  'capacitor.maximum': 'the maximum capacitance',
  'capacitor.outer-radius': 'the outer radius of the vanes',
  'capacitor.area': 'the area of a vane',
  'capacitor.air-gap': 'the air gap',
  'capacitor.loss-tangent': 'the loss tangent',
  'detector.saturation-current': 'the saturation current',
  'detector.working-saturation-current': 'the saturation current at the working temperature',
  'detector.ideality': 'the ideality',
  'detector.series-resistance': 'the series resistance',
  'detector.leakage': 'the leakage',
  'detector.junction-capacitance': 'the junction capacitance',
  'detector.temperature': 'the temperature',
  'detector.cathode-temperature': 'the temperature of the cathode',
  'detector.heater-voltage': 'the heater voltage',
  'detector.open-voltage': 'the open-circuit voltage',
  'detector.direct-load': 'the direct load',
  'detector.source-resistance': 'the source resistance',
  'detector.source-reactance': 'the source reactance',
  'detector.bias': 'the bias',
  'detector.audio-frequency': 'the audio frequency',
  'detector.depth': 'the modulation depth',
  'tuned-circuit.inductance': 'the inductance',
  'tuned-circuit.q': 'Q',
  'tuned-circuit.frequency': 'the frequency',
  'tuned-circuit.tap': 'the tap',
  'tuned-circuit.available-power': 'the available power',
  'tuned-circuit.load-resistance': 'the resistance of the load',
  'tuned-circuit.load-capacitance': 'the capacitance of the load',
  'load.impedance': 'the impedance',
  'load.inductance': 'the inductance',
  'load.input-capacitance': 'the input capacitance',
  'transformer.core-loss': 'the core loss',
};

const quantity = (value: number, kind: QuantityKind | undefined): string =>
  kind === undefined ? formatNumber(value, 6) : formatQuantity(value, kind, 6);

const length = (metres: number): string => quantity(metres, 'length');

/** "from 20 mm to 20 m", "above 0 and at most 2 m". */
function boundsText({ min, above, max, below, whole }: SizeBounds, kind: QuantityKind | undefined): string {
  const at = (value: number): string => (value === 0 ? '0' : quantity(value, kind));
  const number = whole ? 'a whole number ' : '';
  if (min !== undefined && max !== undefined) return `${number}from ${at(min)} to ${at(max)}`;
  const ends = [
    ...(min === undefined ? [] : [`at least ${at(min)}`]),
    ...(above === undefined ? [] : [`above ${at(above)}`]),
    ...(max === undefined ? [] : [`at most ${at(max)}`]),
    ...(below === undefined ? [] : [`below ${at(below)}`]),
  ];
  return `${number}${ends.join(' and ')}`;
}

const REASONS: SentencesFor<ImpossibleReasons> = {
  'size.out-of-bounds': ({ size, bounds, value }) => {
    const { quantity: kind } = { quantity: undefined, ...SIZES[size] };
    return `${NAMES[size]} must be ${boundsText(bounds, kind)}, not ${quantity(value, kind)}`;
  },
  'aerial.too-short': ({ length: along, rise }) =>
    `the wire must reach from one height to the other: ${length(along)} of wire, ${length(rise)} between the heights`,
  'aerial.number-of-points': ({ count }) => `an aerial needs 2 to 200 points, not ${count}`,
  'aerial.number-of-joins': ({ points, joins }) =>
    `every point but the first needs one join: ${points} points, ${joins} joins`,
  'aerial.join': ({ index }) => `point ${index} must join an earlier point`,
  'aerial.point-below-ground': ({ index }) => `point ${index} must not be below ground or more than 5 km from the set`,
  'aerial.points-together': ({ index }) =>
    `point ${index} must lie apart from the one it is wired to, by more than the wire is thick`,
  'aerial.wire-on-ground': ({ index }) => `the wire to point ${index} must not lie on the ground`,
  'aerial.unsolvable': () => 'no charge on these wires follows: wires lie in one another',
  'frame.spiral-full': ({ turns, pitch, side }) =>
    `${formatNumber(turns, 4)} turns at ${length(pitch)} do not fit inside a spiral of ${length(side)}`,
  'impedance.no-points': () => 'a measured impedance needs at least one point',
  'impedance.not-finite': () => 'a measured point must be finite and its frequency above 0',
  'impedance.same-frequency': ({ frequency }) => `two points are given at ${quantity(frequency, 'frequency')}`,
  'earth.rods-together': ({ first, second }) => `rods ${first + 1} and ${second + 1} stand in the same place`,
  'earth.metal-thick': ({ diameter, length: across }) =>
    `the metal must be thinner than it is long or high: ${length(diameter)} against ${length(across)}`,
  'earth.plate-shallow': ({ least, depth }) =>
    `a plate on edge must have its middle at least ${length(least)} deep, not ${length(depth)}`,
  'earth.soil': ({ soils, soil: given }) => `the soil must be one of ${soils.join('; ')}, not ${given}`,
  'earth.no-soil': () => 'give the soil by its kind or its soilResistivity',
  'earth.range': ({ value, low, high }) =>
    `the range must hold its own figure ${formatNumber(value, 6)}, not ${formatNumber(low, 6)} to ${formatNumber(high, 6)}`,
  'coil.no-coil': ({ inductance }) => `no coil has these sizes: ${quantity(inductance, 'inductance')}`,
  'coil.radius': ({ radius }) => `a turn of radius ${length(radius)} is too small for the wire`,
  'coil.no-diameter': () => 'neither a former nor a winding diameter is given',
  'coil.no-length': () => 'the winding has no length',
  'coil.weave': ({ over, posts }) => `over ${over} of ${posts} cannot be woven`,
  'coil.place-unknown': () => 'the coupling of a core or a measured coil cannot be calculated from its size',
  'coil.too-much-inductance': () => 'no coil of this kind has so much inductance: more turns than can be wound',
  'capacitor.ends': ({ minimum, maximum }) =>
    `the maximum ${quantity(maximum, 'capacitance')} must exceed the minimum ${quantity(minimum, 'capacitance')}`,
  'capacitor.sizes': () => 'no capacitor has these sizes',
  'tuned-circuit.sizes': () =>
    'no tuned circuit has these values: the upper end of band and capacitor must exceed the lower',
  'detector.unknown': ({ detector, detectors }) => `unknown detector "${detector}"; there are ${detectors.join(', ')}`,
  'detector.neither-kind-nor-law': () => 'a detector has either "kind", or both "saturationCurrent" and "ideality"',
  'detector.too-few-voltages': ({ count }) => `a measured curve needs two different voltages, not ${count}`,
  'detector.point-not-finite': ({ index }) => `measured point ${index} must be finite`,
  'detector.unsolvable': () => 'the equations of the detector cannot be solved',
  'load.sizes': () => 'no load has these values',
  'load.impedance-below-resistance': ({ impedance, resistance }) =>
    `the impedance at 1 kHz, ${quantity(impedance, 'resistance')}, must exceed the direct resistance, ${quantity(resistance, 'resistance')}`,
  'transformer.sizes': () => 'no transformer has these values',
  'station.too-strong': ({ station, voltage, fieldStrength }) =>
    `the audio of ${station} cannot be calculated: ${formatQuantity(voltage, 'voltage', 2)} of carrier at the detector are beyond what its equations can be solved for; expected a field that a receiver meets, got ${formatQuantity(fieldStrength, 'field strength', 2)}`,
  'touchstone.problems': ({ problems }) => `the Touchstone text: ${problems.map(touchstoneProblem).join('; ')}`,
  'envelope.not-followed': () => 'the envelopes of this circuit could not be followed',
  'signal.too-short': () => 'the duration must hold at least 2 cycles of the carrier',
  'signal.tone-too-high': ({ frequency }) =>
    `tones must be well below the carrier, not ${quantity(frequency, 'frequency')}`,
  'signal.too-long': ({ longest, time }) =>
    `settle and duration must be ${quantity(longest, 'time')} or less together, not ${quantity(time, 'time')}`,
  'signal.too-many-cycles': ({ most, cycles }) =>
    `settle and duration must be ${most} cycles of the first carrier or less together, not ${cycles}`,
};

/**
 * Why values that are possible one by one lead nowhere together.
 * @param reason its code with figures, SI
 * @returns a clause that begins small
 */
export const impossibleText = (reason: ImpossibleReason): string =>
  (REASONS[reason.code] as (figures: ImpossibleReason) => string)(reason);

/**
 * What stopped a calculation.
 * @param error as it was thrown
 * @returns the reason in words where the engine gives one, or else the message of the error
 */
export const errorText = (error: unknown): string =>
  error instanceof ImpossibleValues
    ? impossibleText(error.reason)
    : error instanceof Error
      ? error.message
      : String(error);
