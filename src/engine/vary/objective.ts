import { decibels } from '../units/quantities.ts';
import type { Guard, Objective, Question } from './question.ts';
import type { Trial } from './trial.ts';

/** From here on other stations do not disturb, dB: what the interference calls "clear". */
export const CLEAR = 30;
/** From here on a station is heard for itself, however disturbed, dB. */
const NOT_MASKED = 3;
/** Of each decibel that a station grows louder, so much is counted beside a decibel of clearance. Common practice, no source. */
const LOUDNESS_BESIDE_CLEARANCE = 0.25;

/** Per neper that the dial's low end lies beside the band's, in hundredths of the band covered. */
const LOW_END = 5;

/** The figure of an objective; undefined for a station beyond the dial. */
export function figureOf(trial: Trial, objective: Objective): number | undefined {
  switch (objective.of) {
    case 'loudness':
    case 'clearance':
    case 'audibility': {
      const { isWithin, level, clearance, margin } = trial.figures(objective.station);
      if (!isWithin) return undefined;
      return objective.of === 'loudness' ? level : objective.of === 'clearance' ? clearance : margin;
    }
    case 'bandwidth':
      return trial.tuned(objective.station).within ? trial.bandwidth(objective.station) : undefined;
    case 'stations heard':
      return trial.stationsHeard();
    case 'band covered': {
      const { lowest, highest } = trial.curve();
      const covered = Math.log(Math.min(highest, objective.to) / Math.max(lowest, objective.from));
      return Math.max(0, covered) / Math.log(objective.to / objective.from);
    }
  }
}

/** Worse than anything that can be tuned in. */
const NOTHING = -1e6;
/** Worse than anything that keeps the guards. */
const UNGUARDED = -1e3;
/** Rounding of the last figure is no loss. */
const HAIR = 1e-6;

/**
 * What a search goes by: the objective's figure, in decibels where it is not one already. Clearance counts up to where
 * it is clear, and loudness a little beside it. What breaks a guard is worse than all that does not, the more the further.
 */
export function scoreOf(trial: Trial, { objective, guard = [] }: Pick<Question, 'objective' | 'guard'>): number {
  const broken = guard.reduce((sum, one) => sum + brokenBy(trial, one), 0);
  if (broken > 0) return UNGUARDED - Math.min(broken, 1e5);
  const figure = figureOf(trial, objective);
  if (figure === undefined) return NOTHING;
  switch (objective.of) {
    case 'clearance':
      return Math.min(figure, CLEAR) + LOUDNESS_BESIDE_CLEARANCE * trial.figures(objective.station).level;
    case 'bandwidth':
      return decibels(figure);
    case 'band covered': {
      // Among those that cover as much, the one whose low end is the band's: the capacitor is then used whole.
      const off = Math.abs(Math.log(trial.curve().lowest / objective.from));
      return 100 * figure - LOW_END * off;
    }
    default:
      return figure;
  }
}

/** By how much a guard is broken; 0 where it holds. */
function brokenBy(trial: Trial, { objective, atLeast }: Guard): number {
  const figure = figureOf(trial, objective);
  if (figure === undefined) return 1e3;
  return figure >= atLeast - HAIR ? 0 : atLeast - figure;
}

export const isAllowed = (score: number): boolean => score > UNGUARDED;

/**
 * What is wanted for a station as it stands, and what must stay: while it is heard but not clear of others, clearance;
 * otherwise loudness. What is clear stays clear, what is heard stays heard; a station that is not heard shall not, once
 * heard, be masked.
 */
export function wishFor(now: Trial, station: number): Pick<Question, 'objective' | 'guard'> {
  const { isWithin, heard, clearance } = now.figures(station);
  if (!isWithin) return { objective: { of: 'loudness', station } };
  const audible: Guard = { objective: { of: 'audibility', station }, atLeast: 0 };
  if (heard === 'not heard')
    return {
      objective: { of: 'loudness', station },
      guard: [{ objective: { of: 'clearance', station }, atLeast: Math.min(clearance, NOT_MASKED) }],
    };
  return {
    objective: { of: clearance < CLEAR ? 'clearance' : 'loudness', station },
    guard: [{ objective: { of: 'clearance', station }, atLeast: Math.min(clearance, CLEAR) }, audible],
  };
}
