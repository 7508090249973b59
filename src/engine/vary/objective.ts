import { MASKED } from '../reception/interference/separation.ts';
import { isHeard } from '../reception/verdict.ts';
import { type Decibels, decibels } from '../units/quantities.ts';
import type { Figures, Goal, Guard, Objective, Question } from './question.ts';
import type { SetFigures } from './trial.ts';

/** From here on other stations do not disturb, dB: what the interference calls "clear". */
export const CLEAR = 30;
/** Weight of a decibel of loudness relative to a decibel of clearance. Common practice, no source. */
const LOUDNESS_WEIGHT = 0.25;

/** Per neper between the low ends of dial and band, in hundredths of the band covered. */
const LOW_END = 5;

/** A station so far from the ends of the dial is on it with the tolerances of the parts as well, nepers; what that is worth, dB. */
const WELL_WITHIN = 0.05;
export const WITHIN_WORTH: Decibels = 10;
/** What a station more is worth, and each neper that the dial is moved, dB. */
const PER_STATION = 3;
const PER_MOVE = -5;

/** How an objective is measured from the figures of a set. */
interface Measure<O extends Objective> {
  /** Undefined for a station beyond the dial. */
  readonly figure: (trial: SetFigures, objective: O) => number | undefined;
  /** What a search goes by, from the figure, in decibels where it is not one already. */
  readonly score: (figure: number, trial: SetFigures, objective: O) => number;
}

const unchanged = (figure: number): number => figure;
const withinDial = (trial: SetFigures, station: number) => {
  const figures = trial.figures(station);
  return figures.isWithin ? figures : undefined;
};

const MEASURES: { readonly [K in Objective['of']]: Measure<Objective & { readonly of: K }> } = {
  loudness: { figure: (trial, { station }) => withinDial(trial, station)?.level, score: unchanged },
  clearance: {
    figure: (trial, { station, from }) => {
      const figures = withinDial(trial, station);
      return figures && (from === undefined ? figures.clearance : trial.clearanceFrom(station, from));
    },
    // It counts up to where it is clear, and loudness with less weight.
    score: (figure, trial, { station }) => Math.min(figure, CLEAR) + LOUDNESS_WEIGHT * trial.figures(station).level,
  },
  audibility: { figure: (trial, { station }) => withinDial(trial, station)?.margin, score: unchanged },
  bandwidth: {
    figure: (trial, { station }) => (withinDial(trial, station) ? trial.bandwidth(station) : undefined),
    score: (figure) => decibels(figure),
  },
  'audio bandwidth': {
    figure: (trial, { station }) => (withinDial(trial, station) ? trial.audioBandwidth(station) : undefined),
    score: (figure) => decibels(figure),
  },
  'stations heard': { figure: (trial) => trial.stationsHeard().length, score: unchanged },
  'band covered': {
    figure: (trial, { from, to }) => {
      const { lowest, highest, isTuned } = trial.curve();
      if (!isTuned) return 0;
      const covered = Math.log(Math.min(highest, to) / Math.max(lowest, from));
      return Math.max(0, covered) / Math.log(to / from);
    },
    // Among those that cover as much, the one whose low end is the band's: the capacitor is then used whole.
    score: (figure, trial, { from }) => 100 * figure - LOW_END * Math.abs(Math.log(trial.curve().lowest / from)),
  },
  reach: {
    figure: (trial, { station, others, lowest }) => {
      if (!withinDial(trial, station)) return undefined;
      const inside = Math.min(1, trial.insideDial(station) / WELL_WITHIN);
      const left = others.filter((other) => trial.insideDial(other) >= 0).length;
      const moved = Math.abs(Math.log(trial.curve().lowest / lowest));
      return WITHIN_WORTH * inside + PER_STATION * left + PER_MOVE * moved;
    },
    score: unchanged,
  },
  parts: { figure: (trial) => -trial.parts(), score: unchanged },
  goals: {
    figure: (trial, { goals }) => goals.reduce((sum, goal) => sum + (goal.weight ?? 1) * worthOf(trial, goal), 0),
    score: unchanged,
  },
};

/** Of a goal's figure, in decibels: a station is worth 3 dB, a part 1 dB, a hundredth of the band 1 dB. Common practice, no source. */
const DECIBELS_OF: { readonly [K in Goal['objective']['of']]: (figure: number) => Decibels } = {
  loudness: unchanged,
  clearance: unchanged,
  audibility: unchanged,
  bandwidth: decibels,
  'audio bandwidth': decibels,
  'stations heard': (count) => PER_STATION * count,
  'band covered': (share) => 100 * share,
  reach: unchanged,
  parts: unchanged,
};
/** A goal for a station beyond the dial, dB; */
const BEYOND = -200;
/** and for each neper it lies beyond. */
const PER_NEPER = -100;

/**
 * What a goal is worth as it is met: decibels for levels and for the ratio of widths, up to what is enough.
 * A station beyond the dial is worth the less the further it lies.
 * @param trial a set, or its medians
 * @param goal what is wanted, and how much is enough
 * @returns dB; differences between two sets are what counts
 */
export function worthOf(trial: SetFigures, { objective, enough = Number.POSITIVE_INFINITY }: Goal): Decibels {
  const figure = figureOf(trial, objective);
  if (figure === undefined)
    return BEYOND + PER_NEPER * ('station' in objective ? trial.beyondDial(objective.station) : 0);
  // Clear of a station that is not there at all is as clear as can be.
  const counted = Math.min(figure, enough, MOST_FIGURE);
  const least = LEAST_OF[objective.of];
  if (least === undefined || !('station' in objective)) return worthOfFigure(objective.of, counted);
  const missing = missingToHear(trial.figures(objective.station));
  return missing === undefined
    ? worthOfFigure(objective.of, counted)
    : worthOfFigure(objective.of, Math.min(counted, least)) - missing;
}

/** A station that is not heard is clear of nothing, and its tones end where speech begins, Hz. */
const LEAST_OF: { readonly [K in Goal['objective']['of']]?: number } = { clearance: 0, 'audio bandwidth': 300 };
const MOST_MISSING: Decibels = 100;

/** What a station lacks to be heard, below the hearing threshold or masked by another, dB; undefined where it is heard. */
function missingToHear({ verdict, margin, clearance }: Figures): Decibels | undefined {
  if (isHeard(verdict)) return undefined;
  return Math.min(MOST_MISSING, Math.max(0, -margin, MASKED - clearance));
}

/** The same of a figure by itself. */
export const worthOfFigure = (of: Goal['objective']['of'], figure: number): Decibels => DECIBELS_OF[of](figure);
const MOST_FIGURE = 1e5;

// The compiler cannot follow that the entry under an objective's own name takes that objective.
const measureOf = (objective: Objective) => MEASURES[objective.of] as Measure<Objective>;

/** The figure of an objective; undefined for a station beyond the dial. */
export const figureOf = (trial: SetFigures, objective: Objective): number | undefined =>
  measureOf(objective).figure(trial, objective);

/** Worse than anything that can be tuned in. */
const UNTUNABLE = -1e6;
/** Worse than anything that keeps the guards. */
const UNGUARDED = -1e3;
/** Rounding of the last figure is no loss. */
const ROUNDING = 1e-6;

/**
 * What a search goes by: the objective's figure, in decibels where it is not one already. What breaks a guard is worse
 * than all that does not, the more the further.
 * @param floor the guards of what is no better than this are not asked: it is no answer in any case.
 */
export function scoreOf(
  trial: SetFigures,
  { objective, guard = [] }: Pick<Question, 'objective' | 'guard'>,
  floor = Number.NEGATIVE_INFINITY,
): number {
  const figure = figureOf(trial, objective);
  const score = figure === undefined ? UNTUNABLE : measureOf(objective).score(figure, trial, objective);
  if (score <= floor && isAllowed(score)) return score;
  const broken = guard.reduce((sum, one) => sum + brokenBy(trial, one), 0);
  return broken > 0 ? UNGUARDED - Math.min(broken, 1e5) : score;
}

/** By how much a guard is broken; 0 where it holds. */
function brokenBy(trial: SetFigures, { objective, atLeast }: Guard): number {
  const figure = figureOf(trial, objective);
  if (figure === undefined) return 1e3;
  return figure >= atLeast - ROUNDING ? 0 : atLeast - figure;
}

export const isAllowed = (score: number): boolean => score > UNGUARDED;

/** To bring a station onto the dial, and leave on it those that are heard. */
export const reachObjective = (now: SetFigures, station: number): Objective & { readonly of: 'reach' } => ({
  of: 'reach',
  station,
  others: now.stationsHeard(),
  lowest: now.curve().lowest,
});

/**
 * What is wanted for a station as it stands, and what must stay: while it is heard but not clear of others, clearance;
 * otherwise loudness. What is clear stays clear, what is heard stays heard; a station that is not heard shall not, once
 * heard, be masked.
 */
export function wishFor(now: SetFigures, station: number): Pick<Question, 'objective' | 'guard'> {
  const { isWithin, heard, clearance } = now.figures(station);
  if (!isWithin) return { objective: reachObjective(now, station) };
  const audible: Guard = { objective: { of: 'audibility', station }, atLeast: 0 };
  if (heard === 'not heard')
    return {
      objective: { of: 'loudness', station },
      guard: [{ objective: { of: 'clearance', station }, atLeast: Math.min(clearance, MASKED) }],
    };
  return {
    objective: { of: clearance < CLEAR ? 'clearance' : 'loudness', station },
    guard: [{ objective: { of: 'clearance', station }, atLeast: Math.min(clearance, CLEAR) }, audible],
  };
}
