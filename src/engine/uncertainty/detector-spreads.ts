import type { MeasuredValue } from '../kinds/measured/measured-schema.ts';
import { standardErrorOf, USUAL_ERROR } from '../kinds/measured/usual-errors.ts';
import { detectorId } from '../kinds/models.ts';
import type { Detector } from '../parts/detector/detector.ts';
import { DETECTOR_KINDS } from '../parts/detector/library.ts';
import type { SetDescription } from '../set/description.ts';
import type { PartInput, SetInput } from './input.ts';
import { amountSpread, shareSpread } from './measured-spread.ts';
import { between, COMMON_PRACTICE, plusOrMinus, type Spread, timesOrOver } from './spread.ts';

/** A device that somebody measured: a meter's errors. */
const MEASURED = { factor: 1.3, ideality: 0.03, source: 'as measured' } as const;

interface JunctionSpread {
  readonly current: Spread;
  readonly ideality: Spread;
  readonly series: Spread;
  readonly leakage: Spread;
}

const measuredSpread: JunctionSpread = {
  current: timesOrOver(MEASURED.factor, MEASURED.source),
  ideality: plusOrMinus(MEASURED.ideality, MEASURED.source),
  series: timesOrOver(MEASURED.factor, MEASURED.source),
  leakage: timesOrOver(MEASURED.factor, MEASURED.source),
};

const USUAL: Readonly<Record<keyof JunctionSpread, number>> = {
  current: USUAL_ERROR.saturationCurrent,
  ideality: USUAL_ERROR.ideality,
  series: USUAL_ERROR.seriesResistance,
  leakage: USUAL_ERROR.leakage,
};

/** With the standard error that the builder states. */
const ofMeasured = (name: keyof JunctionSpread, measured: MeasuredValue): Spread =>
  name === 'ideality'
    ? amountSpread(measured.value * standardErrorOf(measured, USUAL.ideality))
    : shareSpread(measured, USUAL[name]);

/** Of a kind of the library: as the library states it. */
function junctionSpread({ detector }: SetDescription): JunctionSpread {
  const kind = DETECTOR_KINDS.find(({ id }) => id === detectorId(detector));
  if (!kind) return measuredSpread;
  const { saturationCurrent, ideality, seriesResistance, leakage, source } = kind.spread;
  const rest = source.rest ?? COMMON_PRACTICE;
  const usual = kind.typical.seriesResistance;
  return {
    current: timesOrOver(saturationCurrent, rest),
    ideality: plusOrMinus(ideality, rest),
    series: between(
      'factor',
      [seriesResistance[0] / usual, 1, seriesResistance[1] / usual],
      source.seriesResistance ?? COMMON_PRACTICE,
    ),
    leakage: timesOrOver(leakage, rest),
  };
}

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
  const measured = detector.measured ?? {};
  const about = (name: keyof JunctionSpread, given: unknown, value: MeasuredValue | undefined): Spread =>
    value ? ofMeasured(name, value) : given === undefined ? kind[name] : measuredSpread[name];
  const one = (id: PartInput, spread: Spread, changes: SetInput['changes']): SetInput => ({
    id,
    settledBy: 'detector',
    spread,
    changes,
  });
  const inputs = [
    one(
      'saturation current',
      about('current', detector.saturationCurrent, measured.saturationCurrent),
      (saturationCurrent) => ({
        saturationCurrent,
      }),
    ),
    one('ideality', about('ideality', detector.ideality, measured.ideality), (ideality) => ({ ideality })),
    one(
      'series resistance',
      about('series', detector.seriesResistance, measured.seriesResistance),
      (seriesResistance) => ({
        seriesResistance,
      }),
    ),
  ];
  if (model.law && model.law.leakage > 0)
    inputs.push(one('leakage', about('leakage', detector.leakage, measured.leakage), (leakage) => ({ leakage })));
  return inputs;
}
