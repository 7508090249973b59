import type { SetDescription } from '../set/description.ts';
import { readValue } from '../set/read.ts';
import { valueAtPath, withValueAt } from '../set/write.ts';
import { formatQuantity } from '../units/format.ts';
import { type BandFigures, bandFigures } from './band-figures.ts';
import { BANDS, type BandName } from './bands.ts';
import { moveWords } from './move-words.ts';
import { type Change, millimetres, picofarads, scaleTurns } from './scale-turns.ts';

export interface MoveOptions {
  /** Default the band in whose middle the set tunes now. */
  readonly from?: BandName;
  readonly to: BandName;
}

export interface Move {
  /** Turns and taps changed, and the aerial's hold on the tuned circuit loosened as far as it must be. */
  readonly set: SetDescription;
  /** The same changes for the description as written. */
  readonly changes: readonly Change[];
  /** What the trade knows will happen, with this set's own figures, and what to do. */
  readonly sentences: readonly string[];
  readonly before: BandFigures;
  /** With nothing but turns and taps changed. */
  readonly plainly: BandFigures;
  readonly after: BandFigures;
}

/** A band's end should lie a little within the scale's. */
const MARGIN = 0.985;
/** How far the aerial's hold is loosened, step by step, until the band is covered. */
const LOOSER = [0.7, 0.5, 0.35, 0.25, 0.18, 0.12, 0.08];

/**
 * Move a set to another band: turns for its low end at the capacitor's most, and the aerial loosened until the high end
 * is reached, where that can be.
 * @throws RangeError for a set that cannot be built, or one already on that band.
 */
export function moveBand(set: SetDescription, { from, to }: MoveOptions): Move {
  const before = bandFigures(set);
  const middle = Math.sqrt(before.lowest * before.highest);
  const now = from ?? (middle < 385e3 ? 'long wave' : 'medium wave');
  if (now === to) throw new RangeError(`the set is on ${to} already`);
  const band = BANDS[to];
  const turned = tunedTo(set, band.from * MARGIN);
  const plainly = bandFigures(turned.set);
  let best = { ...turned, figures: plainly, loosened: undefined as string | undefined };
  for (const by of LOOSER) {
    if (best.figures.highest >= band.to / MARGIN) break;
    const looser = loosen(set, by);
    if (!looser) break;
    const tried = tunedTo(applied(set, looser.changes), band.from * MARGIN);
    const figures = bandFigures(tried.set);
    if (figures.highest <= best.figures.highest) continue;
    best = { set: tried.set, changes: [...looser.changes, ...tried.changes], figures, loosened: looser.what };
  }
  const changes = latest(best.changes).filter((c) => valueAtPath(set, c.path) !== c.value);
  const story = { set, moved: best.set, from: now, to, before, plainly, after: best.figures, loosened: best.loosened };
  return { set: best.set, changes, sentences: moveWords(story), before, plainly, after: best.figures };
}

/** Turns changed until the low end of what is covered lies at a frequency. */
function tunedTo(set: SetDescription, lowest: number): { set: SetDescription; changes: Change[] } {
  let by = 1;
  let best: { set: SetDescription; changes: Change[]; off: number } | undefined;
  for (let i = 0; i < 8; i++) {
    const changes = scaleTurns(set, by);
    const tried = applied(set, changes);
    const now = bandFigures(tried).lowest;
    const off = Math.abs(Math.log(now / lowest));
    if (!best || off < best.off) best = { set: tried, changes, off };
    if (off < 0.004) break;
    // Inductance goes as turns to the power 1.5 to 2, so frequency about as their 0.85th.
    by = Math.min(60, Math.max(1 / 60, by * (now / lowest) ** (1 / 0.85)));
  }
  return best!;
}

/** The aerial's hold on the tuned circuit times a factor below 1; undefined where there is nothing to loosen. */
function loosen(set: SetDescription, by: number): { changes: Change[]; what: string } | undefined {
  const { arrangement } = set;
  const path = (key: string) => ['arrangement', key];
  switch (arrangement.kind) {
    case 'direct': {
      const C = Math.max(10e-12, 200e-12 * by);
      return {
        changes: [
          { path: path('kind'), value: 'series capacitor' },
          { path: path('seriesCapacitor'), value: picofarads(C) },
        ],
        what: `a capacitor of ${picofarads(C)} in the aerial lead`,
      };
    }
    case 'series capacitor': {
      const C = Math.max(4e-12, arrangement.seriesCapacitor * by);
      const was = formatQuantity(arrangement.seriesCapacitor, 'capacitance', 2);
      return {
        changes: [{ path: path('seriesCapacitor'), value: picofarads(C) }],
        what: `${picofarads(C)} in the aerial lead instead of ${was}`,
      };
    }
    case 'tapped':
      return {
        changes: [{ path: path('aerialTap'), value: Math.max(1, arrangement.aerialTap * by) }],
        what: 'the aerial tapped nearer the earthed end',
      };
    case 'coupled':
    case 'two circuits': {
      if (arrangement.coupling !== undefined)
        return {
          changes: [{ path: path('coupling'), value: arrangement.coupling * by }],
          what: 'looser coupling of the coils',
        };
      const distance = millimetres(arrangement.distance / by + 0.01);
      return { changes: [{ path: path('distance'), value: distance }], what: `the coils ${distance} apart` };
    }
    default:
      return undefined;
  }
}

/** A set with changes made. @throws RangeError when that cannot be read any more. */
function applied(set: SetDescription, changes: readonly Change[]): SetDescription {
  const read = readValue(changes.reduce<unknown>((written, { path, value }) => withValueAt(written, path, value), set));
  if (!read.ok)
    throw new RangeError(
      `the set cannot be changed so: ${read.problems.map((p) => `${p.path}: ${p.hint}`).join('; ')}`,
    );
  return read.set;
}

/** A later change of the same thing wins. */
const latest = (changes: readonly Change[]): Change[] => [
  ...new Map(changes.map((c) => [c.path.join('.'), c] as const)).values(),
];
