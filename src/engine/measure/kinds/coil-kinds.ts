import { warning } from '../../facts/warning.ts';
import { fitCapacitanceWidth } from '../capacitance-width-fit.ts';
import { type DecayFit, fitDecay } from '../decay-fit.ts';
import { fitDialOf } from '../dial-of-set.ts';
import { fitDoubleHump } from '../double-hump-fit.ts';
import { fitEqualLevels } from '../equal-levels-fit.ts';
import { type Measured, measurement } from '../measurement.ts';
import { fitMutualInductance } from '../mutual-inductance-fit.ts';
import { ringingOf } from '../record.ts';
import { fitResonance } from '../resonance-fit.ts';
import { UnfitReadings } from '../unfit.ts';
import { fitWidth } from '../width-fit.ts';
import {
  CAPACITANCE,
  DIAL_CAPACITOR,
  FREQUENCY,
  FREQUENCY_ERROR,
  INDUCTANCE,
  LEVEL_RATIO,
  POSITION,
  RELATIVE_ERROR,
  VOLTAGE,
} from './common-fields.ts';

export const resonance = measurement({
  fields: { points: { type: 'list', least: 3, columns: { capacitance: CAPACITANCE, frequency: FREQUENCY } } },
  readings: 'points',
  yields: {
    inductance: { quantity: 'inductance', settles: 'coil.inductance' },
    selfCapacitance: { quantity: 'capacitance', settles: 'coil.selfCapacitance' },
  },
  equipment: ['signal generator', 'voltmeter', 'known capacitors'],
  cautions: [],
  warnings: [],
  fit({ points }) {
    const { scatter, correlations, ...figures } = fitResonance(points);
    return { figures, scatter, correlations, warnings: [] };
  },
});

export const dial = measurement({
  fields: {
    capacitor: DIAL_CAPACITOR,
    readings: {
      type: 'list',
      least: 3,
      columns: { position: POSITION, frequency: FREQUENCY },
    },
  },
  readings: 'readings',
  yields: {
    inductance: { quantity: 'inductance', settles: 'coil.inductance' },
    strayCapacitance: { quantity: 'capacitance', settles: 'tuning.stray' },
  },
  equipment: ['set', 'ears', 'station'],
  cautions: [],
  warnings: [
    'measure.reading-misread',
    'measure.too-few-to-suspect',
    'measure.law-chosen',
    'measure.law-not-as-described',
    'measure.other-law',
    'measure.dial-not-described',
  ],
  fit({ capacitor: stated, readings }, set) {
    const { inductance, strayCapacitance, capacitor, isOfSet, ...rest } = fitDialOf(readings, stated, set);
    return { figures: { inductance, strayCapacitance }, dial: { capacitor, isOfSet }, ...rest };
  },
});

export const width = measurement({
  fields: { points: { type: 'list', least: 4, columns: { frequency: FREQUENCY, level: VOLTAGE } } },
  readings: 'points',
  yields: { resonance: { quantity: 'frequency' }, q: { settles: 'coil.q' } },
  equipment: ['set', 'signal generator', 'voltmeter'],
  cautions: [],
  warnings: [],
  fit({ points }) {
    const { scatter, ...figures } = fitWidth(points);
    return { figures, scatter, warnings: [] };
  },
});

/** Below it a coil rings with a capacitor far larger than it is tuned with, and its Q is that of its copper, Hz. */
const RADIO = 50e3;

function decayed({ scatter, ...figures }: DecayFit): Measured {
  const { value: frequency } = figures.frequency;
  return frequency < RADIO
    ? { figures, scatter, settlesNot: ['q'], warnings: [warning('measure.ringing-at-audio', { frequency })] }
    : { figures, scatter, warnings: [] };
}

export const decay = measurement({
  fields: { sampleRate: FREQUENCY, samples: { type: 'samples', least: 16, most: 200_000 } },
  readings: 'samples',
  yields: { frequency: { quantity: 'frequency' }, q: { settles: 'coil.q' } },
  equipment: ['set', 'oscilloscope'],
  equipmentInstead: ['set', 'sound card', 'known capacitors'],
  cautions: ['bench.mains-isolated'],
  warnings: ['measure.ringing-at-audio'],
  fit: ({ samples, sampleRate }) => decayed(fitDecay(samples, sampleRate)),
});

export const decayRecord = measurement({
  fields: { record: { type: 'text', format: 'record' } },
  readings: 'record',
  yields: { frequency: { quantity: 'frequency' }, q: { settles: 'coil.q' } },
  equipment: ['set', 'oscilloscope'],
  cautions: ['bench.mains-isolated'],
  warnings: ['measure.ringing-at-audio'],
  fit({ record: { samples, sampleRate } }) {
    const ringing = ringingOf(samples);
    if (!(ringing.length >= 16)) throw new UnfitReadings({ code: 'decay.no-ringing' });
    return decayed(fitDecay(ringing, sampleRate));
  },
});

export const equalLevels = measurement({
  fields: {
    lower: FREQUENCY,
    upper: FREQUENCY,
    ratio: LEVEL_RATIO,
    frequencyError: FREQUENCY_ERROR,
    ratioError: RELATIVE_ERROR,
  },
  readings: 'upper',
  yields: { resonance: { quantity: 'frequency' }, q: { settles: 'coil.q' } },
  equipment: ['set', 'signal generator', 'voltmeter'],
  cautions: [],
  warnings: ['measure.level-ratio-small'],
  fit(readings) {
    const { warnings, ...figures } = fitEqualLevels(readings);
    return { figures, warnings };
  },
});

export const capacitanceWidth = measurement({
  fields: {
    frequency: FREQUENCY,
    lower: CAPACITANCE,
    upper: CAPACITANCE,
    stray: CAPACITANCE,
    ratio: LEVEL_RATIO,
    settingError: { ...CAPACITANCE, optional: true },
    strayError: { ...CAPACITANCE, optional: true },
    ratioError: RELATIVE_ERROR,
  },
  readings: 'upper',
  yields: { q: { settles: 'coil.q' }, parallelConductance: { quantity: 'conductance' } },
  equipment: ['set', 'signal generator', 'voltmeter'],
  cautions: [],
  warnings: ['measure.level-ratio-small'],
  fit(readings) {
    const { warnings, ...figures } = fitCapacitanceWidth(readings);
    return { figures, warnings };
  },
});

export const mutualInductance = measurement({
  fields: {
    aiding: INDUCTANCE,
    opposing: INDUCTANCE,
    first: { ...INDUCTANCE, optional: true },
    second: { ...INDUCTANCE, optional: true },
    error: RELATIVE_ERROR,
  },
  readings: 'aiding',
  yields: {
    mutualInductance: { quantity: 'inductance' },
    couplingCoefficient: { settles: 'arrangement.coupling', optional: true },
  },
  equipment: ['inductance meter'],
  cautions: [],
  warnings: ['measure.coupling-unseen', 'measure.scatter-above-errors', 'measure.no-coupled-coils'],
  fit(readings) {
    const { warnings, mutualInductance: M, couplingCoefficient } = fitMutualInductance(readings);
    return { figures: { mutualInductance: M, ...(couplingCoefficient && { couplingCoefficient }) }, warnings };
  },
});

export const doubleHump = measurement({
  fields: {
    lower: FREQUENCY,
    upper: FREQUENCY,
    q: { type: 'number', min: 1, max: 1e5, optional: true },
    qError: RELATIVE_ERROR,
    frequencyError: FREQUENCY_ERROR,
  },
  readings: 'upper',
  yields: { couplingCoefficient: { settles: 'arrangement.coupling' } },
  equipment: ['set', 'signal generator', 'voltmeter'],
  cautions: [],
  warnings: ['measure.coupling-without-q', 'measure.no-coupled-coils'],
  fit(readings) {
    const { warnings, ...figures } = fitDoubleHump(readings);
    return { figures, warnings };
  },
});
