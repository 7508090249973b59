import { type Warning, warning } from '../../facts/warning.ts';
import { fitDetector } from '../detector-fit.ts';
import type { Fitted } from '../fitted.ts';
import { SUPPOSED_TEMPERATURE } from '../junction.ts';
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

const ROOM_TEMPERATURE = { ...TEMPERATURE, optional: true, isAsked: true } as const;

interface OfJunction {
  readonly ideality: Fitted;
  readonly warnings: readonly Warning[];
}

/** A fit at the temperature stated; without one that of a room, and its doubt in the ideality: only n·T is seen. */
function atTemperature<F extends OfJunction>(temperature: number | undefined, fit: (temperature: number) => F): F {
  if (temperature !== undefined) return fit(temperature);
  const found = fit(SUPPOSED_TEMPERATURE.temperature);
  const { value, standardError, range } = found.ideality;
  const wider = Math.hypot(
    1,
    (value * SUPPOSED_TEMPERATURE.deviation) / SUPPOSED_TEMPERATURE.temperature / standardError,
  );
  return {
    ...found,
    ideality: {
      value,
      standardError: wider * standardError,
      range: [value - wider * (value - range[0]), value + wider * (range[1] - value)],
    },
    warnings: [...found.warnings, warning('measure.temperature-supposed', SUPPOSED_TEMPERATURE)],
  };
}

const DETECTOR_VOLTAGE = { ...VOLTAGE, max: 1000 } as const;

export const detector = measurement({
  fields: {
    temperature: ROOM_TEMPERATURE,
    points: { type: 'list', least: 4, columns: { voltage: DETECTOR_VOLTAGE, current: CURRENT } },
  },
  readings: 'points',
  yields: JUNCTION,
  equipment: ['battery', 'voltmeter', 'ammeter', 'known resistors'],
  cautions: ['detector.lead-sulphide'],
  warnings: ['measure.temperature-supposed', 'measure.series-resistance-unseen'],
  fit({ points, temperature }) {
    const { scatter, warnings, correlations, ...figures } = atTemperature(temperature, (T) => fitDetector(points, T));
    return { figures, scatter, warnings, correlations };
  },
});

export const detectorLeakage = measurement({
  fields: {
    temperature: ROOM_TEMPERATURE,
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
  warnings: ['measure.temperature-supposed', 'measure.series-resistance-unseen', 'measure.leakage-unseen'],
  fit({ points, temperature, ...errors }) {
    const { scatter, warnings, correlations, ...figures } = atTemperature(temperature, (T) =>
      fitLeakage(points, T, errors),
    );
    return { figures, scatter, warnings, correlations };
  },
});

export const detectorVoltmeter = measurement({
  fields: {
    temperature: ROOM_TEMPERATURE,
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
  warnings: ['measure.temperature-supposed', 'measure.series-resistance-unseen', 'measure.scatter-above-errors'],
  fit({ points, temperature: given, ...bench }) {
    const { warnings, correlations, ...figures } = atTemperature(given, (temperature) =>
      fitVoltmeter(points, { ...bench, temperature }),
    );
    return { figures, warnings, correlations };
  },
});

export const detectorBridge = measurement({
  fields: {
    temperature: ROOM_TEMPERATURE,
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
  warnings: ['measure.temperature-supposed', 'measure.series-resistance-unseen', 'measure.scatter-above-errors'],
  fit({ points, temperature: given, ...bench }) {
    const { warnings, correlations, ...figures } = atTemperature(given, (temperature) =>
      fitBridge(points, { ...bench, temperature }),
    );
    return { figures, warnings, correlations };
  },
});
