import type { BuiltSet } from '../built/built-set.ts';
import { PART } from '../network/part-ids.ts';
import { normalShare } from '../numerics/normal.ts';
import type { Decibels, Degrees, Ohms, Volts } from '../units/quantities.ts';
import { type FaultCaution, type PartFault, type Sign, type SignCode, signAt } from './fault.ts';
import { noticedShare } from './heard-signs.ts';
import {
  bridgedCapacitorsOf,
  leadsMatter,
  type OhmPlace,
  OVERLOAD,
  partOfPlace,
  placesThroughDetector,
} from './ohmmeter.ts';
import type { SetShows, TestBench } from './shown.ts';

/** How loud a station is, at its loudest: the words of reception, and one more between the last two. */
export const HEARD_AS = ['not heard', 'faint', 'quiet', 'comfortable', 'fairly loud', 'loud'] as const;
/** dB above the threshold between them. */
const LOUDNESS_CUTS: readonly Decibels[] = [0, 10, 22, 38, 52];
const LOUDNESS_SPREAD: Decibels = 4;

/** Where a station is, against where it should be. */
export const DIAL_AS = ['far below', 'below', 'as calculated', 'above', 'far above', 'off scale', 'silent'] as const;
const DIAL_CUTS: readonly Degrees[] = [-14, -6, 6, 14];
const DIAL_SPREAD: Degrees = 2.5;

/** How wide a station is on the dial, against how it should be. */
export const WIDTH_AS = ['narrower', 'as calculated', 'broader', 'much broader', 'silent'] as const;
const WIDTH_CUTS = [0.6, 1.6, 3];
const WIDTH_SPREAD = 0.35;

/** Between answers about a resistance, Ω; the lowest two lie where a meter that shows tenths of an ohm changes its figure. */
const ohmCuts = (perDecade: number): readonly Ohms[] => [
  0.15,
  0.55,
  ...Array.from({ length: 6 * perDecade + 1 }, (_, i) => 10 ** (0.25 + i / perDecade)),
];
/** Of plain resistances: half of a winding or of the phones is told from the whole. */
const FINE_CUTS = ohmCuts(4);
/** Of what is read through a junction: another meter reads another resistance. */
const COARSE_CUTS = ohmCuts(2);

/** Places where a junction is in the way: another meter's voltage reads another resistance. */
const JUNCTIONS: ReadonlySet<OhmPlace> = new Set([
  'detector-forward',
  'detector-back',
  'phones-posts',
  'phones-posts-back',
]);

/**
 * Between answers about the resistance at a place, Ω; beyond the last the meter shows overload.
 * @param place of a reading
 * @returns rising; half or quarter decades
 */
export const ohmCutsOf = (place: OhmPlace): readonly Ohms[] => (JUNCTIONS.has(place) ? COARSE_CUTS : FINE_CUTS);

/** Between half-decades of voltage, V. */
export const VOLT_CUTS: readonly Volts[] = Array.from({ length: 9 }, (_, i) => 10 ** (-3.75 + 0.5 * i));
const VOLT_SPREAD = 0.25;
const LEAST_VOLTS: Volts = 1e-4;

/** One thing that can be looked at, listened to, tried or measured on a set. */
export type Check =
  | { readonly kind: 'loudness'; readonly station: number }
  | { readonly kind: 'dial'; readonly station: number }
  | { readonly kind: 'width'; readonly station: number }
  | { readonly kind: 'volts' }
  | { readonly kind: 'ohms'; readonly place: OhmPlace }
  | { readonly kind: 'sign'; readonly sign: Sign };

/** @returns "loudness:3", "ohms:coil-to-earth", "sign:hum" */
export const checkId = (check: Check): string => {
  switch (check.kind) {
    case 'volts':
      return check.kind;
    case 'ohms':
      return `${check.kind}:${check.place}`;
    case 'sign':
      return `${check.kind}:${check.sign}`;
    default:
      return `${check.kind}:${check.station}`;
  }
};

/** A check with what it costs and what to mind. */
export interface PossibleCheck {
  readonly id: string;
  readonly check: Check;
  /** How many answers are told apart. */
  readonly answers: number;
  /** Minutes. */
  readonly effort: number;
  readonly cautions: readonly FaultCaution[];
}

const SIGN_EFFORT: Readonly<Record<SignCode, number>> = {
  'crackle-on-tapping': 0.5,
  'crackle-on-turning': 0.5,
  'scrape-at-one-place': 0.5,
  'jumps-on-sliding': 0.5,
  'sound-with-cord-moved': 0.5,
  'changes-on-knock': 0.5,
  'hand-near-moves-tuning': 0.5,
  hum: 0.5,
  'weaker-when-wet': 60,
  'louder-with-hand-on-earth': 0.7,
  'louder-with-other-wire': 5,
  'louder-with-other-earth': 6,
  'louder-at-another-spot': 2.5,
  'click-from-cell': 1.5,
  'louder-with-other-phones': 4,
  'louder-with-other-detector': 3,
  'louder-with-by-pass-off': 3,
  'louder-with-capacitor-bridged': 2,
  'buzz-from-input': 0.7,
  'switch-at-earth': 0.5,
  'hiss-at-full-volume': 0.5,
  'heater-glows': 0.5,
  'bias-as-described': 1.5,
  'swings-within-minutes': 6,
  'other-receiver-hears-it': 3,
};

const SIGN_CAUTIONS: Readonly<Partial<Record<SignCode, readonly FaultCaution[]>>> = {
  'louder-with-other-wire': ['never-in-thunder'],
  'louder-with-other-earth': ['earth-is-no-mains-earth'],
  'louder-with-hand-on-earth': ['never-in-thunder', 'no-mains-work'],
  'crackle-on-tapping': ['no-mains-work'],
  'click-from-cell': ['cell-off-the-ears'],
  'hiss-at-full-volume': ['volume-down'],
  'buzz-from-input': ['volume-down', 'no-mains-work'],
  'switch-at-earth': ['never-in-thunder'],
  'heater-glows': ['hot-glass'],
};

/** Without a fault that causes it. */
const USUAL_SIGN: Readonly<Partial<Record<SignCode, number>>> = {
  hum: 0.06,
  'weaker-when-wet': 0.06,
  'hand-near-moves-tuning': 0.08,
  'louder-with-hand-on-earth': 0.05,
  'louder-with-other-wire': 0.05,
  'louder-with-other-earth': 0.08,
  'louder-at-another-spot': 0.12,
  'click-from-cell': 0.95,
  'louder-with-other-phones': 0.06,
  'louder-with-other-detector': 0.06,
  'louder-with-by-pass-off': 0.05,
  'buzz-from-input': 0.93,
  'hiss-at-full-volume': 0.95,
  'heater-glows': 0.96,
  'bias-as-described': 0.96,
  'other-receiver-hears-it': 0.97,
};
const ELSE_SIGN = 0.04;

/** Places whose part must be taken off at one end, and how long that takes, min. */
const LIFTED: ReadonlySet<OhmPlace> = new Set(['capacitor-alone', 'primary', 'secondary', 'fixed-capacitor']);

/** Minutes that a reading takes; the far end of the earth lead is out of doors. */
const ohmsEffort = (place: OhmPlace): number =>
  LIFTED.has(place) || partOfPlace(place)?.isAlone ? 3 : place === 'earth-lead' ? 4 : place === 'leads-apart' ? 2 : 1.2;

/** A point contact on a crystal. */
export const hasWhisker = ({ set: { detector } }: BuiltSet): boolean =>
  detector.kind === 'galena' || detector.kind === 'mineral';

const isOnMains = ({ set: { load } }: BuiltSet): boolean => load.kind === 'amplifier' && load.supply === 'mains';

/** Whether the direct voltage may be measured: never on equipment that is live. */
export const hasVolts = (built: BuiltSet): boolean => !isOnMains(built);

/**
 * What can be noticed or tried on a set without measuring a resistance.
 * @param built the set
 * @returns signs; of several capacitors in the way of the signal one for each
 */
export function signsOf(built: BuiltSet): readonly Sign[] {
  const { set, circuit, parts } = built;
  const { detector, load, arrangement } = set;
  const turns = circuit.assembly.tuning.length > 0 && circuit.tuning.max > 1.05 * circuit.tuning.min;
  const inSeries = bridgedCapacitorsOf(built);
  const mayBridge = inSeries.length > 0 && !isOnMains(built);
  const each = mayBridge && inSeries.length > 1 ? inSeries : [];
  const mayBe: readonly (readonly [Sign, boolean])[] = [
    ['crackle-on-tapping', !isOnMains(built)],
    ['crackle-on-turning', turns],
    ['scrape-at-one-place', turns],
    ['jumps-on-sliding', arrangement.kind === 'slider'],
    ['sound-with-cord-moved', load.kind !== 'amplifier'],
    ['changes-on-knock', hasWhisker(built)],
    ['hand-near-moves-tuning', true],
    ['hum', true],
    ['weaker-when-wet', true],
    ['louder-with-hand-on-earth', parts.has(PART.earth) && circuit.aerial !== undefined && load.kind !== 'amplifier'],
    ['louder-with-other-wire', circuit.aerial !== undefined],
    ['louder-with-other-earth', circuit.aerial !== undefined],
    ['louder-at-another-spot', hasWhisker(built)],
    ['click-from-cell', load.kind !== 'amplifier'],
    ['louder-with-other-phones', true],
    ['louder-with-other-detector', true],
    ['louder-with-by-pass-off', parts.has(PART.byPass) && !isOnMains(built)],
    ['louder-with-capacitor-bridged', mayBridge],
    ...each.map((part) => [`louder-with-capacitor-bridged:${part}`, true] as const),
    ['buzz-from-input', load.kind === 'amplifier' && !isOnMains(built)],
    ['switch-at-earth', circuit.aerial !== undefined],
    ['hiss-at-full-volume', load.kind === 'amplifier'],
    ['heater-glows', detector.kind === 'valve'],
    ['bias-as-described', parts.has(PART.biasCell) && circuit.bias !== 0],
    ['swings-within-minutes', true],
    ['other-receiver-hears-it', true],
  ];
  return mayBe.flatMap(([sign, may]) => (may ? [sign] : []));
}

/**
 * Every check that a set allows: terminals there are, no aerial's on a frame, none on mains equipment that is live.
 * @param built the set
 * @param bench stations listened for, places of readings
 * @param asCalculated what the set shows with nothing wrong
 * @returns checks, those by ear first
 */
export function checksOf(
  built: BuiltSet,
  { stations, places }: TestBench,
  asCalculated: SetShows,
): readonly PossibleCheck[] {
  const fragile = hasWhisker(built) ? placesThroughDetector(built.circuit, places) : new Set<OhmPlace>();
  const of = (
    check: Check,
    answers: number,
    effort: number,
    cautions: readonly FaultCaution[] = [],
  ): PossibleCheck => ({
    id: checkId(check),
    check,
    answers,
    effort,
    cautions,
  });
  return [
    ...stations.map((station) => of({ kind: 'loudness', station }, HEARD_AS.length, 0.7)),
    ...stations.map((station) => of({ kind: 'dial', station }, DIAL_AS.length, 0.7)),
    ...stations.map((station) => of({ kind: 'width', station }, WIDTH_AS.length, 0.7)),
    ...signsOf(built).map((sign) => {
      const { code } = signAt(sign);
      return of({ kind: 'sign', sign }, 2, SIGN_EFFORT[code], SIGN_CAUTIONS[code]);
    }),
    ...(hasVolts(built) ? [of({ kind: 'volts' }, VOLT_CUTS.length + 1, 2)] : []),
    ...places.map((place, i) =>
      of({ kind: 'ohms', place }, ohmCutsOf(place).length + 1, ohmsEffort(place), [
        'unplug-first',
        ...(place === 'leads-apart' || place === 'earth-lead' ? (['never-in-thunder'] as const) : []),
        ...(fragile.has(place) ? (['no-high-ohm-range'] as const) : []),
        ...(leadsMatter(asCalculated.ohms[i]) ? (['subtract-meter-leads'] as const) : []),
      ]),
    ),
  ];
}

/** σ of log₁₀ R; leads add about 0.1 Ω unless zeroed. */
const readingSpread = (R: Ohms, place: OhmPlace): number =>
  Math.hypot(0.03, 0.1 / Math.max(R, 0.05), JUNCTIONS.has(place) ? 0.1 : 0);

/** Shares of a normal distribution between cuts, into `out` from `at`. */
function shares(value: number, spread: number, cuts: readonly number[], weight: number, out: Float64Array): void {
  let below = 0;
  for (let k = 0; k < cuts.length; k++) {
    const upTo = normalShare((cuts[k] - value) / spread);
    out[k] += weight * (upTo - below);
    below = upTo;
  }
  out[cuts.length] += weight * (1 - below);
}

const logs = (cuts: readonly number[]): readonly number[] => cuts.map(Math.log10);
const COARSE_LOGS = logs(COARSE_CUTS);
const FINE_LOGS = logs(FINE_CUTS);
const VOLT_LOGS = logs(VOLT_CUTS);
const WIDTH_LOGS = WIDTH_CUTS.map(Math.log);

const notHeard = (margin: Decibels, spread: Decibels): number =>
  normalShare((3 - margin) / Math.hypot(LOUDNESS_SPREAD, spread));

/**
 * What faults and set say together of a sign: a change in loudness as far as it is heard. Two faults at once: the one that
 * shows it more.
 */
function signProbability(sign: Sign, faults: readonly PartFault[], shown: SetShows): number {
  const { code, part } = signAt(sign);
  const usual = USUAL_SIGN[code] ?? ELSE_SIGN;
  const own = faults.flatMap((fault, k) => {
    const full = part === undefined || fault.part === part ? fault.signs[code] : undefined;
    if (full === undefined) return [];
    return usual + (full - usual) * noticedShare(code, fault.code, shown, shown.mended?.[k]);
  });
  if (own.length === 0) return usual;
  return usual > 0.5 ? Math.min(...own) : Math.max(...own);
}

/**
 * How likely each answer to a check is.
 * @param check asked
 * @param shown what the set with its faults shows, and how loud it is with each of them mended
 * @param asCalculated what it shows with nothing wrong
 * @param bench stations and places
 * @param faults planted, for signs
 * @param stationSpread what is not known of each station's own level, dB; default nothing
 * @returns probabilities that add up to 1
 */
export function answersOf(
  { check, answers }: PossibleCheck,
  shown: SetShows,
  asCalculated: SetShows,
  { stations, places }: TestBench,
  faults: readonly PartFault[],
  stationSpread: Decibels = 0,
): Float64Array {
  const out = new Float64Array(answers);
  switch (check.kind) {
    case 'loudness':
      shares(
        shown.margins[stations.indexOf(check.station)],
        Math.hypot(LOUDNESS_SPREAD, stationSpread),
        LOUDNESS_CUTS,
        1,
        out,
      );
      return out;
    case 'dial': {
      const i = stations.indexOf(check.station);
      const silent = notHeard(shown.margins[i], stationSpread);
      out[DIAL_AS.length - 1] = silent;
      if (shown.within[i]) shares(shown.scale[i] - asCalculated.scale[i], DIAL_SPREAD, DIAL_CUTS, 1 - silent, out);
      else out[DIAL_AS.length - 2] += 1 - silent;
      return out;
    }
    case 'width': {
      const i = stations.indexOf(check.station);
      const silent = notHeard(shown.margins[i], stationSpread);
      out[WIDTH_AS.length - 1] = silent;
      const ratio = Math.log(asCalculated.loadedQ[i] / shown.loadedQ[i]);
      shares(Number.isFinite(ratio) ? ratio : 3, WIDTH_SPREAD, WIDTH_LOGS, 1 - silent, out);
      return out;
    }
    case 'volts':
      shares(Math.log10(Math.abs(shown.directVoltage) + LEAST_VOLTS), VOLT_SPREAD, VOLT_LOGS, 1, out);
      return out;
    case 'ohms': {
      const at = places.indexOf(check.place);
      const cuts = JUNCTIONS.has(check.place) ? COARSE_LOGS : FINE_LOGS;
      const all = [shown.ohms, ...(shown.ohmsBetween ?? [])];
      for (const { [at]: R } of all)
        if (R < OVERLOAD)
          shares(Math.log10(Math.max(R, 0.05)), readingSpread(R, check.place), cuts, 1 / all.length, out);
        else out[cuts.length] += 1 / all.length;
      return out;
    }
    case 'sign': {
      const p = signProbability(check.sign, faults, shown);
      out[0] = 1 - p;
      out[1] = p;
      return out;
    }
  }
}

/** Which of a check's answers a figure is. */
export const answerOfFigure = {
  /** @param reading Ω; Infinity: overload. */
  ohms: (reading: Ohms, place: OhmPlace): number => {
    const cuts = ohmCutsOf(place);
    return reading < OVERLOAD ? placeAmong(cuts, reading) : cuts.length;
  },
  volts: (reading: Volts): number => placeAmong(VOLT_CUTS, Math.abs(reading)),
  /** @param shift of the scale reading from the calculated one, degrees. */
  dial: (shift: Degrees): number => placeAmong(DIAL_CUTS, shift),
};

function placeAmong(cuts: readonly number[], value: number): number {
  const k = cuts.findIndex((cut) => value < cut);
  return k < 0 ? cuts.length : k;
}
