import { loudnessOf } from '../reception/hearing/index.ts';
import type {
  DialPlace,
  Disturbance,
  Hearing,
  Reception,
  Stage,
  StageId,
  StationReception,
} from '../reception/path/types.ts';
import { verdictOf } from '../reception/verdict.ts';
import type { Ratio } from '../units/quantities.ts';
import type { BudgetItem } from './budget.ts';
import type { DrawnHearing } from './drawn-set.ts';
import type { Drawn, Ranged } from './draws.ts';
import { type DialUncertainty, rangedDial } from './ranged-dial.ts';
import type { StationUncertainty } from './uncertainty.ts';

/** The figures of a station that have ranges, by their names in a reception. */
export type RangedFigure =
  | 'fieldStrength'
  | 'emf'
  | 'tunedCircuitVoltage'
  | 'detectorVoltage'
  | 'directVoltage'
  | 'audioVoltage'
  | 'phonesPower'
  | 'distortion'
  | 'detectorInputResistance'
  | 'loadedQ'
  | 'unloadedQ'
  | 'bandwidth'
  | 'soundPressureLevel'
  | 'margin';

/** A station as sets built like this one have it: figures are medians, `ranges` hold nine in ten. */
export interface RangedStation extends StationReception {
  /** 90 %, in the units of the figures. */
  readonly ranges: Readonly<Partial<Record<RangedFigure, readonly [low: number, high: number]>>>;
  /** Of all such sets, the share whose dial reaches it, in which it is heard and no other masks it. */
  readonly chance: Ratio;
  /** What makes the doubt about the level at the ear, most first. */
  readonly budget: readonly BudgetItem[];
}

/** A reception in which the figures of stations are medians with ranges. */
export interface RangedReception extends Reception {
  /** Those of which nothing arrives, or whose ranges were not asked for, are as they were. */
  readonly stations: readonly (StationReception | RangedStation)[];
}

/**
 * Whether the figures of a station have ranges.
 * @param station of a reception.
 * @returns true for one that `rangedStation` has made.
 */
export const hasRanges = (station: StationReception): station is RangedStation => 'ranges' in station;

/**
 * A reception whose stations have the figures, and the verdicts that follow, of all sets built like this one.
 * @param reception of the set
 * @param uncertainties of its stations, in any order; others stay as they are
 * @param dialUncertainty of its dial; left out: the dial has no ranges
 * @returns the same reception, those stations as `rangedStation` has them
 */
export function rangedReception(
  reception: Reception,
  uncertainties: readonly (StationUncertainty | undefined)[],
  dialUncertainty?: DialUncertainty,
): RangedReception {
  const byIndex = new Map(uncertainties.flatMap((u) => (u ? [[u.index, u] as const] : [])));
  const stations = reception.stations.map((station) => {
    const uncertainty = byIndex.get(station.index);
    return uncertainty ? rangedStation(station, uncertainty) : station;
  });
  const dial = dialUncertainty ? rangedDial(reception.dial, dialUncertainty) : reception.dial;
  const marks = dial.stations.map((mark) => {
    const { verdict, dial: place } = stations[mark.index];
    return { ...mark, verdict, place };
  });
  return { ...reception, stations, dial: { ...dial, stations: marks } };
}

/** A figure of this set by how far its median and range lie from the middle; a ratio where both are of one sign. */
export function rangedAbout(now: number, { middle, median, range: [low, high] }: Drawn, isLevel = false): Ranged {
  const ratio = now / middle;
  const moved = (x: number): number => (isLevel || !(ratio > 0 && ratio < 1e9) ? x + now - middle : x * ratio);
  return { median: moved(median), range: [moved(low), moved(high)] };
}

/**
 * A station with its figures, and the verdict that follows, as the draws have them. Draws of the same set before a small
 * change serve until those of the changed one are there: what counts is how far medians and ranges lie from the middle.
 * @param station of a reception.
 * @param uncertainty of the same station.
 * @returns a copy with medians for figures, their 90 % ranges in the same units, the chance of hearing it (0 to 1) and the budget.
 */
export function rangedStation(station: StationReception, uncertainty: StationUncertainty): RangedStation {
  const { figures: f, chance, budget } = uncertainty;
  const within = station.dial !== undefined;
  const hearing = station.hearing && {
    ...station.hearing,
    ...usualHearing(station.hearing, { ...uncertainty, level: f.soundPressureLevel }),
    ...usualIntelligibility(station.hearing.intelligibility, uncertainty.intelligibility),
  };
  const loadedQ = rangedAbout(station.loadedQ, f.loadedQ);
  const broader = station.bandwidth * station.loadedQ;
  const figures: Record<RangedFigure, Ranged | undefined> = {
    fieldStrength: rangedAbout(station.fieldStrength, uncertainty.fieldStrength),
    emf: rangedAbout(station.emf, f.emf),
    tunedCircuitVoltage: rangedAbout(station.tunedCircuitVoltage, f.tunedCircuitVoltage),
    detectorVoltage: rangedAbout(station.detectorVoltage, f.detectorVoltage),
    directVoltage: rangedAbout(station.directVoltage, f.directVoltage),
    audioVoltage: rangedAbout(station.audioVoltage, f.audioVoltage),
    phonesPower: rangedAbout(station.phonesPower, f.phonesPower),
    distortion: rangedAbout(station.distortion, f.distortion),
    detectorInputResistance: rangedAbout(station.detectorInputResistance, f.detectorInputResistance),
    loadedQ,
    unloadedQ: Number.isFinite(station.unloadedQ) ? rangedAbout(station.unloadedQ, f.unloadedQ) : undefined,
    bandwidth: { median: broader / loadedQ.median, range: [broader / loadedQ.range[1], broader / loadedQ.range[0]] },
    soundPressureLevel: station.hearing && rangedAbout(station.hearing.level, f.soundPressureLevel, true),
    margin: station.hearing && rangedAbout(station.hearing.margin, uncertainty.margin, true),
  };
  const known = Object.entries(figures).flatMap(([id, ranged]) => (ranged ? [[id, ranged] as const] : []));
  const heard = hearing?.loudness ?? 'not heard';
  return {
    ...station,
    ...Object.fromEntries(known.map(([id, { median }]) => [id, median])),
    ranges: Object.fromEntries(known.map(([id, { range }]) => [id, range])),
    dial: station.dial && rangedPlace(station.dial, uncertainty.reading),
    hearing,
    heard,
    disturbance: station.disturbance && rangedDisturbance(station.disturbance, uncertainty),
    disturbances: station.disturbances.map((one) => rangedDisturbance(one, uncertainty)),
    verdict: verdictOf(within, heard, station.disturbances),
    path: station.path.map((stage) => rangedStage(stage, { station, uncertainty, rangedFigures: figures, hearing })),
    chance,
    budget,
  };
}

const rangedPlace = (place: DialPlace, reading: StationUncertainty['reading']): DialPlace =>
  reading ? { ...place, range: [place.scale + reading[0], place.scale + reading[1]] } : place;

function rangedDisturbance(one: Disturbance, { disturbances }: StationUncertainty): Disturbance {
  const draws = disturbances.find(({ index }) => index === one.index);
  if (!draws) return one;
  const [low, high] = rangedAbout(one.separation, draws.separation, true).range;
  return { ...one, range: [Math.min(low, one.separation), Math.max(high, one.separation)] };
}

/** The index as it is with these draws: between 0 and 1. */
function usualIntelligibility(now: Ratio | undefined, draws: Drawn | undefined) {
  if (now === undefined || !draws) return { intelligibility: now };
  const { median, range } = rangedAbout(now, draws, true);
  const within = (x: number): Ratio => Math.min(1, Math.max(0, x));
  return {
    intelligibility: within(median),
    intelligibilityRange: [within(range[0]), within(range[1])] as const,
  };
}

/** Level, margins and loudness of a station as sets built like this one have them. */
type HeardFigures = Pick<Hearing, 'level' | 'levelA' | 'margin' | 'marginInSilence' | 'loudness'>;

/**
 * What of hearing a station follows from the draws.
 * @param now dB SPL, dB(A) and dB over threshold in the set with every input in its middle.
 * @param draws level and margins in all sets drawn
 * @returns the same as medians, and the loudness that follows from them.
 */
export function usualHearing(
  now: Omit<HeardFigures, 'loudness'>,
  draws: Pick<DrawnHearing, 'level' | 'margin' | 'marginInSilence'>,
): HeardFigures {
  const level = rangedAbout(now.level, draws.level, true).median;
  const levelA = now.levelA + level - now.level;
  const over = rangedAbout(now.margin, draws.margin, true).median;
  const inSilence = rangedAbout(now.marginInSilence, draws.marginInSilence, true).median;
  return { level, levelA, margin: over, marginInSilence: inSilence, loudness: loudnessOf(inSilence, over, levelA) };
}

/** Which figure is the level of a stage. */
const LEVEL: Readonly<Record<StageId, RangedFigure>> = {
  field: 'fieldStrength',
  aerial: 'emf',
  'tuned circuit': 'tunedCircuitVoltage',
  detector: 'detectorVoltage',
  audio: 'audioVoltage',
  phones: 'phonesPower',
  ear: 'soundPressureLevel',
};

function rangedStage(
  stage: Stage,
  {
    station,
    uncertainty,
    rangedFigures,
    hearing,
  }: {
    station: StationReception;
    uncertainty: StationUncertainty;
    rangedFigures: Readonly<Record<RangedFigure, Ranged | undefined>>;
    hearing: Hearing | undefined;
  },
): Stage {
  const level = rangedFigures[LEVEL[stage.id]];
  if (stage.value === undefined || !level) return stage;
  const ranged = { ...stage, value: level.median, range: level.range };
  const medianOf = (id: RangedFigure): number => rangedFigures[id]?.median ?? Number.NaN;
  const rangesOf = (ids: Readonly<Record<string, RangedFigure>>) =>
    Object.fromEntries(
      Object.entries(ids).flatMap(([name, id]) => {
        const range = rangedFigures[id]?.range;
        return range ? [[name, range] as const] : [];
      }),
    );
  const { figures } = uncertainty;
  const { facts } = stage;
  switch (facts.stage) {
    case 'aerial': {
      const power = rangedAbout(facts.availablePower, figures.aerialPower);
      // So that the figures of one line agree: the median of a product is not the product of medians.
      const height =
        station.emf > 0 ? level.median / medianOf('fieldStrength') / (station.emf / station.fieldStrength) : 1;
      const effectiveHeight = facts.effectiveHeight * height;
      const heights = rangedAbout(facts.effectiveHeight, uncertainty.effectiveHeight);
      return {
        ...ranged,
        facts: { ...facts, effectiveHeight, emf: level.median, availablePower: power.median },
        ranges: { effectiveHeight: heights.range, emf: level.range, availablePower: power.range },
      };
    }
    case 'tuned circuit': {
      const gain = medianOf('emf') > 0 ? level.median / medianOf('emf') : 0;
      return {
        ...ranged,
        facts: { ...facts, gain, loadedQ: medianOf('loadedQ'), bandwidth: medianOf('bandwidth') },
        ranges: {
          gain: rangedAbout(facts.gain, figures.gain).range,
          ...rangesOf({ loadedQ: 'loadedQ', bandwidth: 'bandwidth' }),
        },
      };
    }
    case 'detector': {
      const power = rangedAbout(facts.inputPower, figures.detectorPower);
      return {
        ...ranged,
        facts: { ...facts, inputPower: power.median, inputResistance: medianOf('detectorInputResistance') },
        ranges: { inputPower: power.range, ...rangesOf({ inputResistance: 'detectorInputResistance' }) },
      };
    }
    case 'audio':
      return {
        ...ranged,
        facts: { ...facts, directVoltage: medianOf('directVoltage'), distortion: medianOf('distortion') },
        ranges: rangesOf({ directVoltage: 'directVoltage', distortion: 'distortion' }),
      };
    case 'ear': {
      const shift = hearing && station.hearing ? hearing.level - station.hearing.level : 0;
      const tone = facts.tone && { ...facts.tone, level: facts.tone.level + shift };
      return { ...ranged, facts: { ...facts, hearing, tone } };
    }
    default:
      return ranged;
  }
}
