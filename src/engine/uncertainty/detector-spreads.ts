import type { Detector } from '../parts/detector/detector.ts';
import type { SetDescription } from '../set/description.ts';
import type { PartInput, SetInput } from './input.ts';
import { between, COMMON_PRACTICE, plusOrMinus, type Spread, timesOrOver } from './spread.ts';

interface JunctionSpread {
  /** ×/÷ on the saturation current. */
  readonly current: number;
  /** ± on the ideality. */
  readonly ideality: number;
  /** ×/÷ on the series resistance; or about another middle. */
  readonly series: number | Spread;
  readonly leakage: number;
  readonly source: string;
}

const sold = (source: string, rest: Omit<JunctionSpread, 'source'>): JunctionSpread => ({ ...rest, source });
const SHEETS = 'makers’ data sheets and simulation models';

/** Of germanium point contacts the sheets give 0.65, 1.05 and 1.9 V at 10 mA, least, usual and greatest: 35, 75, 160 Ω. */
const GERMANIUM_SERIES = between(
  'factor',
  [35 / 30, 75 / 30, 160 / 30],
  'forward voltage at 10 mA in makers’ data sheets',
);

function junctionSpread({ detector }: SetDescription): JunctionSpread {
  switch (detector.kind) {
    case 'galena':
    case 'mineral':
      return { current: 4, ideality: 0.3, series: 2.5, leakage: 4, source: COMMON_PRACTICE };
    case 'germanium':
      return detector.make === 'gold-bonded'
        ? { current: 3, ideality: 0.08, series: 2, leakage: 3, source: COMMON_PRACTICE }
        : { current: 4, ideality: 0.15, series: GERMANIUM_SERIES, leakage: 3, source: COMMON_PRACTICE };
    case 'schottky':
      return sold(SHEETS, { current: 1.7, ideality: 0.03, series: 1.4, leakage: 1 });
    case 'silicon':
      return sold(SHEETS, { current: 1.8, ideality: 0.1, series: 1.4, leakage: 1 });
    default:
      return MEASURED;
  }
}
const MEASURED: JunctionSpread = { current: 1.3, ideality: 0.03, series: 1.3, leakage: 1.3, source: 'as measured' };

/** A detector's figures, each as spread as its kind has it, or as a meter leaves it where the builder gave it. */
export function detectorSpreads(set: SetDescription, model: Detector): SetInput[] {
  const { detector } = set;
  if (detector.kind === 'measured') return [];
  if (detector.kind === 'valve')
    return [
      {
        id: 'contact potential',
        settledBy: 'detector',
        spread: plusOrMinus(0.3, COMMON_PRACTICE),
        changes: (contactPotential) => ({ contactPotential }),
      },
    ];
  const kind = junctionSpread(set);
  const about = (given: unknown, factor: number | Spread): Spread => {
    if (given !== undefined) return timesOrOver(1.3, MEASURED.source);
    return typeof factor === 'number' ? timesOrOver(factor, kind.source) : factor;
  };
  const one = (id: PartInput, spread: Spread, changes: SetInput['changes']): SetInput => ({
    id,
    settledBy: 'detector',
    spread,
    changes,
  });
  const inputs = [
    one('saturation current', about(detector.saturationCurrent, kind.current), (saturationCurrent) => ({
      saturationCurrent,
    })),
    one(
      'ideality',
      plusOrMinus(detector.ideality === undefined ? kind.ideality : MEASURED.ideality, kind.source),
      (ideality) => ({ ideality }),
    ),
    one('series resistance', about(detector.seriesResistance, kind.series), (seriesResistance) => ({
      seriesResistance,
    })),
  ];
  if (model.law && model.law.leakage > 0)
    inputs.push(one('leakage', about(detector.leakage, kind.leakage), (leakage) => ({ leakage })));
  return inputs;
}
