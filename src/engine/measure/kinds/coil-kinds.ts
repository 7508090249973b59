import { fitDecay } from '../decay-fit.ts';
import { fitDial } from '../dial-fit.ts';
import { measurement } from '../measurement.ts';
import { fitResonance } from '../resonance-fit.ts';
import { fitWidth } from '../width-fit.ts';
import { CAPACITANCE, FREQUENCY, VOLTAGE } from './common-fields.ts';

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
    const { scatter, ...figures } = fitResonance(points);
    return { figures, scatter, warnings: [] };
  },
});

export const dial = measurement({
  fields: {
    capacitor: {
      type: 'group',
      fields: {
        law: { type: 'choice', options: ['semicircular'] },
        minimum: CAPACITANCE,
        maximum: { ...CAPACITANCE, above: 0 },
      },
      rising: ['minimum', 'maximum'],
    },
    readings: {
      type: 'list',
      least: 3,
      columns: { position: { type: 'number', min: -1, max: 2 }, frequency: FREQUENCY },
    },
  },
  readings: 'readings',
  yields: {
    inductance: { quantity: 'inductance', settles: 'coil.inductance' },
    strayCapacitance: { quantity: 'capacitance', settles: 'tuning.stray' },
  },
  equipment: ['set', 'ears', 'station'],
  cautions: [],
  warnings: ['measure.reading-misread', 'measure.too-few-to-suspect'],
  fit({ capacitor, readings }) {
    const { inductance, strayCapacitance, ...rest } = fitDial(readings, capacitor);
    return { figures: { inductance, strayCapacitance }, ...rest };
  },
});

export const width = measurement({
  fields: { points: { type: 'list', least: 4, columns: { frequency: FREQUENCY, level: VOLTAGE } } },
  readings: 'points',
  yields: { resonance: { quantity: 'frequency' }, q: { settles: 'coil.q' } },
  equipment: ['signal generator', 'voltmeter'],
  cautions: [],
  warnings: [],
  fit({ points }) {
    const { scatter, ...figures } = fitWidth(points);
    return { figures, scatter, warnings: [] };
  },
});

export const decay = measurement({
  fields: { sampleRate: FREQUENCY, samples: { type: 'samples', least: 16, most: 200_000 } },
  readings: 'samples',
  yields: { frequency: { quantity: 'frequency' }, q: { settles: 'coil.q' } },
  equipment: ['oscilloscope'],
  cautions: ['bench.mains-isolated'],
  warnings: [],
  fit({ samples, sampleRate }) {
    const { scatter, ...figures } = fitDecay(samples, sampleRate);
    return { figures, scatter, warnings: [] };
  },
});
