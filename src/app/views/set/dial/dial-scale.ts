import { type Dial, firstWhole } from '../../../../engine/index.ts';

/** A dial laid out straight, lowest frequency at the left as on a bought set, so meshed vanes are at the left too. */
export interface DialScale {
  /** 0 (left end) to 1 (right end) for a pointer position, 0 open … 1 meshed. */
  readonly alongAt: (position: number) => number;
  readonly positionAlong: (along: number) => number;
  readonly frequencyAt: (position: number) => number;
  readonly positionOf: (frequency: number) => number;
  readonly degreesAt: (position: number) => number;
}

/** Straight lines between the dial's points; they lie close enough. */
function between(from: readonly number[], to: readonly number[], x: number): number {
  const rising = from[from.length - 1] > from[0];
  const high = firstWhole((i) => from[i] <= x !== rising, 0, from.length - 1);
  const low = high - 1;
  const span = from[high] - from[low];
  const share = span === 0 ? 0 : Math.min(1, Math.max(0, (x - from[low]) / span));
  return to[low] + share * (to[high] - to[low]);
}

/** @returns undefined for a set that has no dial to turn. */
export function dialScale(dial: Dial): DialScale | undefined {
  const { points } = dial;
  if (points.length < 2 || !(dial.highest > dial.lowest)) return undefined;
  const positions = points.map((point) => point.position);
  const frequencies = points.map((point) => point.frequency);
  const degrees = points.map((point) => point.scale);
  const first = degrees[0];
  const last = degrees[degrees.length - 1];
  const span = last - first || 1;
  return {
    alongAt: (position) => 1 - (between(positions, degrees, position) - first) / span,
    positionAlong: (along) => between(degrees, positions, first + (1 - along) * span),
    frequencyAt: (position) => between(positions, frequencies, position),
    positionOf: (frequency) => between(frequencies, positions, frequency),
    degreesAt: (position) => between(positions, degrees, position),
  };
}

export interface Mark {
  readonly along: number;
  readonly text: string;
}

/** Round numbers that fit side by side, the roundest first. */
export function roundMarks(
  lowest: number,
  highest: number,
  steps: readonly number[],
  place: (value: number) => number,
  apart: number,
): Mark[] {
  const marks: Mark[] = [];
  for (const step of steps) {
    for (let value = Math.ceil(lowest / step) * step; value <= highest; value += step) {
      const along = place(value);
      if (marks.every((mark) => Math.abs(mark.along - along) >= apart)) marks.push({ along, text: String(value) });
    }
  }
  return marks;
}

/** Fewer labels than this say too little of a scale. */
const FEWEST = 4;

/** Labels at multiples of one step and of those before it: the coarsest steps that give enough of them. */
export function evenMarks(lowest: number, highest: number, place: (value: number) => number, apart: number): Mark[] {
  let marks: Mark[] = [];
  for (const steps of [
    [1000, 500, 200, 100],
    [100, 50],
    [50, 20, 10],
    [10, 5, 2, 1],
  ]) {
    marks = roundMarks(lowest, highest, steps, place, apart);
    if (marks.length >= FEWEST) break;
  }
  return marks;
}

export interface Wanted {
  readonly along: number;
  readonly width: number;
}

/**
 * Rows for names above the dial, most wanted first.
 * @returns for each name its row and the middle of its text, or undefined where there is no room.
 */
export function placeNames(
  names: readonly Wanted[],
  rows: number,
  length: number,
): ({ readonly row: number; readonly middle: number } | undefined)[] {
  const taken: [number, number][][] = Array.from({ length: rows }, () => []);
  return names.map(({ along, width }) => {
    const half = width / 2;
    const middle = Math.min(length - half, Math.max(half, along * length));
    for (let row = 0; row < rows; row++) {
      if (taken[row].some(([from, to]) => middle - half < to + 8 && middle + half > from - 8)) continue;
      taken[row].push([middle - half, middle + half]);
      return { row, middle };
    }
    return undefined;
  });
}
