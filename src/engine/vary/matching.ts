import type { FieldOptions } from '../reception/path/field.ts';
import type { SetDescription } from '../set/description.ts';
import { formatQuantity } from '../units/format.ts';
import { type Best, type BestOfSet, bestOf, checkStation, type FindOptions } from './best.ts';
import { bestAerialTap, bestDetectorTap } from './best-tap.ts';
import { bestTransformer } from './best-transformer.ts';
import { costWords, coverageOf } from './match-cost.ts';

/** One thing that can be set to suit a station. */
export interface Match extends Best {
  readonly what: 'aerial tap' | 'detector tap' | 'distance of the coils' | 'transformer';
  /** Where in the description it is written, and what to write there; undefined where nothing would be gained by it. */
  readonly write?: { readonly path: readonly string[]; readonly to: unknown };
  /** What the set as a whole loses by it, a whole sentence; undefined where it is nothing much or was not asked for. */
  readonly cost?: string;
}

export interface MatchOptions extends FieldOptions {
  /** Already on the coil, turns from the earthed end. */
  readonly taps?: readonly number[];
  /** Of transformers in the box, to one. */
  readonly ratios?: readonly number[];
  /** Look at every station with each change made, and tell what it costs. */
  readonly tellCosts?: boolean;
}

/** Less than this nobody hears. */
const WORTH = 0.3;

/**
 * The best of every tap, distance and transformer of a set for a station, each by itself with all else as it is, and what
 * those at hand lose against it. It is the loudest: looser is sharper.
 * @throws RangeError for a station the set does not have, or a set that cannot be built.
 */
export function matching(set: SetDescription, station: number, options: MatchOptions = {}): Match[] {
  const found: Match[] = [];
  const { taps: tapped, ratios, tellCosts, ...when } = options;
  const before = tellCosts ? coverageOf(set, when) : undefined;
  const add = (
    what: Match['what'],
    best: BestOfSet | undefined,
    path: readonly string[],
    to: (value: number) => unknown,
  ) => {
    if (!best) return;
    const { set: changed, ...said } = best;
    const gains = (best.lostNow ?? Number.POSITIVE_INFINITY) > WORTH;
    found.push({
      ...said,
      what,
      write: gains ? { path, to: to(best.value) } : undefined,
      cost: gains && before ? costWords(before, coverageOf(changed, when)) : undefined,
    });
  };
  const taps = { ...when, atHand: tapped };
  add('aerial tap', bestAerialTap(set, station, taps), ['arrangement', 'aerialTap'], (turns) => turns);
  add('detector tap', bestDetectorTap(set, station, taps), ['arrangement', 'detectorTap'], (turns) => turns);
  add('distance of the coils', bestDistance(set, station, when), ['arrangement', 'distance'], (metres) =>
    formatQuantity(metres, 'length', 3),
  );
  if (set.load.kind === 'phones' || set.load.kind === 'moving-coil phones') {
    const { lostWithout, ...best } = bestTransformer(set, station, { ...when, atHand: ratios });
    if (set.load.transformer) add('transformer', best, ['load', 'transformer', 'ratio'], (ratio) => ratio);
    else add('transformer', { ...best, lostNow: lostWithout }, ['load', 'transformer'], (ratio) => ({ ratio }));
  }
  return found;
}

/** How far apart two coupled coils are best for a station, m. @returns undefined where none are coupled. */
function bestDistance(set: SetDescription, station: number, options: FindOptions = {}): BestOfSet | undefined {
  checkStation(set, station);
  const { arrangement } = set;
  if (arrangement.kind !== 'coupled' && arrangement.kind !== 'two circuits') return undefined;
  return bestOf(
    {
      low: 0.005,
      high: 0.5,
      whole: false,
      with: (distance) => ({ ...set, arrangement: { ...arrangement, distance } }),
      now: arrangement.distance,
      say: (metres) => `${formatQuantity(metres, 'length', 2)} apart`,
    },
    station,
    options,
  );
}
