import { fitAnalyser } from '../analyser-fit.ts';
import type { AnalysedPart } from '../analyser-models.ts';
import { type Fitted, fitted, reachOf } from '../fitted.ts';
import { type Measured, measurement } from '../measurement.ts';
import { fitPeak } from '../peak-fit.ts';
import type { Network, ValuesOf } from '../reading-fields.ts';
import { type Standards, sweepOf } from '../sweep.ts';
import { UnfitReadings } from '../unfit.ts';
import { FREQUENCY, RELATIVE_ERROR, RESISTANCE } from './common-fields.ts';

const FILE = { type: 'text', format: 'touchstone' } as const;
const OPTIONAL_FILE = { ...FILE, optional: true } as const;

const ANALYSER = {
  frequency: { ...FREQUENCY, optional: true },
  calibration: RELATIVE_ERROR,
  open: OPTIONAL_FILE,
  short: OPTIONAL_FILE,
  load: OPTIONAL_FILE,
  loadResistance: { ...RESISTANCE, optional: true },
} as const;
const FIELDS = {
  file: FILE,
  fixture: { type: 'choice', options: ['reflection', 'series', 'shunt'], optional: true },
  ...ANALYSER,
} as const;

const LOAD = 50;

const COMMON = {
  fields: FIELDS,
  readings: 'file',
  equipment: ['network analyser'],
  cautions: [],
} as const;
const WARNINGS = [
  'measure.scatter-above-errors',
  'measure.analyser-not-calibrated',
  'measure.fixture-not-thin',
] as const;

/** All three standards, or none. @throws UnfitReadings */
function standardsOf({ open, short, load, loadResistance = LOAD }: ValuesOf<typeof ANALYSER>): Standards | undefined {
  if (open && short && load) return { open, short, load, loadResistance };
  if (open || short || load) throw new UnfitReadings({ code: 'analyser.standards-all-three' });
  return undefined;
}

const analysed =
  (part: AnalysedPart) =>
  ({ file, fixture = 'reflection', ...analyser }: ValuesOf<typeof FIELDS>): Measured =>
    fitAnalyser(part, sweepOf(file, fixture, standardsOf(analyser)), analyser);

export const analyserCoil = measurement({
  ...COMMON,
  yields: {
    inductance: { quantity: 'inductance', settles: 'coil.inductance', optional: true },
    selfCapacitance: { quantity: 'capacitance', settles: 'coil.selfCapacitance', optional: true },
    q: { settles: 'coil.q', optional: true },
    dissipation: { optional: true },
    resonance: { quantity: 'frequency', optional: true },
  },
  warnings: [...WARNINGS, 'measure.q-lower-bound'],
  fit: analysed('coil'),
});

export const analyserCapacitor = measurement({
  ...COMMON,
  yields: {
    capacitance: { quantity: 'capacitance', settles: 'tuning.capacitance', optional: true },
    inductance: { quantity: 'inductance', optional: true },
    resistance: { quantity: 'resistance', optional: true },
    resonance: { quantity: 'frequency', optional: true },
  },
  warnings: WARNINGS,
  fit: analysed('capacitor'),
});

export const analyserAerial = measurement({
  ...COMMON,
  yields: {
    capacitance: { quantity: 'capacitance', settles: 'aerial.capacitance', optional: true },
    inductance: { quantity: 'inductance', settles: 'aerial.inductance', optional: true },
    resistance: { quantity: 'resistance', settles: 'aerial.resistance', optional: true },
    resonance: { quantity: 'frequency', optional: true },
  },
  cautions: ['aerial.thunder', 'aerial.power-lines', 'bench.mains-isolated'],
  warnings: WARNINGS,
  fit: analysed('aerial'),
});

export const analyserEarpiece = measurement({
  ...COMMON,
  yields: {
    capacitance: { quantity: 'capacitance', settles: 'load.capacitance', optional: true },
    resonance: { quantity: 'frequency', optional: true },
    q: { optional: true },
  },
  warnings: WARNINGS,
  fit: analysed('crystal earpiece'),
});

export const analyserTransformer = measurement({
  fields: { file: FILE, shorted: FILE, ...ANALYSER },
  readings: 'shorted',
  yields: {
    primaryInductance: { quantity: 'inductance', settles: 'transformer.primaryInductance' },
    selfCapacitance: { quantity: 'capacitance' },
    leakageInductance: { quantity: 'inductance' },
    leakage: { settles: 'transformer.leakage' },
  },
  equipment: ['network analyser'],
  cautions: [],
  warnings: WARNINGS,
  fit({ file, shorted, ...analyser }) {
    const of = (network: Network) =>
      fitAnalyser('coil', sweepOf(network, 'reflection', standardsOf(analyser)), analyser);
    const [whole, rest] = [of(file), of(shorted)];
    const inductances: readonly (Fitted | undefined)[] = [whole.figures.inductance, rest.figures.inductance];
    const [primary, leak] = inductances;
    if (!(primary && leak && leak.value < primary.value))
      throw new UnfitReadings({ code: 'analyser.more-shorted-than-open' });
    const share = leak.value / primary.value;
    const s = share * Math.hypot(leak.standardError / leak.value, primary.standardError / primary.value);
    return {
      figures: {
        primaryInductance: primary,
        selfCapacitance: whole.figures.selfCapacitance,
        leakageInductance: leak,
        leakage: fitted(share, s, reachOf()),
      },
      sweep: whole.sweep,
      // A winding's Q in reflection is not what was asked for.
      warnings: [...whole.warnings, ...rest.warnings].filter((w) => w.code !== 'measure.q-lower-bound'),
    };
  },
});

export const analyserPeak = measurement({
  fields: { file: FILE },
  readings: 'file',
  yields: { resonance: { quantity: 'frequency' }, loadedQ: {}, q: { settles: 'coil.q' } },
  equipment: ['set', 'network analyser'],
  cautions: [],
  warnings: [],
  fit({ file }) {
    const { scatter, ...figures } = fitPeak(file);
    return { figures, scatter, warnings: [] };
  },
});
