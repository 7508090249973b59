import type { Reception, Stage, StageId, StationReception } from '../reception/path/types.ts';
import { verdictOf } from '../reception/verdict.ts';
import type { Ratio } from '../units/quantities.ts';
import type { BudgetItem } from './budget.ts';
import type { Ranged } from './draws.ts';
import type { FigureId } from './figures.ts';
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
  | 'bandwidth'
  | 'soundPressureLevel'
  | 'margin';

/** A station with what nine in ten of all such sets would show. */
export interface RangedStation extends StationReception {
  /** 90 %. */
  readonly ranges: Readonly<Partial<Record<RangedFigure, readonly [low: number, high: number]>>>;
  /** Of all such sets. */
  readonly medians: Readonly<Partial<Record<RangedFigure, number>>>;
  /** Of all such sets, the share in which it is heard with no other station. */
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
 * A reception with ranges, medians, chance and budget beside its figures. The figures and verdicts stay those of the
 * set as described, which suggestions, sheets, comparisons and the page have too.
 * @param reception of the set
 * @param uncertainties of its stations, in any order; of others nothing is added
 * @returns the same reception, each of those stations with more
 */
export function rangedReception(
  reception: Reception,
  uncertainties: readonly (StationUncertainty | undefined)[],
): RangedReception {
  const byIndex = new Map(uncertainties.flatMap((u) => (u ? [[u.index, u] as const] : [])));
  const stations = reception.stations.map((station) => {
    const uncertainty = byIndex.get(station.index);
    if (!uncertainty) return station;
    const { ranges, medians, chance, budget, path } = rangedStation(station, uncertainty);
    return {
      ...station,
      ranges,
      medians,
      chance,
      budget,
      path: station.path.map((stage, i) => ({ ...stage, range: path[i].range, median: path[i].value })),
    };
  });
  return { ...reception, stations };
}

/**
 * A station with its figures, and the verdict that follows, as the draws have them.
 * @param station of a reception.
 * @param uncertainty of the same station.
 * @returns a copy with medians for figures, their 90 % ranges in the same units, the chance of hearing it (0 to 1) and the budget.
 */
export function rangedStation(station: StationReception, uncertainty: StationUncertainty): RangedStation {
  const { figures: f, fieldStrength, margin, marginInSilence, loudness, chance, budget } = uncertainty;
  const within = station.dial !== undefined;
  const broader = station.bandwidth * station.loadedQ;
  const bandwidth: Ranged = {
    median: broader / f.loadedQ.median,
    range: [broader / f.loadedQ.range[1], broader / f.loadedQ.range[0]],
  };
  const found: Record<RangedFigure, Ranged | undefined> = {
    fieldStrength,
    emf: f.emf,
    tunedCircuitVoltage: f.tunedCircuitVoltage,
    detectorVoltage: f.detectorVoltage,
    directVoltage: f.directVoltage,
    audioVoltage: f.audioVoltage,
    phonesPower: f.phonesPower,
    distortion: f.distortion,
    detectorInputResistance: f.detectorInputResistance,
    loadedQ: f.loadedQ,
    bandwidth,
    soundPressureLevel: within ? f.soundPressureLevel : undefined,
    margin: within ? margin : undefined,
  };
  const known = Object.entries(found).flatMap(([id, ranged]) => (ranged ? [[id, ranged] as const] : []));
  const hearing = station.hearing && {
    ...station.hearing,
    loudness,
    level: f.soundPressureLevel.median,
    margin: margin.median,
    marginInSilence: marginInSilence.median,
  };
  const [low, high] = f.soundPressureLevel.range;
  return {
    ...station,
    ...Object.fromEntries(known.map(([id, { median }]) => [id, median])),
    ranges: Object.fromEntries(known.map(([id, { range }]) => [id, range])),
    medians: Object.fromEntries(known.map(([id, { median }]) => [id, median])),
    hearing,
    heard: hearing ? loudness : 'not heard',
    verdict: verdictOf(within, loudness, station.disturbances),
    spread: (high - low) / 2,
    path: station.path.map((stage) => rangedStage(stage, uncertainty, { station, hearing, bandwidth })),
    chance,
    budget,
  };
}

/** Which figure is the level of a stage. */
const LEVEL: Readonly<Record<Exclude<StageId, 'field'>, FigureId>> = {
  aerial: 'emf',
  'tuned circuit': 'tunedCircuitVoltage',
  detector: 'detectorVoltage',
  audio: 'audioVoltage',
  phones: 'phonesPower',
  ear: 'soundPressureLevel',
};

function rangedStage(
  stage: Stage,
  { figures: f, fieldStrength }: StationUncertainty,
  {
    station,
    hearing,
    bandwidth,
  }: { station: StationReception; hearing: StationReception['hearing']; bandwidth: Ranged },
): Stage {
  if (stage.value === undefined) return stage;
  const level = stage.id === 'field' ? fieldStrength : f[LEVEL[stage.id]];
  const ranged = { ...stage, value: level.median, range: level.range };
  const { facts } = stage;
  switch (facts.stage) {
    case 'aerial': {
      // Of the usual such aerial: what is around it lowers the height calculated for it alone.
      const lower = f.emf.median / fieldStrength.median / (station.emf / station.fieldStrength);
      const effectiveHeight = facts.effectiveHeight * lower;
      return {
        ...ranged,
        facts: { ...facts, effectiveHeight, emf: f.emf.median, availablePower: f.aerialPower.median },
      };
    }
    case 'tuned circuit':
      return {
        ...ranged,
        facts: {
          ...facts,
          gain: f.tunedCircuitVoltage.median / f.emf.median,
          loadedQ: f.loadedQ.median,
          bandwidth: bandwidth.median,
        },
      };
    case 'detector':
      return {
        ...ranged,
        facts: { ...facts, inputPower: f.detectorPower.median, inputResistance: f.detectorInputResistance.median },
      };
    case 'audio':
      return {
        ...ranged,
        facts: { ...facts, directVoltage: f.directVoltage.median, distortion: f.distortion.median },
      };
    case 'ear': {
      const shift = hearing && facts.hearing ? hearing.level - facts.hearing.level : 0;
      const tone = facts.tone && { ...facts.tone, level: facts.tone.level + shift };
      return { ...ranged, facts: { ...facts, hearing, tone } };
    }
    default:
      return ranged;
  }
}
