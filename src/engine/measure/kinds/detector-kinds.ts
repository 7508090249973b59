import { fitDetector } from '../detector-fit.ts';
import { fitLeakage } from '../leakage-fit.ts';
import { measurement, type Yield } from '../measurement.ts';
import { fitBridge, fitVoltmeter } from '../one-meter-fit.ts';
import { CURRENT, RELATIVE_ERROR, RESISTANCE, TEMPERATURE, VOLTAGE } from './common-fields.ts';

const JUNCTION = {
  saturationCurrent: { quantity: 'current', settles: 'detector.saturationCurrent' },
  ideality: { settles: 'detector.ideality' },
  seriesResistance: { quantity: 'resistance', settles: 'detector.seriesResistance' },
  zeroBiasResistance: { quantity: 'resistance' },
} as const satisfies Readonly<Record<string, Yield>>;

const DETECTOR_VOLTAGE = { ...VOLTAGE, max: 1000 } as const;

export const detector = measurement({
  fields: {
    temperature: TEMPERATURE,
    points: { type: 'list', least: 4, columns: { voltage: DETECTOR_VOLTAGE, current: CURRENT } },
  },
  readings: 'points',
  yields: JUNCTION,
  equipment: ['battery', 'voltmeter', 'ammeter', 'known resistors'],
  cautions: ['detector.lead-sulphide'],
  warnings: ['measure.series-resistance-unseen'],
  fit({ points, temperature }) {
    const { scatter, warnings, correlations, ...figures } = fitDetector(points, temperature);
    return { figures, scatter, warnings, correlations };
  },
});

export const detectorLeakage = measurement({
  fields: {
    temperature: TEMPERATURE,
    points: {
      type: 'list',
      least: 6,
      columns: {
        voltage: { type: 'quantity', quantity: 'voltage', min: -1000, max: 1000 },
        current: { type: 'quantity', quantity: 'current', min: -1000, max: 1000 },
      },
    },
    currentError: RELATIVE_ERROR,
    currentFloor: { ...CURRENT, optional: true },
  },
  readings: 'points',
  yields: { ...JUNCTION, leakage: { quantity: 'resistance', settles: 'detector.leakage' } },
  equipment: ['battery', 'voltmeter', 'ammeter', 'known resistors'],
  cautions: ['detector.lead-sulphide'],
  warnings: ['measure.series-resistance-unseen', 'measure.leakage-unseen'],
  fit({ points, temperature, ...errors }) {
    const { scatter, warnings, correlations, ...figures } = fitLeakage(points, temperature, errors);
    return { figures, scatter, warnings, correlations };
  },
});

export const detectorVoltmeter = measurement({
  fields: {
    temperature: TEMPERATURE,
    source: DETECTOR_VOLTAGE,
    points: { type: 'list', least: 4, columns: { resistor: RESISTANCE, voltage: DETECTOR_VOLTAGE } },
    sourceError: RELATIVE_ERROR,
    meterResistance: { ...RESISTANCE, optional: true },
    resistorError: RELATIVE_ERROR,
    voltageError: RELATIVE_ERROR,
    voltageFloor: { ...DETECTOR_VOLTAGE, optional: true },
  },
  readings: 'points',
  yields: JUNCTION,
  equipment: ['battery', 'voltmeter', 'known resistors'],
  cautions: ['detector.lead-sulphide'],
  warnings: ['measure.series-resistance-unseen', 'measure.scatter-above-errors'],
  fit({ points, ...bench }) {
    const { warnings, correlations, ...figures } = fitVoltmeter(points, bench);
    return { figures, warnings, correlations };
  },
});

export const detectorBridge = measurement({
  fields: {
    temperature: TEMPERATURE,
    points: {
      type: 'list',
      least: 4,
      columns: { source: DETECTOR_VOLTAGE, upper: RESISTANCE, otherUpper: RESISTANCE, otherLower: RESISTANCE },
    },
    resistorError: RELATIVE_ERROR,
    nullError: RELATIVE_ERROR,
    sourceError: RELATIVE_ERROR,
  },
  readings: 'points',
  yields: JUNCTION,
  equipment: ['battery', 'voltmeter', 'known resistors'],
  cautions: ['detector.lead-sulphide'],
  warnings: ['measure.series-resistance-unseen', 'measure.scatter-above-errors'],
  fit({ points, ...bench }) {
    const { warnings, correlations, ...figures } = fitBridge(points, bench);
    return { figures, warnings, correlations };
  },
});
