import { fitDetector } from '../detector-fit.ts';
import { measurement, type Yield } from '../measurement.ts';
import { TEMPERATURE, VOLTAGE } from './common-fields.ts';

const JUNCTION = {
  saturationCurrent: { quantity: 'current', settles: 'detector.saturationCurrent' },
  ideality: { settles: 'detector.ideality' },
  zeroBiasResistance: { quantity: 'resistance' },
} satisfies Readonly<Record<string, Yield>>;

const SERIES = { seriesResistance: { quantity: 'resistance', settles: 'detector.seriesResistance' } } as const;

export const detector = measurement({
  fields: {
    temperature: TEMPERATURE,
    points: {
      type: 'list',
      least: 4,
      columns: {
        voltage: { ...VOLTAGE, max: 1000 },
        current: { type: 'quantity', quantity: 'current', above: 0, max: 1000 },
      },
    },
  },
  readings: 'points',
  yields: { ...JUNCTION, ...SERIES },
  equipment: ['battery', 'voltmeter', 'ammeter', 'known resistors'],
  cautions: ['detector.lead-sulphide'],
  warnings: ['measure.series-resistance-unseen'],
  fit({ points, temperature }) {
    const { scatter, warnings, ...figures } = fitDetector(points, temperature);
    return { figures, scatter, warnings };
  },
});
