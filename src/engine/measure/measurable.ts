import { mutualOf } from '../built/coil-parts.ts';
import { loopOf } from '../built/loop-parts.ts';
import { type SetCircuit, setCircuit } from '../built/set-circuit.ts';
import { type Path, samePath } from '../kinds/adjustment.ts';
import { isLoop } from '../kinds/loops.ts';
import { USUAL_FREQUENCY } from '../kinds/measured/usual-errors.ts';
import { coilModel, tuningModel } from '../kinds/models.ts';
import { magnitude } from '../numerics/complex.ts';
import type { SetDescription } from '../set/description.ts';
import { valueAtPath } from '../set/write.ts';
import { COUPLING_FACTORS } from '../uncertainty/coupling-spreads.ts';
import type { PartInput } from '../uncertainty/input.ts';
import { setInputs } from '../uncertainty/inputs.ts';
import { NINETY } from '../uncertainty/spread.ts';
import type { Hertz } from '../units/quantities.ts';
import type { QuantityKind } from '../units/quantity-kind.ts';
import { type Fitted, fitted, fittedLogarithm } from './fitted.ts';
import { type PropertyId, propertyOf } from './properties.ts';

/** A figure of a set that can be measured: as calculated from the sizes, and as measured where it was. SI. */
export interface MeasurableFigure {
  readonly property: PropertyId;
  /** Where a measured value of it stands in the description. */
  readonly path: Path;
  /** Hz, of a figure that depends on it. */
  readonly at?: Hertz;
  /** From the sizes alone, its range the typical spread of such parts. */
  readonly calculated: Fitted;
  readonly measured?: Fitted;
  readonly agreement?: Agreement;
}

/** How a measured figure stands to the calculated one. */
export interface Agreement {
  /** Measured over calculated, less 1; of a level, the difference in dB. */
  readonly difference: number;
  /** The difference over the standard error of both together. */
  readonly standardErrors: number;
}

const REFERENCE_TONE: Hertz = 1000;
/** Strays are estimated, not calculated: ×/÷, 90 %. Common practice, no source. */
const STRAY = 2.3;
const SIZES = 1.02;

/**
 * The set as its sizes alone have it.
 * @param set as read
 * @returns the same without anything measured
 */
export function withoutMeasured(set: SetDescription): SetDescription {
  const bare = <P extends object>(part: P): P => ('measured' in part ? { ...part, measured: undefined } : part);
  return {
    ...set,
    aerial: bare(set.aerial),
    earth: bare(set.earth),
    coils: set.coils.map(bare),
    tuning: bare(set.tuning),
    arrangement: bare(set.arrangement),
    detector: bare(set.detector),
    load: bare(set.load),
  };
}

/**
 * Whether a description has a measured value of any of its parts.
 * @param options the set as read
 * @returns true for any but one of a station
 */
export const isMeasured = ({ aerial, earth, coils, tuning, arrangement, detector, load }: SetDescription): boolean =>
  [aerial, earth, ...coils, tuning, arrangement, detector, load].some(
    (part) => 'measured' in part && part.measured !== undefined,
  );

/**
 * A figure from its value and 90 % range.
 * @param isAmount its error is an amount in its own unit; of all others it is a share of the value
 */
export const ranged = (value: number, [low, high]: readonly [number, number], isAmount: boolean): Fitted => ({
  value,
  standardError: isAmount ? (high - low) / (2 * NINETY) : (value * Math.log(high / low)) / (2 * NINETY),
  range: [low, high],
});

const timesOrOver = (value: number, factor: number): readonly [number, number] => [value / factor, value * factor];

/**
 * Every figure of a set that has a place for a measured value, calculated and measured side by side.
 * @param set as read
 * @returns coils, capacitor, coupling, aerial, earth, detector and phones, in this order
 */
export function measurableFigures(set: SetDescription): readonly MeasurableFigure[] {
  const bare = withoutMeasured(set);
  const circuit = setCircuit(bare);
  return [
    ...windings(set, bare),
    ...capacitor(bare),
    ...between(circuit),
    ...outdoors(set, circuit),
    ...junction(circuit),
    ...phones(circuit),
  ].map((figure) => besideMeasured(set, figure));
}

/**
 * One figure by itself: only the part it is of is calculated, where that is enough.
 * @param set without anything measured
 * @param path where a measured value of the figure stands
 * @param read the set as read: a figure that depends on frequency is calculated where it was measured; left out: at the
 *   usual frequency
 * @returns undefined where the set has no such figure
 */
export function calculatedFigure(set: SetDescription, path: Path, read = set): Calculated | undefined {
  const ofWinding = path[0] === 'coils' || (path[0] === 'aerial' && isLoop(set.aerial));
  const own = ofWinding ? windings(read, set) : path[0] === 'tuning' ? capacitor(set) : [];
  const all = own.some((one) => samePath(one.path, path))
    ? own
    : path[0] === 'arrangement'
      ? between(setCircuit(set))
      : outdoors(read, setCircuit(set));
  return all.find((one) => samePath(one.path, path));
}

type Calculated = Pick<MeasurableFigure, 'property' | 'path' | 'at' | 'calculated'>;

function figure(
  property: PropertyId,
  part: Path,
  value: number,
  range: readonly [number, number],
  at?: Hertz,
): Calculated[] {
  if (!Number.isFinite(value) || !(range[1] > range[0])) return [];
  const isAmount = propertyOf(property).isAmount === true;
  if (!isAmount && !(range[0] > 0)) return [];
  const key = property.split('.')[1];
  return [{ property, path: [...part, 'measured', key], at, calculated: ranged(value, range, isAmount) }];
}

function windings(set: SetDescription, bare: SetDescription): Calculated[] {
  if (isLoop(bare.aerial)) {
    const loop = loopOf(bare.aerial, 1);
    if (!loop) return [];
    const f = (isLoop(set.aerial) && set.aerial.measured?.q?.at) || USUAL_FREQUENCY;
    const q = (2 * Math.PI * f * loop.inductance) / loop.resistanceAt(f);
    const part = ['aerial'];
    return [
      ...figure('coil.inductance', part, loop.inductance, timesOrOver(loop.inductance, 1.1)),
      ...figure('coil.q', part, q, timesOrOver(q, 1.6), f),
      ...figure('coil.selfCapacitance', part, loop.selfCapacitance, timesOrOver(loop.selfCapacitance, 1.6)),
    ];
  }
  return bare.coils.flatMap((coil, i) => {
    const model = coilModel(coil);
    const part = ['coils', i];
    const f = set.coils[i].measured?.q?.at ?? USUAL_FREQUENCY;
    const [low, high] = model.inductanceRange;
    return [
      ...figure('coil.inductance', part, model.inductance, [low / SIZES, high * SIZES]),
      ...figure('coil.q', part, model.qAt(f), model.qRangeAt(f), f),
      ...figure('coil.selfCapacitance', part, model.selfCapacitance, model.selfCapacitanceRange),
    ];
  });
}

function capacitor({ tuning }: SetDescription): Calculated[] {
  const alone = tuningModel({ ...tuning, stray: 0, trimmer: 0, padder: undefined });
  const stray = tuning.stray > 0 ? tuning.stray : 5e-12;
  return [
    ...figure('tuning.minimum', ['tuning'], alone.min, alone.minRange),
    ...figure('tuning.maximum', ['tuning'], alone.max, alone.maxRange),
    ...figure('tuning.stray', ['tuning'], stray, timesOrOver(stray, STRAY)),
  ];
}

/** Two coils that an arrangement couples, as calculated: SI, each 90 %. */
export interface CalculatedCoupling {
  readonly coupling: Fitted;
  readonly mutualInductance: Fitted;
  /** Of each coil alone. */
  readonly inductances: readonly [Fitted, Fitted];
}

/**
 * The coupling of a set's two coils.
 * @param circuit of the set
 * @returns undefined for a set that couples none, or whose coupling nothing is known of
 */
export function calculatedCoupling({ set, coils }: SetCircuit): CalculatedCoupling | undefined {
  const { arrangement } = set;
  if (arrangement.kind !== 'coupled' && arrangement.kind !== 'two circuits') return undefined;
  const [i, j] = [arrangement.aerialCoil, arrangement.coil].map((name) => set.coils.findIndex((c) => c.name === name));
  const [first, second] = [coils[i], coils[j]];
  if (!first || !second) return undefined;
  const M = Math.abs(mutualOf(first, second, arrangement)([0, first.turns], [0, second.turns]));
  const k = M / Math.sqrt(first.inductance * second.inductance);
  if (!(k > 0)) return undefined;
  const factor = COUPLING_FACTORS[arrangement.coupling === undefined ? 'placed' : 'given'];
  const [a, b] = [i, j].map((at) => {
    const { inductance, inductanceRange: range } = coilModel(set.coils[at]);
    return ranged(inductance, [range[0] / SIZES, range[1] * SIZES], false);
  });
  const share = ({ value, standardError }: Fitted): number => standardError / value;
  const coupling = ranged(k, timesOrOver(k, factor), false);
  const s = Math.hypot(share(coupling), share(a) / 2, share(b) / 2);
  return { coupling, mutualInductance: fittedLogarithm(Math.log(M), s, NINETY), inductances: [a, b] };
}

function between(circuit: SetCircuit): Calculated[] {
  const found = calculatedCoupling(circuit)?.coupling;
  return found ? figure('arrangement.coupling', ['arrangement'], found.value, found.range) : [];
}

function outdoors(set: SetDescription, circuit: SetCircuit): Calculated[] {
  const by = spreadsOf(circuit);
  const { aerial, loop, earth } = circuit;
  const measured = set.aerial.measured as { effectiveHeight?: { at?: Hertz }; resistance?: { at?: Hertz } } | undefined;
  const f = measured?.effectiveHeight?.at ?? USUAL_FREQUENCY;
  const height = (aerial ?? loop)?.effectiveHeightAt(f) ?? 0;
  const tall = figure('aerial.effectiveHeight', ['aerial'], height, by('effective height', height), f);
  if (!aerial) return tall;
  const at = measured?.resistance?.at ?? USUAL_FREQUENCY;
  const resistance = aerial.resistanceAt(at) + earth.impedanceAt(at).re;
  return [
    ...figure('aerial.capacitance', ['aerial'], aerial.capacitance, by('aerial capacitance', aerial.capacitance)),
    ...figure('aerial.resistance', ['aerial'], resistance, timesOrOver(resistance, 3), at),
    ...tall,
    ...figure('earth.resistance', ['earth'], earth.resistance, earth.range),
  ];
}

function junction(circuit: SetCircuit): Calculated[] {
  const { detector, set } = circuit;
  const by = spreadsOf(circuit);
  const { law } = detector;
  if (!law || set.detector.kind === 'valve' || set.detector.kind === 'measured') return [];
  const part = ['detector'];
  const ideality = setInputs(circuit).find(({ id }) => id === 'ideality');
  const n = (law.slopeVoltage / (1.380649e-23 * detector.temperature)) * 1.602176634e-19;
  return [
    ...figure(
      'detector.saturationCurrent',
      part,
      law.saturationCurrent,
      by('saturation current', law.saturationCurrent),
    ),
    ...(ideality
      ? figure('detector.ideality', part, n, [Math.max(0.5, n + ideality.spread.low), n + ideality.spread.high])
      : []),
    ...figure('detector.seriesResistance', part, law.seriesResistance, by('series resistance', law.seriesResistance)),
    ...(law.leakage > 0 ? figure('detector.leakage', part, 1 / law.leakage, by('leakage', 1 / law.leakage)) : []),
  ];
}

function phones(circuit: SetCircuit): Calculated[] {
  const { load, set } = circuit;
  const { kind } = set.load;
  if (kind === 'amplifier') return [];
  const by = spreadsOf(circuit);
  const part = ['load'];
  const { level } = load.sensitivity;
  const spread = setInputs(circuit).find(({ id }) => id === 'sensitivity')!.spread;
  const z = magnitude(load.transducerImpedanceAt(REFERENCE_TONE));
  return [
    ...(kind === 'phones'
      ? [
          ...figure('load.resistance', part, set.load.resistance, timesOrOver(set.load.resistance, 1.15)),
          ...figure('load.impedance', part, z, by('load impedance', z), REFERENCE_TONE),
        ]
      : kind === 'crystal earpiece'
        ? figure('load.capacitance', part, set.load.capacitance, by('load impedance', set.load.capacitance))
        : figure('load.impedance', part, set.load.impedance, timesOrOver(set.load.impedance, 1.3))),
    ...figure('load.sensitivity', part, level, [level + spread.low, level + spread.high]),
  ];
}

/** The 90 % range of a value by the spread of an input of the set; none where it has no such input. */
const spreadsOf = (circuit: SetCircuit) => {
  const inputs = setInputs(circuit);
  return (id: PartInput, value: number): readonly [number, number] => {
    const spread = inputs.find((input) => input.id === id)?.spread;
    return spread
      ? [(value * spread.low) / spread.middle, (value * spread.high) / spread.middle]
      : timesOrOver(value, 1.15);
  };
};

/** A figure beside what the description says was measured of it. */
function besideMeasured(set: SetDescription, calculated: Calculated): MeasurableFigure {
  const written = valueAtPath(set, calculated.path) as { value: number; error?: number } | undefined;
  if (!written) return calculated;
  const { isAmount, usual } = propertyOf(calculated.property);
  const error = written.error ?? usual;
  const measured = isAmount
    ? fitted(written.value, error, NINETY)
    : fittedLogarithm(Math.log(written.value), error, NINETY);
  return { ...calculated, measured, agreement: agreementOf(calculated.property, calculated.calculated, measured) };
}

/**
 * How a measured figure agrees with the calculated one, both with their errors.
 * @param property what it is of
 * @param calculated as its sizes have it
 * @param measured as measured
 * @returns the relative difference (of a level in dB), and how many standard errors of both together that is
 */
const agreementOf = (property: PropertyId, calculated: Fitted, measured: Fitted): Agreement =>
  agreementBetween(propertyOf(property), calculated, measured);

/**
 * How two figures of the same thing agree, both with their errors.
 * @param of its quantity, and whether its error is an amount
 * @returns as `agreementOf`
 */
export function agreementBetween(
  { isAmount, quantity }: { readonly isAmount?: boolean; readonly quantity?: QuantityKind },
  calculated: Fitted,
  measured: Fitted,
): Agreement {
  const apart = measured.value - calculated.value;
  if (isAmount) {
    const s = Math.hypot(calculated.standardError, measured.standardError);
    return { difference: quantity === 'level' ? apart : apart / calculated.value, standardErrors: apart / s };
  }
  const s = Math.hypot(calculated.standardError / calculated.value, measured.standardError / measured.value);
  return { difference: apart / calculated.value, standardErrors: Math.log(measured.value / calculated.value) / s };
}
