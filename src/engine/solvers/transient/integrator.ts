import type { StateSpace } from '../modes/state-space.ts';
import { advanceAny, advanceOne, singleJunction } from './advance.ts';
import type { StepCoefficients, StepRow } from './coefficients.ts';
import { type CoreState, coreState, MOST_WATCHED, type ReducedRow, reduceRow } from './core-state.ts';
import { type Device, lawOf } from './devices.ts';
import { restWithCells } from './rest-state.ts';
import { type StationWave, sourceWeights } from './sources.ts';

/** The stepping itself: modes, waves and detectors, nothing allocated as it goes. */
export interface Core extends Pick<CoreState, 'k' | 'zr' | 'zi' | 'current' | 'wave' | 'drive' | 'sums'> {
  reduce(row: StepRow): ReducedRow;
  /** Whatever one of these rows does is summed at every step; at most one costs little. */
  watch(rows: readonly ReducedRow[]): void;
  advance(from: number, steps: number): void;
}

/** @param h seconds from step to step. */
export function makeCore(
  k: StepCoefficients,
  emfs: StateSpace['emfs'],
  devices: readonly Device[],
  detectorRows: readonly StepRow[],
  stations: readonly StationWave[],
  h: number,
): Core {
  const state = coreState(k, emfs, devices, detectorRows, stations, h);
  if (emfs.some(({ volts = 0 }) => volts !== 0)) restWithCells(state, detectorRows);
  const { zr, zi, current, wave, drive, sums, R } = state;
  const isOne = devices.length === 1 && sourceWeights(emfs).every(({ im }) => im === 0);
  const law = isOne ? lawOf(devices[0]) : undefined;
  const closed = law && singleJunction(law, R[0]);
  return {
    k,
    zr,
    zi,
    current,
    wave,
    drive,
    sums,
    reduce: (row) => reduceRow(k, emfs, row),
    watch(rows) {
      if (rows.length > MOST_WATCHED)
        throw new RangeError(`at most ${MOST_WATCHED} voltages can be watched for their power`);
      state.watched = rows;
    },
    advance(from, steps) {
      if (isOne && state.watched.length < 2) advanceOne(state, closed, from, steps);
      else advanceAny(state, from, steps);
    },
  };
}
