import type { Coded, NoFigures } from '../units/coded.ts';
import type { QuantityKind } from '../units/quantity-kind.ts';
import type { TouchstoneProblem } from './touchstone-problems.ts';

interface Size {
  /** The field of a description or of a specification that holds it. */
  readonly field: string;
  /** What it is measured in; a plain number where there is none. */
  readonly quantity?: QuantityKind;
}

/** Sizes of parts that a model checks, each with the field it is written in. */
export const SIZES = {
  'aerial.wire': { field: 'wire', quantity: 'length' },
  'aerial.height': { field: 'height', quantity: 'length' },
  'aerial.length': { field: 'length', quantity: 'length' },
  'aerial.far-height': { field: 'farHeight', quantity: 'length' },
  'aerial.base': { field: 'base', quantity: 'length' },
  'aerial.wires': { field: 'wires' },
  'aerial.spacing': { field: 'spacing', quantity: 'length' },
  'frame.side': { field: 'side', quantity: 'length' },
  'frame.turns': { field: 'turns' },
  'frame.wire': { field: 'wire', quantity: 'length' },
  'frame.pitch': { field: 'pitch', quantity: 'length' },
  'rod.diameter': { field: 'diameter', quantity: 'length' },
  'rod.length': { field: 'length', quantity: 'length' },
  'rod.permeability': { field: 'permeability' },
  'rod.turns': { field: 'turns' },
  'rod.winding': { field: 'winding', quantity: 'length' },
  'rod.coil-diameter': { field: 'coilDiameter', quantity: 'length' },
  'rod.position': { field: 'position' },
  'rod.loss-factor': { field: 'lossFactor' },
  'earth.length': { field: 'length', quantity: 'length' },
  'earth.height': { field: 'height', quantity: 'length' },
  'earth.rod-diameter': { field: 'diameter', quantity: 'length' },
  'earth.wire': { field: 'wire', quantity: 'length' },
  'earth.spacing': { field: 'spacing', quantity: 'length' },
  'earth.depth': { field: 'depth', quantity: 'length' },
  'earth.plate-size': { field: 'side', quantity: 'length' },
  'earth.rods': { field: 'count' },
  'earth.radials': { field: 'count' },
  'earth.counterpoise-wires': { field: 'count' },
  'earth.resistance': { field: 'resistance', quantity: 'resistance' },
  'earth.soil-resistivity': { field: 'soilResistivity', quantity: 'resistivity' },
  'earth.ground-conductivity': { field: 'groundConductivity', quantity: 'conductivity' },
  'earth.frequency': { field: 'frequency', quantity: 'frequency' },
  'coil.turns': { field: 'turns' },
  'coil.pitch': { field: 'pitch', quantity: 'length' },
  'coil.over-covering': { field: 'wire', quantity: 'length' },
  'coil.posts': { field: 'posts' },
  'coil.per-turn-squared': { field: 'perTurnSquared', quantity: 'inductance' },
  'coil.inductance': { field: 'inductance', quantity: 'inductance' },
  'coil.q': { field: 'q' },
  'coil.at': { field: 'at', quantity: 'frequency' },
  'capacitor.capacitance': { field: 'capacitance', quantity: 'capacitance' },
  'capacitor.minimum': { field: 'minimum', quantity: 'capacitance' },
  'capacitor.maximum': { field: 'maximum', quantity: 'capacitance' },
  'capacitor.outer-radius': { field: 'outerRadius', quantity: 'length' },
  'capacitor.area': { field: 'area' },
  'capacitor.air-gap': { field: 'airGap', quantity: 'length' },
  'capacitor.loss-tangent': { field: 'lossTangent' },
  'detector.saturation-current': { field: 'saturationCurrent', quantity: 'current' },
  'detector.working-saturation-current': { field: 'temperature', quantity: 'current' },
  'detector.ideality': { field: 'ideality' },
  'detector.series-resistance': { field: 'seriesResistance', quantity: 'resistance' },
  'detector.leakage': { field: 'leakage', quantity: 'conductance' },
  'detector.junction-capacitance': { field: 'junctionCapacitance', quantity: 'capacitance' },
  'detector.temperature': { field: 'temperature', quantity: 'temperature' },
  'detector.cathode-temperature': { field: 'heaterVoltage', quantity: 'temperature' },
  'detector.heater-voltage': { field: 'heaterVoltage', quantity: 'voltage' },
  'detector.open-voltage': { field: 'carrier', quantity: 'voltage' },
  'detector.direct-load': { field: 'resistance', quantity: 'resistance' },
  'detector.source-resistance': { field: 'sourceImpedance', quantity: 'resistance' },
  'detector.source-reactance': { field: 'sourceImpedance', quantity: 'resistance' },
  'detector.bias': { field: 'bias', quantity: 'voltage' },
  'detector.audio-frequency': { field: 'audioFrequency', quantity: 'frequency' },
  'detector.depth': { field: 'depth' },
  'tuned-circuit.inductance': { field: 'inductance', quantity: 'inductance' },
  'tuned-circuit.q': { field: 'q' },
  'tuned-circuit.frequency': { field: 'frequency', quantity: 'frequency' },
  'tuned-circuit.tap': { field: 'tap' },
  'tuned-circuit.available-power': { field: 'availablePower', quantity: 'power' },
  'tuned-circuit.load-resistance': { field: 'resistance', quantity: 'resistance' },
  'tuned-circuit.load-capacitance': { field: 'capacitance', quantity: 'capacitance' },
  'load.impedance': { field: 'impedance', quantity: 'resistance' },
  'load.inductance': { field: 'inductance', quantity: 'inductance' },
  'load.input-capacitance': { field: 'inputCapacitance', quantity: 'capacitance' },
  'transformer.core-loss': { field: 'coreLoss', quantity: 'resistance' },
} as const satisfies Readonly<Record<string, Size>>;

export type SizeId = keyof typeof SIZES;

/** The ends of what a size can be; `above` and `below` are left out of it. SI. */
export interface SizeBounds {
  readonly min?: number;
  readonly above?: number;
  readonly max?: number;
  readonly below?: number;
  readonly whole?: boolean;
}

/** Why no part, and no answer, follows from values that are possible one by one. Figures SI. */
export interface ImpossibleReasons {
  readonly 'size.out-of-bounds': { readonly size: SizeId; readonly bounds: SizeBounds; readonly value: number };
  /** The far end is higher or lower than the wire is long. */
  readonly 'aerial.too-short': { readonly length: number; readonly rise: number };
  readonly 'aerial.number-of-points': { readonly count: number };
  readonly 'aerial.number-of-joins': { readonly points: number; readonly joins: number };
  readonly 'aerial.join': { readonly index: number };
  readonly 'aerial.point-below-ground': { readonly index: number };
  readonly 'aerial.points-together': { readonly index: number };
  readonly 'aerial.wire-on-ground': { readonly index: number };
  /** The charges on the wires cannot be solved for. */
  readonly 'aerial.unsolvable': NoFigures;
  readonly 'frame.spiral-full': { readonly turns: number; readonly pitch: number; readonly side: number };
  readonly 'impedance.no-points': NoFigures;
  readonly 'impedance.not-finite': NoFigures;
  readonly 'impedance.same-frequency': { readonly frequency: number };
  readonly 'earth.rods-together': { readonly first: number; readonly second: number };
  readonly 'earth.metal-thick': { readonly diameter: number; readonly length: number };
  readonly 'earth.plate-shallow': { readonly least: number; readonly depth: number };
  readonly 'earth.soil': { readonly soils: readonly string[]; readonly soil: string };
  readonly 'earth.no-soil': NoFigures;
  readonly 'earth.range': { readonly value: number; readonly low: number; readonly high: number };
  readonly 'coil.no-coil': { readonly inductance: number };
  readonly 'coil.radius': { readonly radius: number };
  readonly 'coil.no-diameter': NoFigures;
  readonly 'coil.no-length': NoFigures;
  readonly 'coil.weave': { readonly over: number; readonly posts: number };
  readonly 'coil.place-unknown': NoFigures;
  readonly 'coil.too-much-inductance': NoFigures;
  /** A capacitor whose smallest and largest capacitance are the wrong way round. */
  readonly 'capacitor.ends': { readonly minimum: number; readonly maximum: number };
  readonly 'capacitor.sizes': NoFigures;
  readonly 'tuned-circuit.sizes': NoFigures;
  readonly 'detector.unknown': { readonly detector: string; readonly detectors: readonly string[] };
  readonly 'detector.neither-kind-nor-law': NoFigures;
  readonly 'detector.too-few-voltages': { readonly count: number };
  readonly 'detector.point-not-finite': { readonly index: number };
  readonly 'detector.unsolvable': NoFigures;
  readonly 'load.sizes': NoFigures;
  readonly 'load.impedance-below-resistance': { readonly impedance: number; readonly resistance: number };
  readonly 'transformer.sizes': NoFigures;
  /** The audio of a station so strong that the equations of the detector cannot be solved. */
  readonly 'station.too-strong': {
    readonly station: string;
    readonly voltage: number;
    readonly fieldStrength: number;
  };
  readonly 'touchstone.problems': { readonly problems: readonly TouchstoneProblem[] };
  readonly 'envelope.not-followed': NoFigures;
  readonly 'signal.too-short': NoFigures;
  readonly 'signal.tone-too-high': { readonly frequency: number };
  readonly 'signal.too-long': { readonly longest: number; readonly time: number };
  readonly 'signal.too-many-cycles': { readonly most: number; readonly cycles: number };
}

export type ImpossibleReason = Coded<ImpossibleReasons>;

/** Which field a reason is about, where it is not a size that says so itself. */
const FIELDS: Partial<Readonly<Record<ImpossibleReason['code'], string>>> = {
  'aerial.too-short': 'farHeight',
  'aerial.number-of-points': 'points',
  'aerial.point-below-ground': 'points',
  'aerial.points-together': 'points',
  'aerial.wire-on-ground': 'points',
  'aerial.unsolvable': 'points',
  'frame.spiral-full': 'turns',
  'impedance.no-points': 'points',
  'impedance.not-finite': 'points',
  'impedance.same-frequency': 'points',
  'earth.rods-together': 'spacing',
  'earth.plate-shallow': 'depth',
  'coil.weave': 'over',
  'capacitor.ends': 'minimum',
  'detector.too-few-voltages': 'points',
  'detector.point-not-finite': 'points',
  'load.impedance-below-resistance': 'impedance',
  'transformer.sizes': 'transformer',
};

/** Values that are possible one by one and lead nowhere together: the reason as facts, its message the code. */
export class ImpossibleValues extends RangeError {
  readonly reason: ImpossibleReason;
  constructor(reason: ImpossibleReason) {
    super(reason.code === 'size.out-of-bounds' ? `${reason.code}: ${reason.size}, ${reason.value}` : reason.code);
    this.reason = reason;
  }
  /** The field that the reason is about; undefined where it is about several. */
  get field(): string | undefined {
    return this.reason.code === 'size.out-of-bounds' ? SIZES[this.reason.size].field : FIELDS[this.reason.code];
  }
}

/**
 * @param accepted whether the values are possible
 * @param reason what is wrong where they are not
 * @throws ImpossibleValues unless accepted.
 */
export function demand(accepted: boolean, reason: ImpossibleReason): asserts accepted {
  if (!accepted) throw new ImpossibleValues(reason);
}

/**
 * @param size which size of a part
 * @param value SI; NaN is refused
 * @param bounds what it can be
 * @throws ImpossibleValues outside the bounds.
 */
export function demandWithin(size: SizeId, value: number, bounds: SizeBounds): void {
  const { min, above, max, below, whole } = bounds;
  const within =
    !Number.isNaN(value) &&
    (min === undefined || value >= min) &&
    (above === undefined || value > above) &&
    (max === undefined || value <= max) &&
    (below === undefined || value < below) &&
    (!whole || Number.isInteger(value));
  if (!within) throw new ImpossibleValues({ code: 'size.out-of-bounds', size, bounds, value });
}
