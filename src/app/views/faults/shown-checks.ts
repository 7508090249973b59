import {
  type BuiltSet,
  type Check,
  type FaultModel,
  formatQuantity,
  HEARD_AS,
  type PossibleCheck,
  WIDTH_AS,
  writtenCheck,
} from '../../../engine/index.ts';
import {
  answerHelp,
  checkText,
  faultAnswer,
  faultCautionTexts,
  ohmPlaceText,
  stationFrequency,
  faultsView as texts,
} from '../../../outputs/words/index.ts';

/** By what it is of, so that it holds when stations are moved or added. */
export function checkKey(check: Check, built: BuiltSet): string {
  const { of = '' } = writtenCheck(check, built);
  return `${check.kind} ${of}`;
}

/** A check as the page asks for its answer. */
export interface ShownCheck {
  /** By which its answer is kept. */
  readonly key: string;
  readonly kind: Check['kind'];
  /** What its field is called. */
  readonly label: string;
  /** Words that answer it; without them a figure is typed. */
  readonly options?: readonly string[];
  readonly help: string;
  /** What is expected with nothing wrong. */
  readonly good?: string;
  readonly minutes: number;
  readonly cautions: readonly string[];
}

/** A station listened for, with what is calculated of it and what may be said of it. */
export interface ShownStation {
  /** In the list of the place. */
  readonly index: number;
  readonly name: string;
  /** Where it is on the dial with nothing wrong. */
  readonly scale: string;
  readonly checks: readonly ShownCheck[];
}

/** All that may be said of a set. */
export interface ShownChecks {
  readonly stations: readonly ShownStation[];
  readonly signs: readonly ShownCheck[];
  /** Signs for which something must be fetched, connected or waited for. */
  readonly trials: readonly ShownCheck[];
  readonly readings: readonly ShownCheck[];
}

/** Longer than this, min, and it is a trial of its own. */
const AT_ONCE = 0.6;

/** The checks of a model as the page asks for them. */
export function shownChecks(model: FaultModel): ShownChecks {
  const { checks, bench } = model;
  const shown = (check: PossibleCheck): ShownCheck => shownCheck(check, model);
  const signs = checks.filter(({ check }) => check.kind === 'sign');
  return {
    stations: bench.stations.map((station) => ({
      ...stationTexts(model, station),
      checks: checks.filter(({ check }) => 'station' in check && check.station === station).map(shown),
    })),
    signs: signs.filter(({ effort }) => effort <= AT_ONCE).map(shown),
    trials: signs.filter(({ effort }) => effort > AT_ONCE).map(shown),
    readings: checks.filter(({ check }) => check.kind === 'volts' || check.kind === 'ohms').map(shown),
  };
}

function stationTexts({ built, bench, sound }: FaultModel, station: number) {
  const i = bench.stations.indexOf(station);
  const { name, frequency } = built.set.place.stations[station];
  const scale = sound.within[i] ? formatQuantity(sound.scale[i], 'angle', 3) : texts.offScale;
  return {
    index: station,
    name: texts.station(name, stationFrequency(frequency)),
    scale,
  };
}

export function shownCheck({ check, effort, cautions }: PossibleCheck, model: FaultModel): ShownCheck {
  const { built, bench, sound } = model;
  const shown = {
    key: checkKey(check, built),
    kind: check.kind,
    help: answerHelp(check),
    minutes: effort,
    cautions: cautions.map((caution) => faultCautionTexts[caution]),
  };
  switch (check.kind) {
    case 'loudness':
      return { ...shown, label: texts.loudness, options: HEARD_AS };
    case 'dial':
      return { ...shown, label: texts.dial };
    case 'width':
      return { ...shown, label: texts.width, options: WIDTH_AS };
    case 'sign':
      return { ...shown, label: checkText(check, built), options: [texts.yes, texts.no] };
    case 'volts':
      return { ...shown, label: checkText(check, built), good: faultAnswer.volts(sound.directVoltage) };
    case 'ohms':
      return {
        ...shown,
        label: texts.across(ohmPlaceText(check.place, built)),
        good: faultAnswer.ohms(sound.ohms[bench.places.indexOf(check.place)]),
      };
  }
}
