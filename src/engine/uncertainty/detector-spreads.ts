import type { MeasuredOf, MeasuredValue } from '../kinds/measured/measured-schema.ts';
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

/** Fits of curves show it: a spot that passes more current has the greater ideality too. Common practice, no source. */
const ALIKE = 0.6;

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
function junctionSpread(id: string | undefined): JunctionSpread {
  const kind = DETECTOR_KINDS.find((known) => known.id === id);
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

type GivenFigure = 'saturationCurrent' | 'ideality' | 'seriesResistance' | 'leakage';

/** A device: which of the library, if one, and which of its figures were given. */
export interface KnownDevice {
  readonly id?: string;
  readonly given: Readonly<Partial<Record<GivenFigure, unknown>>>;
  /** Those that were measured, with their standard errors. */
  readonly measured?: MeasuredOf<GivenFigure>;
  readonly model: Detector;
}

/** Each figure of a device as spread as its kind has it, or as a meter leaves it where it was given. */
export function deviceSpreads({ id, given, measured = {}, model }: KnownDevice): SetInput[] {
  if (id === 'valve')
    return [
      {
        id: 'contact potential',
        settledBy: 'detector',
        spread: plusOrMinus(0.3, COMMON_PRACTICE),
        changes: (contactPotential) => ({ contactPotential }),
      },
    ];
  if (!model.law) return [];
  const kind = junctionSpread(id);
  const about = (name: keyof JunctionSpread, figure: GivenFigure): Spread => {
    const value = measured[figure];
    return value ? ofMeasured(name, value) : given[figure] === undefined ? kind[name] : measuredSpread[name];
  };
  const one = (id: PartInput, spread: Spread, changes: SetInput['changes']): SetInput => ({
    id,
    settledBy: 'detector',
    spread,
    changes,
  });
  const inputs = [
    one('saturation current', about('current', 'saturationCurrent'), (saturationCurrent) => ({ saturationCurrent })),
    {
      ...one('ideality', about('ideality', 'ideality'), (ideality) => ({ ideality })),
      follows: [{ other: 'saturation current', share: ALIKE }] as const,
    },
  ];
  if (model.law.seriesResistance > 0)
    inputs.push(
      one('series resistance', about('series', 'seriesResistance'), (seriesResistance) => ({ seriesResistance })),
    );
  if (model.law.leakage > 0) inputs.push(one('leakage', about('leakage', 'leakage'), (leakage) => ({ leakage })));
  return inputs;
}

/** A set's detector as a device; undefined of one whose curve was measured. */
export const knownDetector = ({ detector }: SetDescription, model: Detector): KnownDevice | undefined =>
  detector.kind === 'measured'
    ? undefined
    : {
        id: detectorId(detector),
        ...(detector.kind === 'valve' ? { given: {} } : { given: detector, measured: detector.measured }),
        model,
      };

/** What is not known of a set's detector; of one whose curve was measured, nothing. */
export function detectorSpreads(set: SetDescription, model: Detector): SetInput[] {
  const device = knownDetector(set, model);
  return device ? deviceSpreads(device) : [];
}
