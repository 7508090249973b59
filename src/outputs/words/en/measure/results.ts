import type { DifferenceCause } from '../../../../engine/measure/causes.ts';
import type { ExplainingSize, ExplainingSizeId } from '../../../../engine/measure/explaining-sizes.ts';
import type { Fitted } from '../../../../engine/measure/fitted.ts';
import type { Agreement } from '../../../../engine/measure/measurable.ts';
import type { Method, Narrowing, NextMeasurement } from '../../../../engine/measure/measure-next.ts';
import type { Equipment } from '../../../../engine/measure/measurement.ts';
import type { MeasurementKind } from '../../../../engine/measure/measurements.ts';
import type { PropertyId } from '../../../../engine/measure/properties.ts';
import { formatNumber, formatQuantity } from '../../../../engine/units/format.ts';
import type { QuantityKind } from '../../../../engine/units/parse.ts';
import { safeText } from '../../../../engine/units/safe-text.ts';
import { wholeDB } from '../../figures.ts';
import { numberSpan, spanBeside } from '../../ranges.ts';

/** What a property of a set is called. */
export const propertyNames: Readonly<Record<PropertyId, string>> = {
  'coil.inductance': 'Inductance of the coil',
  'coil.q': 'Q of the coil',
  'coil.selfCapacitance': 'Self-capacitance of the coil',
  'tuning.minimum': 'Capacitor fully open',
  'tuning.maximum': 'Capacitor fully meshed',
  'tuning.stray': 'Strays',
  'arrangement.coupling': 'Coupling coefficient of the coils',
  'aerial.capacitance': 'Capacitance of the aerial',
  'aerial.resistance': 'Resistance of aerial and earth',
  'aerial.effectiveHeight': 'Effective height of the aerial',
  'earth.resistance': 'Resistance of the earth',
  'detector.saturationCurrent': 'Saturation current of the detector',
  'detector.ideality': 'Ideality of the detector',
  'detector.seriesResistance': 'Series resistance of the detector',
  'detector.leakage': 'Leakage of the detector',
  'load.resistance': 'Direct resistance of the phones',
  'load.impedance': 'Impedance of the phones at 1 kHz',
  'load.capacitance': 'Capacitance of the earpiece',
  'load.sensitivity': 'Sensitivity of the phones',
  'station.fieldStrength': 'Field strength',
};

/** Of these the name says the frequency already. */
const AT_ONE_FREQUENCY: ReadonlySet<string> = new Set<PropertyId>(['load.impedance']);

/**
 * What a measured figure is called, with the frequency that it is for: "Q of the coil at 909 kHz".
 * @param figure its property, or its own name where it is none of the set's; frequency in Hz
 * @returns a name for people
 */
export function measuredName({
  property,
  name = '',
  at,
}: {
  readonly property?: PropertyId;
  readonly name?: string;
  readonly at?: number;
}): string {
  const plain = property ? propertyNames[property] : figureName(name);
  return at === undefined || (property && AT_ONE_FREQUENCY.has(property))
    ? plain
    : `${plain} at ${formatQuantity(at, 'frequency', 4)}`;
}

const KINDS: Readonly<Record<MeasurementKind | 'value', string>> = {
  value: 'Instrument reading',
  resonance: 'Resonance with known capacitors',
  dial: 'Dial readings',
  detector: 'Curve of the detector',
  width: 'Width of the resonance',
  decay: 'Decay of an oscillation',
  'decay-record': 'Decay from a recording',
  'equal-levels': 'Width between two equal levels',
  'capacitance-width': 'Width by change of capacitance',
  'detector-leakage': 'Curve of the detector with its leakage',
  'detector-voltmeter': 'Curve of the detector with one voltmeter',
  'detector-bridge': 'Curve of the detector by a bridge',
  'mutual-inductance': 'Two coils in series, aiding and opposing',
  'double-hump': 'Two resonances of coupled circuits',
  'aerial-substitution': 'Aerial by substitution',
  'aerial-replacement': 'Aerial replaced by a capacitor',
  'aerial-resistance': 'Aerial with known resistors in its lead',
  'earth-electrodes': 'Earth with two auxiliary earths',
  'earth-comparison': 'Earth by comparison',
  'phones-resistance': 'Direct resistance of the phones',
  'phones-impedance': 'Phones compared with a resistor',
  'phones-sound-card': 'Phones by sound card',
  audibility: 'Audibility by shunt',
  'field-strength': 'Field strength by direct current',
  'analyser-coil': 'Coil by network analyser',
  'analyser-capacitor': 'Capacitor by network analyser',
  'analyser-aerial': 'Aerial by network analyser',
  'analyser-earpiece': 'Earpiece by network analyser',
  'analyser-transformer': 'Transformer by network analyser',
  'analyser-peak': 'Resonance by network analyser',
};

/**
 * What a kind of measurement is called.
 * @param kind id of the kind
 * @returns a name for people
 */
export const measurementName = (kind: MeasurementKind | 'value'): string => KINDS[kind];

/**
 * How a value was measured, as a description keeps it.
 * @param method ids of kinds with commas between, as readings leave them, or anything that was written by hand
 * @returns names of the kinds; what is no id as it is
 */
export const methodText = (method: string): string =>
  method
    .split(', ')
    .map((one) => (Object.hasOwn(KINDS, one) ? KINDS[one as MeasurementKind] : one))
    .join(', ');

const FIGURES: Readonly<Record<string, string>> = {
  resonance: 'Resonance',
  frequency: 'Frequency of the oscillation',
  q: 'Q',
  loadedQ: 'Loaded Q',
  inductance: 'Inductance',
  capacitance: 'Capacitance',
  resistance: 'Resistance',
  selfCapacitance: 'Self-capacitance',
  strayCapacitance: 'Strays',
  acrossCapacitor: 'Strays with trimmer and self-capacitance of the coil',
  mutualInductance: 'Mutual inductance',
  couplingCoefficient: 'Coupling coefficient',
  zeroBiasResistance: 'Zero-bias resistance',
  saturationCurrent: 'Saturation current',
  ideality: 'Ideality',
  seriesResistance: 'Series resistance',
  leakage: 'Leakage',
  parallelConductance: 'Parallel conductance',
  naturalFrequency: 'Natural frequency',
  circuitResistance: 'Resistance of the circuit',
  difference: 'Difference',
  impedance: 'Impedance',
  phase: 'Phase',
  audibilityFactor: 'Audibility factor',
  levelAboveThreshold: 'Level above the hearing threshold',
  emf: 'emf',
  fieldStrength: 'Field strength',
  dissipation: 'Dissipation factor',
  primaryInductance: 'Inductance of the primary',
  leakageInductance: 'Leakage inductance',
};

/**
 * What a figure is called that a measurement gives beside those of the description.
 * @param name id of the figure
 * @returns a name for people; the id where it has none
 */
export const figureName = (name: string): string => FIGURES[name] ?? name;

const shown = (value: number, quantity: QuantityKind | undefined): string =>
  quantity ? formatQuantity(value, quantity) : formatNumber(value, 3);

/** "182 µH (179–185)": a figure with its 90 % range. */
export function fittedText({ value, range: [low, high] }: Fitted, quantity: QuantityKind | undefined): string {
  const figure = shown(value, quantity);
  if (quantity === undefined) return `${figure} (${numberSpan([low, high])})`;
  // Levels have signs, and the Celsius scale a zero of its own.
  return quantity === 'level' || quantity === 'temperature'
    ? `${figure} (${shown(low, quantity)} to ${shown(high, quantity)})`
    : `${figure} ${spanBeside(value, [low, high], quantity)}`;
}

/** Below this share a difference is none worth a word. */
const SAME = 0.005;

/** "12 % below, 2.1 standard errors": measured against calculated. */
export function agreementText({ difference, standardErrors }: Agreement, isLevel = false): string {
  const errors = `${Math.abs(standardErrors).toFixed(1)} standard errors`;
  if (isLevel)
    return `${Math.abs(difference).toFixed(1)} dB ${difference < 0 ? 'below' : 'above'} the calculated value, ${errors}`;
  if (Math.abs(difference) < SAME) return `equal to the calculated value within 0.5 %, ${errors}`;
  const percent = Math.abs(difference * 100);
  const size = percent >= 300 ? `${(1 + difference).toFixed(0)} times` : `${percent.toFixed(percent < 10 ? 1 : 0)} %`;
  if (percent >= 300 && difference > 0) return `${size} the calculated value, ${errors}`;
  return `${size} ${difference < 0 ? 'below' : 'above'} the calculated value, ${errors}`;
}

/** A measured figure beside the calculated one, and which size would explain the difference. */
interface Difference {
  readonly agreement: Agreement;
  readonly quantity?: QuantityKind;
  readonly sizes?: readonly ExplainingSize[];
}

const CAUSES: Readonly<Record<DifferenceCause, string>> = {
  'wider-turns': 'turns wider apart than described',
  'metal-near': 'metal near the coil',
  'leads-in-series': 'inductance of the leads',
  'instrument-loads': 'the instrument loads the circuit',
  'damp-former': 'a damp former or lossy varnish',
  'better-wire': 'better wire or former than described',
  'more-wiring': 'more wiring than estimated, or a probe across it',
  'less-wiring': 'less wiring than estimated',
  'aerial-connected': 'the aerial was connected',
  'marking-off': 'the marking is off',
  'zero-of-meter': 'the zero of the capacitance meter with its leads',
  'longer-lead-in': 'a longer lead-in, or buildings and trees near the wire',
  'shorter-wire': 'a shorter wire than described',
  'dry-soil': 'drier soil than described',
  'wet-soil': 'wetter soil than described',
  'electrodes-near': 'auxiliary earths too near',
  'bad-joint': 'a bad joint',
  'other-spot': 'another spot or device than described',
  'warm-junction': 'a warmer junction',
  'meter-resistance': 'resistance of the meter',
  'weak-magnets': 'weak magnets or a bent diaphragm',
  'other-frequency': 'measured at another frequency',
};

const count = (one: string, many: string) => ({
  as: (n: number) => `${formatNumber(n, 4)} ${n === 1 ? one : many}`,
  not: (n: number) => formatNumber(n, 4),
});
const sized = (name: string, quantity?: QuantityKind) => {
  const size = (value: number): string => (quantity ? formatQuantity(value, quantity, 3) : formatNumber(value, 3));
  return { as: (value: number) => `${name} of ${size(value)}`, not: size };
};

const SIZES: Readonly<Record<ExplainingSizeId, { as: (value: number) => string; not: (value: number) => string }>> = {
  'coil.turns': count('turn', 'turns'),
  'coil.turnsPerLayer': count('turn in a layer', 'turns in a layer'),
  'coil.formerDiameter': sized('a former', 'length'),
  'coil.innerDiameter': sized('an inner diameter', 'length'),
  'coil.pegCircle': sized('a peg circle', 'length'),
  'coil.pitch': sized('a turn spacing', 'length'),
  'coil.layerSpacing': sized('a layer spacing', 'length'),
  'coil.perTurnSquared': sized('an A_L', 'inductance'),
  'loop.turns': count('turn', 'turns'),
  'loop.side': sized('a frame with a side', 'length'),
  'loop.pitch': sized('a turn spacing', 'length'),
  'loop.winding': sized('a winding length', 'length'),
  'loop.permeability': sized('a permeability'),
  'tuning.vanes': count('vane', 'vanes'),
  'tuning.sheets': count('sheet', 'sheets'),
  'tuning.gap': sized('a gap', 'length'),
  'tuning.thickness': sized('a dielectric thickness', 'length'),
  'tuning.outerRadius': sized('a vane radius', 'length'),
  'tuning.width': sized('a plate width', 'length'),
  'tuning.length': sized('a plate length', 'length'),
  'tuning.permittivity': sized('a permittivity'),
  'aerial.length': sized('an aerial length', 'length'),
  'aerial.height': sized('an aerial height', 'length'),
  'earth.length': sized('an earth length', 'length'),
  'earth.side': sized('a plate side', 'length'),
  'earth.soilResistivity': sized('a soil resistivity', 'resistivity'),
};

/** "as 48 turns would give (not 51), or a former of 61 mm (not 63 mm)": one size each that makes the difference. */
function sizesText(sizes: readonly ExplainingSize[]): string {
  const [first, ...others] = sizes.map(({ size, described, explaining }) => {
    const { as, not } = SIZES[size];
    return { as: as(explaining), not: `(not ${not(described)})` };
  });
  return first
    ? [`as ${first.as} would give ${first.not}`, ...others.map((one) => `or ${one.as} ${one.not}`)].join(', ')
    : '';
}

/** "12 % below the calculated value, 2.1 standard errors: as 48 turns would give (not 51)." */
export function differenceText({ agreement, quantity, sizes = [] }: Difference): string {
  const agreed = agreementText(agreement, quantity === 'level');
  return sizes.length > 0 ? `${agreed}: ${sizesText(sizes)}` : agreed;
}

/** What may make the difference, the likeliest first. */
export const causesText = (causes: readonly DifferenceCause[]): string =>
  `${causes.length === 1 ? 'Possible cause' : 'Possible causes'}: ${causes.map((cause) => CAUSES[cause]).join('; ')}.`;

const METHODS: Readonly<Record<Method, string>> = {
  dial: 'Dial positions of two stations near the ends of the band, aerial disconnected or loosely coupled',
  'earth-electrodes': 'Earth resistance with two auxiliary earths',
  width: 'Q of the coil from the width of its resonance',
  detector: 'Curve of the detector: current at several voltages',
  audibility: 'Sensitivity of the phones: shunt them until the station is just audible',
  'aerial-substitution':
    'Aerial by substitution: dial positions with the aerial and with known capacitors in its place',
  'field-strength': 'Field strength from the direct current of the calibrated set',
  'effective-height': 'Effective height: the emf of a station of known field strength',
  'mutual-inductance': 'Coupling of the coils: their inductance in series, aiding and opposing',
};

const EQUIPMENT: Readonly<Record<Equipment, string>> = {
  set: 'the set',
  ears: 'ears',
  station: 'stations',
  voltmeter: 'voltmeter',
  ammeter: 'ammeter',
  ohmmeter: 'ohmmeter',
  'signal generator': 'signal generator',
  oscilloscope: 'oscilloscope',
  'sound card': 'sound card',
  'network analyser': 'network analyser',
  'capacitance meter': 'capacitance meter',
  'inductance meter': 'inductance meter',
  battery: 'battery',
  'known capacitors': 'known capacitors',
  'known resistors': 'known resistors',
  'coupling transformer': 'coupling transformer',
  'auxiliary earths': 'two auxiliary earths',
  'dummy aerial': 'dummy aerial',
};

/** Names of what a measurement takes. */
export const equipmentNames = (equipment: readonly Equipment[]): string[] => equipment.map((one) => EQUIPMENT[one]);

/** "level at the ear 14 dB → 9 dB": the width of the 90 % range of an answer now, and expected after a measurement. */
export function narrowingText({ narrows, before, after }: Narrowing): string {
  const width = (value: number): string =>
    narrows === 'level' ? `${wholeDB(value)} dB` : `${formatNumber(value * 100, 2)} % of the scale`;
  const what = narrows === 'level' ? 'level at the ear' : 'place on the dial';
  return `range of the ${what} ${width(before)} → ${width(after)}`;
}

/** One measurement worth making: what it takes, and how much narrower the answer becomes. */
export const nextMeasurementText = ({ method, equipment, ...narrowing }: NextMeasurement): string =>
  `${METHODS[method]} (${equipmentNames(equipment).join(', ')}): ${narrowingText(narrowing)}`;

/** `faintwave measure`. */
export const measureAnswer = {
  title: (set: string): string => `${set}: measured and calculated`,
  /** "It fits 909 kHz, Northern, not 927 kHz.": what stands where a misread station was found. */
  suspect: (index: number, read: number, there: number | undefined, station: string | undefined): string => {
    const given = formatQuantity(read, 'frequency', 4);
    return there === undefined
      ? `Reading ${index} does not fit the others and is left out: no station can stand there, nor ${given}.`
      : `Reading ${index} does not fit the others and is left out: this fits ${formatQuantity(there, 'frequency', 4)}${station === undefined ? '' : `, ${station}`}, not ${given}.`;
  },
  heading: (name: string, of: string | undefined, date: string | undefined): string =>
    [name, of, date].filter((part) => part !== undefined && part !== '').join(', '),
  figure: (name: string, measured: string): string => `${name}: ${measured}`,
  beside: (calculated: string, agreement: string): string => `calculated ${calculated}; measured ${agreement}`,
  withAll: (after: string): string => `with all readings ${after}`,
  unfitAt: (path: string, sentence: string): string => (path === '' ? sentence : `${path}: ${sentence}`),
  nothingMeasured: 'Nothing is measured in this description.',
  together: 'All readings together (90 % ranges)',
  joint: (name: string, before: string, after: string): string => `${name}: ${before} → ${after}`,
  agree: 'Description and readings agree.',
  disagree: (name: string, deviations: number): string =>
    `Description and readings disagree; furthest off is ${name.toLowerCase()}, by ${Math.abs(deviations).toFixed(1)} standard deviations of what was known before: check that reading and that part.`,
  next: 'What to measure next',
  nothingNext: 'No measurement would narrow the answer by more than 3 %.',
  used: (count: number): string => `${count} measured ${count === 1 ? 'value' : 'values'} put into the description`,
  problemLine: (line: number, problem: string): string => `line ${line}, ${problem}`,
  keptReadings: 'the readings in the description',
  /** Headings of a table, as written. */
  columnsNotRead: (columns: readonly string[]): string =>
    `Not read, since this measurement has no such column: ${columns.map((one) => `“${safeText(one).slice(0, 40)}”`).join(', ')}.`,
} as const;
