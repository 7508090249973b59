import { type AerialReading, fitAerialCapacitance } from '../aerial-capacitance-fit.ts';
import { fitAerialResistance } from '../aerial-resistance-fit.ts';
import { POINTER } from '../dial-fit.ts';
import { capacitorRead } from '../dial-of-set.ts';
import { fitEarthComparison, fitThreeElectrodes } from '../earth-fit.ts';
import { fitField } from '../field-fit.ts';
import { type Measured, measurement, type Yield } from '../measurement.ts';
import { capacitanceOn, capacitorOf } from '../scale-of-capacitor.ts';
import {
  CAPACITANCE,
  CURRENT,
  DIAL_CAPACITOR,
  FREQUENCY,
  POSITION,
  RELATIVE_ERROR,
  RESISTANCE,
  VOLTAGE,
} from './common-fields.ts';

const LENGTH = { type: 'quantity', quantity: 'length', above: 0, max: 1000 } as const;

const AERIAL = {
  capacitance: { quantity: 'capacitance', settles: 'aerial.capacitance' },
  naturalFrequency: { quantity: 'frequency' },
} as const satisfies Readonly<Record<string, Yield>>;

/** A known capacitor: a share of it, and of its leads, F. */
const KNOWN = { error: 0.01, floor: 5e-13 };

function aerialOf(readings: readonly AerialReading[]): Measured {
  const { warnings, ...figures } = fitAerialCapacitance(readings);
  return { figures, warnings };
}

export const aerialSubstitution = measurement({
  fields: {
    capacitor: DIAL_CAPACITOR,
    points: {
      type: 'list',
      least: 1,
      columns: {
        frequency: FREQUENCY,
        without: POSITION,
        with: POSITION,
        series: { ...CAPACITANCE, above: 0, optional: true },
      },
    },
    positionError: { type: 'number', min: 1e-6, max: 1, optional: true },
  },
  readings: 'points',
  yields: AERIAL,
  equipment: ['set', 'ears', 'station'],
  cautions: ['aerial.thunder', 'aerial.power-lines'],
  warnings: [
    'measure.natural-frequency-unseen',
    'measure.scatter-above-errors',
    'measure.other-law',
    'measure.dial-not-described',
  ],
  fit({ capacitor: stated, points, positionError = POINTER.deviation }, set) {
    const { capacitor, warnings } = capacitorRead(stated, set);
    const at = (position: number): number => capacitanceOn(position, capacitor);
    // What a pointer's error is in capacitance there.
    const error = (position: number): number => (at(position + positionError) - at(position - positionError)) / 2;
    const fit = aerialOf(
      points.map(({ frequency, series, ...position }) => ({
        frequency,
        ...(series !== undefined && { series }),
        equivalent: at(position.without) - at(position.with),
        error: Math.hypot(error(position.without), error(position.with)),
      })),
    );
    return {
      ...fit,
      dial: { capacitor, isOfSet: set !== undefined && capacitorOf(set) !== undefined },
      warnings: [...fit.warnings, ...warnings],
    };
  },
});

export const aerialReplacement = measurement({
  fields: {
    points: {
      type: 'list',
      least: 1,
      columns: {
        frequency: FREQUENCY,
        capacitance: { ...CAPACITANCE, above: 0 },
        series: { ...CAPACITANCE, above: 0, optional: true },
      },
    },
    capacitanceError: RELATIVE_ERROR,
    capacitanceFloor: { ...CAPACITANCE, optional: true },
  },
  readings: 'points',
  yields: AERIAL,
  equipment: ['set', 'ears', 'station', 'known capacitors'],
  cautions: ['aerial.thunder', 'aerial.power-lines'],
  warnings: ['measure.natural-frequency-unseen', 'measure.scatter-above-errors'],
  fit: ({ points, capacitanceError = KNOWN.error, capacitanceFloor = KNOWN.floor }) =>
    aerialOf(
      points.map(({ frequency, capacitance, series }) => ({
        frequency,
        ...(series !== undefined && { series }),
        equivalent: capacitance,
        error: Math.hypot(capacitanceError * capacitance, capacitanceFloor),
      })),
    ),
});

export const aerialResistance = measurement({
  fields: {
    points: {
      type: 'list',
      least: 3,
      columns: { added: { type: 'quantity', quantity: 'resistance', min: 0, max: 1e6 }, level: VOLTAGE },
    },
    ownResistance: { ...RESISTANCE, optional: true },
    ownError: { ...RESISTANCE, optional: true },
  },
  readings: 'points',
  yields: {
    circuitResistance: { quantity: 'resistance' },
    resistance: { quantity: 'resistance', settles: 'aerial.resistance', optional: true },
  },
  equipment: ['set', 'station', 'voltmeter', 'known resistors'],
  cautions: ['aerial.thunder', 'aerial.power-lines'],
  warnings: [],
  fit({ points, ownResistance, ownError = 0 }) {
    const own = ownResistance === undefined ? undefined : { value: ownResistance, error: ownError };
    const { scatter, circuitResistance, resistance } = fitAerialResistance(points, own);
    return { figures: { circuitResistance, ...(resistance && { resistance }) }, scatter, warnings: [] };
  },
});

export const earthElectrodes = measurement({
  fields: {
    oneTwo: RESISTANCE,
    oneThree: RESISTANCE,
    twoThree: RESISTANCE,
    error: RELATIVE_ERROR,
    rods: {
      type: 'group',
      fields: { length: LENGTH, diameter: LENGTH, oneTwo: LENGTH, oneThree: LENGTH, twoThree: LENGTH },
      rising: ['diameter', 'length'],
      optional: true,
    },
  },
  readings: 'twoThree',
  yields: { resistance: { quantity: 'resistance', settles: 'earth.resistance' } },
  equipment: ['auxiliary earths', 'voltmeter', 'ammeter'],
  cautions: ['earth.mains-and-gas', 'earth.buried-cables', 'bench.mains-isolated'],
  warnings: ['measure.auxiliary-earths-poor', 'measure.electrodes-share-soil', 'measure.earth-of-dry-soil'],
  fit(readings) {
    const { warnings, ...figures } = fitThreeElectrodes(readings);
    return { figures, warnings };
  },
});

export const earthComparison = measurement({
  fields: {
    level: VOLTAGE,
    otherLevel: VOLTAGE,
    circuitResistance: RESISTANCE,
    circuitError: RESISTANCE,
    otherResistance: { ...RESISTANCE, optional: true },
    otherError: { ...RESISTANCE, optional: true },
    levelError: RELATIVE_ERROR,
  },
  readings: 'otherLevel',
  yields: {
    difference: { quantity: 'resistance' },
    resistance: { quantity: 'resistance', settles: 'earth.resistance', optional: true },
  },
  equipment: ['set', 'station', 'voltmeter'],
  cautions: ['aerial.thunder', 'earth.mains-and-gas'],
  warnings: [],
  fit(readings) {
    const { difference, resistance } = fitEarthComparison(readings);
    return { figures: { difference, ...(resistance && { resistance }) }, warnings: [] };
  },
});

export const fieldStrength = measurement({
  fields: {
    calibration: { type: 'list', least: 2, columns: { emf: VOLTAGE, current: CURRENT } },
    current: CURRENT,
    effectiveHeight: LENGTH,
    heightError: { type: 'quantity', quantity: 'ratio', above: 0, max: 1 },
    currentError: RELATIVE_ERROR,
    currentFloor: { ...CURRENT, optional: true },
    calibrationError: RELATIVE_ERROR,
  },
  readings: 'calibration',
  yields: {
    fieldStrength: { quantity: 'field strength', settles: 'station.fieldStrength' },
    emf: { quantity: 'voltage' },
  },
  equipment: ['set', 'station', 'ammeter', 'signal generator', 'dummy aerial'],
  cautions: ['aerial.thunder', 'bench.mains-isolated'],
  warnings: ['measure.current-near-floor', 'measure.no-prediction'],
  fit({ calibration, ...reading }) {
    const { warnings, ...figures } = fitField(calibration, reading);
    return { figures, warnings };
  },
});
