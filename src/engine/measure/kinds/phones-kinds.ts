import { measurement } from '../measurement.ts';
import { fitAudibility, fitImpedance, fitResistance, fitSoundCard, type ImpedanceFit } from '../phones-fit.ts';
import { FREQUENCY, RELATIVE_ERROR, RESISTANCE, VOLTAGE } from './common-fields.ts';

const PHASE = { type: 'quantity', quantity: 'angle', min: -180, max: 180 } as const;

const figuresOf = ({ impedance, phase, warnings }: ImpedanceFit) => ({
  figures: { impedance, ...(phase && { phase }) },
  warnings,
});

export const phonesResistance = measurement({
  fields: {
    reading: RESISTANCE,
    leads: { type: 'quantity', quantity: 'resistance', min: 0, max: 1e6, optional: true },
    error: RELATIVE_ERROR,
    floor: { ...RESISTANCE, optional: true },
  },
  readings: 'reading',
  yields: { resistance: { quantity: 'resistance', settles: 'load.resistance' } },
  equipment: ['ohmmeter'],
  cautions: ['load.clicks-on-ears'],
  warnings: [],
  fit: (readings) => ({ figures: { resistance: fitResistance(readings) }, warnings: [] }),
});

export const phonesImpedance = measurement({
  fields: {
    frequency: FREQUENCY,
    resistor: RESISTANCE,
    resistorVoltage: VOLTAGE,
    voltage: VOLTAGE,
    wholeVoltage: { ...VOLTAGE, optional: true },
    voltageError: RELATIVE_ERROR,
    resistorError: RELATIVE_ERROR,
  },
  readings: 'voltage',
  yields: {
    impedance: { quantity: 'resistance', settles: 'load.impedance' },
    phase: { quantity: 'angle', optional: true },
  },
  equipment: ['signal generator', 'voltmeter', 'known resistors'],
  cautions: ['load.clicks-on-ears'],
  warnings: ['measure.phase-unseen'],
  fit: ({ frequency: _, ...readings }) => figuresOf(fitImpedance(readings)),
});

const TRANSFER = {
  type: 'group',
  fields: { level: { type: 'number', min: 1e-9, max: 1e9 }, phase: PHASE },
} as const;

export const phonesSoundCard = measurement({
  fields: {
    frequency: FREQUENCY,
    resistor: RESISTANCE,
    open: TRANSFER,
    known: TRANSFER,
    phones: TRANSFER,
    resistorError: RELATIVE_ERROR,
    noise: RELATIVE_ERROR,
  },
  readings: 'phones',
  yields: {
    impedance: { quantity: 'resistance', settles: 'load.impedance' },
    phase: { quantity: 'angle' },
  },
  equipment: ['sound card', 'known resistors'],
  cautions: ['bench.mains-isolated', 'load.clicks-on-ears'],
  warnings: [],
  fit: ({ frequency: _, ...readings }) => figuresOf(fitSoundCard(readings)),
});

/** The impedance of old phones and its phase, where neither was measured well. */
const USUAL = { impedanceError: 0.1, phaseError: 10 };

export const audibility = measurement({
  fields: {
    impedance: RESISTANCE,
    phase: PHASE,
    trials: { type: 'list', least: 1, columns: { shunt: RESISTANCE } },
    impedanceError: RELATIVE_ERROR,
    phaseError: { type: 'quantity', quantity: 'angle', min: 0, max: 90, optional: true },
    sourceResistance: { ...RESISTANCE, optional: true },
  },
  readings: 'trials',
  yields: { levelAboveThreshold: { quantity: 'level' }, audibilityFactor: {} },
  equipment: ['set', 'ears', 'station', 'known resistors'],
  cautions: ['load.volume'],
  warnings: ['measure.one-trial', 'measure.no-prediction', 'measure.loudness-shared'],
  fit({ trials, impedanceError = USUAL.impedanceError, phaseError = USUAL.phaseError, ...phones }) {
    const shunts = trials.map((trial) => trial.shunt);
    const { warnings, ...figures } = fitAudibility({ ...phones, shunts, impedanceError, phaseError });
    return { figures, warnings };
  },
});
