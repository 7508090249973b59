import type { Path } from '../kinds/adjustment.ts';
import { paretoBest } from '../numerics/pareto.ts';
import type { FieldOptions } from '../reception/path/field.ts';
import type { Reception } from '../reception/path/types.ts';
import { isHeard } from '../reception/verdict.ts';
import type { SetDescription, WrittenDescription } from '../set/description.ts';
import { type ReadResult, readValue } from '../set/read.ts';
import { withValueAt } from '../set/write.ts';
import { attempt } from '../uncertainty/attempt.ts';
import { receiveRanged } from '../uncertainty/receive-ranged.ts';

/** A place in a description and what may stand there, as written. */
export interface Choice {
  readonly path: Path;
  readonly values: readonly unknown[];
}

/** What a set is judged by: more is better. A station is its place in the list. */
export type Aim =
  | { readonly kind: 'loudest'; readonly station: number }
  | { readonly kind: 'clearest'; readonly station: number }
  | { readonly kind: 'most heard' };

/** One combination, and what it gives. */
export interface Varied {
  /** Of each choice the place of its value. */
  readonly indices: readonly number[];
  /** One an aim: dB SPL, dB, or stations; undefined for a station beyond the dial. */
  readonly figures: readonly (number | undefined)[];
}

export interface VaryAnswer {
  /** Combinations evaluated in full. */
  readonly tried: number;
  /** Combinations left out because a bound shows that another is better. */
  readonly bounded: number;
  /** Combinations that the reader or the calculation refuses. */
  readonly refused: number;
  /** That no other is as good as in every aim and better in one, the first aim first. */
  readonly best: readonly Varied[];
}

/** What a wanted station is counted to stand above others by, where none is heard, dB. */
const NONE_HEARD = 40;

/** The figure of one aim. */
function figureOf({ stations }: Reception, aim: Aim): number | undefined {
  if (aim.kind === 'most heard')
    return stations.filter(({ verdict }) => isHeard(verdict) && verdict !== 'faint').length;
  const { dial, soundPressureLevel, disturbance } = stations[aim.station];
  if (!dial) return undefined;
  return aim.kind === 'loudest' ? soundPressureLevel : Math.min(disturbance?.audioRatio ?? NONE_HEARD, NONE_HEARD);
}

/**
 * How many combinations there are.
 * @param choices places and values
 * @returns their number
 */
export const combinationsOf = (choices: readonly Choice[]): number =>
  choices.reduce((product, { values }) => product * values.length, 1);

/**
 * Every combination, the last choice's values changing fastest.
 * @param choices places and values
 * @returns for each combination the place of each choice's value in its list
 */
export function* combinations(choices: readonly Choice[]): Generator<readonly number[]> {
  const count = combinationsOf(choices);
  for (let n = 0; n < count; n++) {
    const indices = choices.map(() => 0);
    let rest = n;
    for (let k = choices.length - 1; k >= 0; k--) {
      indices[k] = rest % choices[k].values.length;
      rest = Math.floor(rest / choices[k].values.length);
    }
    yield indices;
  }
}

/**
 * A description with a combination's values in it, read.
 * @param written a description as written
 * @param choices places and values
 * @param indices for each choice the place of its value in its list
 * @returns the set, or all its problems
 */
export function readWith(
  written: WrittenDescription,
  choices: readonly Choice[],
  indices: readonly number[],
): ReadResult {
  let changed: unknown = written;
  for (const [k, { path, values }] of choices.entries()) changed = withValueAt(changed, path, values[indices[k]]);
  return readValue(changed);
}

/**
 * Every combination of values in a set, each read and received in full and retuned, and the best of them.
 * @param written a description that reads
 * @param choices places and values
 * @param aims at least one
 * @param when time and coastline for the set as changed
 * @returns how many were tried and the Pareto-best over all aims
 */
export function varyGrid(
  written: WrittenDescription,
  choices: readonly Choice[],
  aims: readonly Aim[],
  when: (set: SetDescription) => FieldOptions,
): VaryAnswer {
  const all: (Varied & { readonly scores: readonly number[] })[] = [];
  let refused = 0;
  for (const indices of combinations(choices)) {
    const reception = receivedWith(readWith(written, choices, indices), aims, when);
    if (!reception) {
      refused++;
      continue;
    }
    const figures = aims.map((aim) => figureOf(reception, aim));
    all.push({ indices, figures, scores: figures.map((figure) => figure ?? Number.NEGATIVE_INFINITY) });
  }
  return {
    tried: all.length,
    bounded: 0,
    refused,
    best: paretoBest(all).map(({ indices, figures }) => ({ indices, figures })),
  };
}

/** Undefined for a set that cannot be read, or whose parts cannot be built or solved together. */
function receivedWith(
  read: ReadResult,
  aims: readonly Aim[],
  when: (set: SetDescription) => FieldOptions,
): Reception | undefined {
  if (!read.ok) return undefined;
  // Of a clearance no median is drawn, and of a station that no aim asks for none is needed.
  const loudest = aims.flatMap((aim) => (aim.kind === 'loudest' ? [aim.station] : []));
  const stations = aims.some(({ kind }) => kind === 'most heard') ? undefined : loudest;
  return attempt(() => receiveRanged(read.set, { ...when(read.set), stations }));
}
