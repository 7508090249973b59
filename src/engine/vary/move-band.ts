import type { Adjustment, Edit } from '../kinds/adjustment.ts';
import { type Loosened, loosen } from '../kinds/arrangements/aerial-hold.ts';
import { usedTurns } from '../kinds/arrangements/used-turns.ts';
import { isLoop } from '../kinds/loops.ts';
import type { SetDescription } from '../set/description.ts';
import type { Hertz } from '../units/quantities.ts';
import { type BandFigures, bandFigures } from './band-figures.ts';
import { BANDS, type BandName, nearestBand } from './bands.ts';
import { optimise, trialOf } from './optimise.ts';
import type { Objective } from './question.ts';
import { scaleTurns } from './scale-turns.ts';
import { isBuilt, type Trial, trialsOf } from './trial.ts';

export interface MoveOptions {
  /** Default the band in whose middle the set tunes now. */
  readonly from?: BandName;
  readonly to: BandName;
}

/** Ends of a range of frequencies, Hz. */
export interface FrequencyRange {
  readonly from: Hertz;
  readonly to: Hertz;
}

/** A set rewound for a range of frequencies, as facts. */
export interface Rewound {
  readonly band: FrequencyRange;
  /** The set as it was, and with turns and taps changed and the aerial's hold loosened as far as it must be. */
  readonly set: SetDescription;
  readonly moved: SetDescription;
  /** What is to be written in the description. */
  readonly changes: readonly Edit[];
  readonly before: BandFigures;
  /** With nothing but turns and taps changed. */
  readonly plainly: BandFigures;
  readonly after: BandFigures;
  /** How the aerial's hold was loosened, where it was. */
  readonly loosened?: Pick<Loosened, 'what' | 'from' | 'to'>;
}

/** A set moved to another band, as facts: words are made of them where they are shown. */
export interface Move extends Rewound {
  readonly code: 'move';
  readonly from: BandName;
  readonly to: BandName;
}

/** The set is on the band already that it is to be moved to. */
export class SameBandError extends RangeError {
  readonly band: BandName;
  constructor(band: BandName) {
    super(`the set is on ${band} already`);
    this.band = band;
  }
}

/** A band's ends should lie a little within the scale's. */
const MARGIN = 0.985;
/** How far the aerial's hold is loosened, step by step, until the band is covered. */
const LOOSER = [0.7, 0.5, 0.35, 0.25, 0.18, 0.12, 0.08];

/**
 * Move a set to another band, as `rewindFor` does it.
 * @param set as read
 * @param options the band, and the one it is on
 * @returns the changed set, the changes, and what of the band it covers (Hz)
 * @throws SameBandError for a set that is on that band already; RangeError for one that cannot be built.
 */
export function moveBand(set: SetDescription, { from, to }: MoveOptions): Move {
  const before = bandFigures(set);
  const now = from ?? nearestBand(Math.sqrt(before.lowest * before.highest));
  if (now === to) throw new SameBandError(to);
  return { code: 'move', from: now, to, ...rewound(set, BANDS[to], before) };
}

/**
 * The turns, on the same former and with the same wire, that cover most of a range of frequencies; taps along in
 * proportion, and the aerial loosened until all of it is covered, where that can be.
 * @param set as read
 * @param band its ends, Hz
 * @returns the changed set, the changes, and what of the band it covers (Hz)
 * @throws RangeError for a set that cannot be built.
 */
export function rewindFor(set: SetDescription, band: FrequencyRange): Rewound {
  return rewound(set, band, bandFigures(set));
}

function rewound(set: SetDescription, band: FrequencyRange, before: BandFigures): Rewound {
  const turned = turnedTo(set, band);
  const plainly = bandFigures(turned.set);
  let best: Pick<Move, 'changes' | 'loosened'> & { set: SetDescription; figures: BandFigures } = {
    ...turned,
    figures: plainly,
  };
  for (const by of LOOSER) {
    if (best.figures.highest >= band.to / MARGIN) break;
    const looser = loosen(set.arrangement, by);
    if (!looser) break;
    const start = trialsOf(set).with(looser.edits);
    if (!isBuilt(start)) continue;
    const tried = turnedTo(start.set, band);
    const figures = bandFigures(tried.set);
    if (figures.highest <= best.figures.highest) continue;
    const { what, from: was, to: is } = looser;
    best = {
      set: tried.set,
      changes: latest([...looser.edits, ...tried.changes]),
      figures,
      loosened: { what, from: was, to: is },
    };
  }
  const { changes, loosened } = best;
  return { band, set, moved: best.set, changes, before, plainly, after: best.figures, loosened };
}

/** The turns of a set that cover most of a band, all windings and taps in proportion. */
function turnedTo(
  set: SetDescription,
  band: FrequencyRange,
): { readonly set: SetDescription; readonly changes: readonly Edit[] } {
  const objective: Objective = { of: 'band covered', from: band.from * MARGIN, to: band.to / MARGIN };
  const trials = trialsOf(set);
  const [answer] = optimise(trials, [turnsOfAll(set, trials.now, objective.from)], { objective });
  return answer
    ? { set: trialOf(trials, answer).set, changes: answer.changes.map(({ path, to }) => ({ path, to })) }
    : { set, changes: [] };
}

/** How far from the first estimate turns are searched. */
const AROUND = 1.7;

/** All windings of a set as one unknown: whole turns of its tuning coil; of a list of inductors, a factor. */
function turnsOfAll(set: SetDescription, now: Trial, lowest: number): Adjustment {
  // Inductance goes as turns to the power 1.5 to 2, so frequency about as their 0.85th.
  const by = (now.curve().lowest / lowest) ** (1 / 0.85);
  const turns = mainTurns(set);
  const common = { id: 'turns', part: 'arrangement', path: ['coils'], effort: 'rewind', serves: ['band'] } as const;
  const whole = (x: number): number => Math.max(1, Math.round(x));
  return turns === undefined
    ? {
        ...common,
        domain: { is: 'real', from: by / AROUND, to: by * AROUND, scale: 'ratio', digits: 3 },
        now: 1,
        edits: (to) => scaleTurns(set, Number(to)),
      }
    : {
        ...common,
        domain: {
          is: 'whole',
          from: whole((turns * by) / AROUND),
          to: Math.min(5000, whole(turns * by * AROUND)),
          scale: 'ratio',
        },
        now: turns,
        edits: (to) => scaleTurns(set, Number(to) / turns),
      };
}

function mainTurns({ aerial, arrangement, coils }: SetDescription): number | undefined {
  if (isLoop(aerial)) return aerial.turns;
  const named = 'coil' in arrangement ? coils.find(({ name }) => name === arrangement.coil) : undefined;
  const coil = named ?? coils[0];
  return (
    coil && usedTurns(arrangement, coil.shape === 'multilayer' ? coil.turnsPerLayer * coil.layers : coil.turns).used
  );
}

/** A later edit of the same place wins. */
const latest = (edits: readonly Edit[]): Edit[] => [
  ...new Map(edits.map((edit) => [edit.path.join('.'), edit] as const)).values(),
];
