import { type CautionCode, supplyCautions } from '../facts/cautions.ts';
import { type Path, samePath } from '../kinds/adjustment.ts';
import type { SetDescription } from '../set/description.ts';
import type { Measurable } from '../uncertainty/input.ts';
import type { Observation } from './joint.ts';
import { type MeasurableFigure, measurableFigures, withoutMeasured } from './measurable.ts';
import {
  dialDoubt,
  isShunted,
  levelNarrowing,
  type Method,
  type Narrowing,
  type WantedStation,
} from './measure-next.ts';
import type { Equipment } from './measurement.ts';
import { MEASUREMENTS, type MeasurementKind } from './measurements.ts';
import { type PropertyId, propertyOf } from './properties.ts';
import { isProperty } from './readings.ts';
import { capacitorOf } from './scale-of-capacitor.ts';
import { tunedCoil } from './tuned-coil.ts';

/** An instrument that one has or has not; all else that a measurement takes is bought for little or made. */
export const INSTRUMENTS = [
  'multimeter',
  'signal generator',
  'oscilloscope',
  'sound card',
  'network analyser',
  'capacitance meter',
  'inductance meter',
] as const;
/** One of `INSTRUMENTS`. */
export type Instrument = (typeof INSTRUMENTS)[number];

const SERVES_AS: Readonly<Record<Instrument, readonly Equipment[]>> = {
  multimeter: ['voltmeter', 'ammeter', 'ohmmeter'],
  'signal generator': ['signal generator'],
  oscilloscope: ['oscilloscope', 'voltmeter'],
  'sound card': ['sound card'],
  'network analyser': ['network analyser'],
  'capacitance meter': ['capacitance meter'],
  'inductance meter': ['inductance meter'],
};
const AT_HAND: readonly Equipment[] = [
  'set',
  'ears',
  'station',
  'battery',
  'known capacitors',
  'known resistors',
  'coupling transformer',
  'auxiliary earths',
  'dummy aerial',
];

/** Which part of a set a measurement is of. */
export type MeasuredPart = 'coil' | 'tuning' | 'aerial' | 'earth' | 'detector' | 'load' | 'station';

const PARTS: Readonly<Record<MeasurementKind, readonly MeasuredPart[]>> = {
  resonance: ['coil'],
  dial: ['coil', 'tuning'],
  detector: ['detector'],
  width: ['coil'],
  decay: ['coil'],
  'decay-record': ['coil'],
  'equal-levels': ['coil'],
  'capacitance-width': ['coil'],
  'detector-leakage': ['detector'],
  'detector-voltmeter': ['detector'],
  'detector-bridge': ['detector'],
  'mutual-inductance': ['coil'],
  'double-hump': ['coil'],
  'aerial-substitution': ['aerial', 'earth'],
  'aerial-replacement': ['aerial', 'earth'],
  'aerial-resistance': ['aerial', 'earth'],
  'earth-electrodes': ['earth'],
  'earth-comparison': ['earth'],
  'phones-resistance': ['load'],
  'phones-impedance': ['load'],
  'phones-sound-card': ['load'],
  audibility: ['load'],
  'field-strength': ['station', 'earth'],
  'analyser-coil': ['coil'],
  'analyser-capacitor': ['tuning'],
  'analyser-aerial': ['aerial', 'earth'],
  'analyser-earpiece': ['load'],
  'analyser-transformer': ['load'],
  'analyser-peak': ['coil'],
};

/** What a figure read off an instrument takes; of all others somebody else has measured it. */
const READ_BY: Partial<Record<PropertyId, readonly Equipment[]>> = {
  'coil.inductance': ['inductance meter'],
  'tuning.minimum': ['capacitance meter'],
  'tuning.maximum': ['capacitance meter'],
  'tuning.stray': ['capacitance meter'],
  'aerial.capacitance': ['capacitance meter'],
  'load.capacitance': ['capacitance meter'],
};

/** A measurement that a set and what one has allow. */
export interface OfferedMeasurement {
  /** One of `MEASUREMENTS`, or a figure read off an instrument. */
  readonly kind: MeasurementKind | 'value';
  readonly part: MeasuredPart;
  /** Of a coil its place in the list, 0 for a loop's winding. */
  readonly coil?: number;
  /** What of the set it settles. */
  readonly properties: readonly PropertyId[];
  readonly equipment: readonly Equipment[];
  readonly cautions: readonly CautionCode[];
  /** Of the station's answer; left out where it narrows neither level nor place on the dial. */
  readonly narrowing?: Narrowing;
}

const isSupplied = (set: SetDescription): boolean => set.detector.kind === 'valve';
/** Instruments that may run from the mains. */
const MAINS: ReadonlySet<Equipment> = new Set([
  'signal generator',
  'oscilloscope',
  'sound card',
  'network analyser',
  'coupling transformer',
]);

/**
 * What can hurt while a measurement is made: what its kind says, what touches an aerial or an earth, instruments that run
 * from the mains, and what the set itself is supplied by.
 * @param kind one of `MEASUREMENTS`, or a figure read off an instrument
 * @param set that is measured; left out: of any
 * @param part that a figure read off an instrument is of
 * @returns codes, each once
 */
export function measuringCautions(
  kind: MeasurementKind | 'value',
  set?: SetDescription,
  part?: MeasuredPart,
): readonly CautionCode[] {
  const parts = kind === 'value' ? (part ? [part] : []) : PARTS[kind];
  const { equipment, cautions } = kind === 'value' ? { equipment: [], cautions: [] } : MEASUREMENTS[kind];
  const takes: readonly Equipment[] = equipment;
  const touchesSet = takes.includes('set') || parts.includes('detector');
  const outdoors = parts.includes('aerial') || takes.includes('station');
  return [
    ...new Set<CautionCode>([
      ...cautions,
      ...(outdoors ? (['aerial.power-lines', 'aerial.thunder'] as const) : []),
      ...(parts.includes('earth') ? (['earth.mains-and-gas'] as const) : []),
      ...(takes.some((one) => MAINS.has(one)) ? (['bench.mains-isolated'] as const) : []),
      ...(touchesSet && set && isSupplied(set) ? (['detector.hot-valve', 'detector.heater-supply'] as const) : []),
      ...(touchesSet && set?.load.kind === 'amplifier' ? supplyCautions(set.load.supply) : []),
    ]),
  ];
}

/** Effective height has no kind of its own yet: it is measured as a field is. */
const kindOf = (method: Method): MeasurementKind => (method === 'effective-height' ? 'field-strength' : method);

/**
 * What can hurt while a measurement named by what it takes is made.
 * @param method as `nextMeasurements` names it
 * @param set that is measured
 * @returns codes, each once
 */
export const methodCautions = (method: Method, set: SetDescription): readonly CautionCode[] =>
  measuringCautions(kindOf(method), set);

/** What makes the range of the level, by the part that is measured. */
const MAKES: Readonly<Record<MeasuredPart, Measurable>> = {
  coil: 'coil',
  tuning: 'tuning capacitor',
  aerial: 'aerial',
  earth: 'earth',
  detector: 'detector',
  load: 'phones',
  station: 'field strength',
};
/** Of a coil and of phones only these make the level: Q, and what they give for what goes in. */
const LOUD: ReadonlySet<string> = new Set(['coil.q', 'load.sensitivity']);

const onDial = (property: PropertyId): boolean => property === 'coil.inductance' || property.startsWith('tuning.');

/**
 * The measurements of a set that one can make, those that narrow the wanted station's answer most first.
 * @param set as read
 * @param station whose answer is to be narrowed
 * @param has instruments at hand
 * @returns kinds with the part they are of, what they settle, cautions, and the width of the range now and expected
 */
export function offeredMeasurements(
  set: SetDescription,
  station: WantedStation,
  has: readonly Instrument[],
): readonly OfferedMeasurement[] {
  const hand = new Set<Equipment>([...AT_HAND, ...has.flatMap((one) => SERVES_AS[one])]);
  const figures = measurableFigures(withoutMeasured(set));
  const doubt = dialDoubt(set, station.frequency);
  const narrowingOf = (
    kind: MeasurementKind | 'value',
    part: MeasuredPart,
    of: readonly MeasurableFigure[],
  ): Narrowing | undefined => {
    const loud =
      part === 'coil' || part === 'load'
        ? of.some(({ property }) => LOUD.has(property)) || (kind === 'audibility' && !isShunted(set))
        : part !== 'tuning';
    const level = loud ? levelNarrowing(station, MAKES[part]) : undefined;
    const readings = kind === 'dial' ? doubt?.ends : of.filter(({ property }) => onDial(property)).map(expected);
    const dial = doubt && readings && readings.length > 0 ? doubt.narrowing(readings) : undefined;
    if (!level || !dial) return level ?? dial;
    return gainOf(dial) > gainOf(level) ? dial : level;
  };
  const offered = placesOf(set, figures).flatMap(({ part, coil, own }): OfferedMeasurement[] => {
    const fitted = (Object.keys(MEASUREMENTS) as MeasurementKind[]).flatMap((kind): OfferedMeasurement[] => {
      const { equipment: usual, equipmentInstead, yields } = MEASUREMENTS[kind];
      const equipment = [usual, equipmentInstead ?? usual].find((all) => all.every((one) => hand.has(one)));
      if (PARTS[kind][0] !== part || !equipment) return [];
      const settles: readonly string[] = Object.values(yields).flatMap((one) =>
        isProperty(one.settles) ? one.settles : [],
      );
      const of = own.filter(({ property }) => settles.includes(property));
      const others = figures.filter(
        ({ property }) => settles.includes(property) && !of.some((o) => o.property === property),
      );
      if (!isPossible(set, kind, coil, of)) return [];
      const narrowing = narrowingOf(kind, part, [...of, ...(kind === 'dial' ? others : [])]);
      return [
        {
          kind,
          part,
          coil,
          properties: [...new Set([...of, ...(kind === 'dial' ? others : [])].map(({ property }) => property))],
          equipment,
          cautions: measuringCautions(kind, set),
          narrowing,
        },
      ];
    });
    const read = own.flatMap((one): OfferedMeasurement[] => {
      const equipment = READ_BY[one.property] ?? [];
      if (!equipment.every((e) => hand.has(e))) return [];
      return [
        {
          kind: 'value',
          part,
          coil,
          properties: [one.property],
          equipment,
          cautions: measuringCautions('value', set, part),
          narrowing: narrowingOf('value', part, [one]),
        },
      ];
    });
    return [...fitted, ...read];
  });
  const worth = ({ narrowing }: OfferedMeasurement): number => (narrowing ? gainOf(narrowing) : 0);
  // A figure from elsewhere comes last among equals: it is a measurement only if somebody made it.
  return offered.toSorted(
    (a, b) => Math.round(1000 * (worth(b) - worth(a))) || Number(a.kind === 'value') - Number(b.kind === 'value'),
  );
}

const gainOf = ({ before, after }: Narrowing): number => (before > 0 ? 1 - after / before : 0);

/** What a hand instrument would read of a figure. */
function expected({ property, path, calculated }: MeasurableFigure): Observation {
  const { isAmount, usual } = propertyOf(property);
  const { value } = calculated;
  return { of: 'figure', property, path, value, standardError: isAmount ? usual : usual * value };
}

interface MeasuredPlace {
  readonly part: MeasuredPart;
  readonly coil?: number;
  /** What of it can be measured. */
  readonly own: readonly MeasurableFigure[];
}

function placesOf(set: SetDescription, figures: readonly MeasurableFigure[]): MeasuredPlace[] {
  const within = (path: Path) => figures.filter((one) => samePath(one.path.slice(0, path.length), path));
  const ofCoil = (one: MeasurableFigure) => one.property.startsWith('coil.');
  const loop = within(['aerial']).filter(ofCoil);
  const coils: MeasuredPlace[] =
    loop.length > 0
      ? [{ part: 'coil', coil: 0, own: loop }]
      : set.coils.map((_, coil) => ({ part: 'coil', coil, own: within(['coils', coil]) }));
  return [
    ...coils,
    { part: 'tuning', own: within(['tuning']) },
    { part: 'aerial', own: within(['aerial']).filter((one) => !ofCoil(one)) },
    { part: 'earth', own: within(['earth']) },
    { part: 'detector', own: within(['detector']) },
    { part: 'load', own: within(['load']) },
    { part: 'station', own: [] },
  ];
}

function isPossible(
  set: SetDescription,
  kind: MeasurementKind,
  coil: number | undefined,
  of: readonly MeasurableFigure[],
): boolean {
  switch (kind) {
    case 'dial':
      return of.length > 0 && coil === tunedCoil(set) && capacitorOf(set) !== undefined;
    case 'mutual-inductance':
    case 'double-hump':
      return set.coils.length > 1 && coil === 0;
    case 'audibility':
      return set.load.kind !== 'amplifier';
    case 'analyser-transformer':
      return set.load.kind !== 'amplifier' && set.load.transformer !== undefined;
    case 'analyser-capacitor':
    case 'field-strength':
      return true;
    case 'aerial-substitution':
      return of.length > 0 && 'law' in set.tuning && set.tuning.law === 'semicircular';
    default:
      return of.length > 0;
  }
}
