import { tunedBy } from '../kinds/arrangements/tuned-by.ts';
import { tuningModel } from '../kinds/models.ts';
import { lawCapacitance, lawPosition, lawSlope, type VaneLaw } from '../parts/capacitor/law.ts';
import type { SetDescription } from '../set/description.ts';

/**
 * How a capacitor's own capacitance runs along its scale: as a share of what it rises by, 0 open to 1 meshed. Beyond both
 * ends it runs on in a straight line.
 */
export interface DialShape {
  readonly shareAt: (position: number) => number;
  readonly positionAt: (share: number) => number;
}

/** A variable capacitor as a dial has it. Farads. */
export interface DialCapacitor {
  readonly minimum: number;
  readonly maximum: number;
  /** Left out: the capacitance rises evenly with the position. */
  readonly shape?: DialShape;
  /** In series with the vanes. */
  readonly padder?: number;
}

/** A coil with strays across a variable capacitor; H and F. */
export interface CoilOnDial extends DialCapacitor {
  readonly L: number;
  readonly stray: number;
}

/** Capacitance of the vanes that has this much with a padder in series; beyond any where it has more than the padder. */
const withoutPadder = (series: number, padder: number | undefined): number =>
  padder === undefined ? series : series < padder ? (series * padder) / (padder - series) : Number.MAX_VALUE;

const withPadder = (own: number, padder: number | undefined): number =>
  padder === undefined ? own : (own * padder) / (own + padder);

/**
 * Where a capacitor has this capacitance, a padder included and nothing across it.
 * @param capacitance F
 * @returns 0 open to 1 meshed, and beyond
 */
function positionWith(capacitance: number, { minimum, maximum, shape, padder }: DialCapacitor): number {
  const share = (withoutPadder(capacitance, padder) - minimum) / (maximum - minimum);
  return shape ? shape.positionAt(share) : share;
}

/**
 * The capacitance at a position, a padder included and nothing across it.
 * @param position 0 open to 1 meshed, and beyond
 * @returns F
 */
export const capacitanceOn = (position: number, { minimum, maximum, shape, padder }: DialCapacitor): number =>
  withPadder(minimum + (maximum - minimum) * (shape ? shape.shareAt(position) : position), padder);

/**
 * Place of a frequency on such a dial.
 * @param frequency Hz
 * @returns 0 open to 1 meshed, and beyond
 */
export const positionOn = (frequency: number, dial: CoilOnDial): number =>
  positionWith(1 / ((2 * Math.PI * frequency) ** 2 * dial.L) - dial.stray, dial);

/** What a shape is within the scale, and its slope (share over position) at both ends. */
interface Within extends DialShape {
  readonly slopes: readonly [open: number, meshed: number];
}

const extended = ({ shareAt, positionAt, slopes: [open, meshed] }: Within): DialShape => ({
  shareAt: (p) => (p < 0 ? open * p : p > 1 ? 1 + meshed * (p - 1) : shareAt(p)),
  positionAt: (share) => (share < 0 ? share / open : share > 1 ? 1 + (share - 1) / meshed : positionAt(share)),
});

/**
 * The shape of a law between two ends.
 * @param law of the vanes
 * @param minimum F, above 0 but for even capacitance and square law
 * @param maximum F
 * @returns undefined for even capacitance
 */
export function shapeOfLaw(law: VaneLaw, minimum: number, maximum: number): DialShape | undefined {
  if (law === 'semicircular') return undefined;
  const ratio = maximum / minimum;
  return extended({
    shareAt: (p) => (lawCapacitance(law, minimum, maximum, p) - minimum) / (maximum - minimum),
    positionAt: (share) => lawPosition(law, minimum, maximum, minimum + share * (maximum - minimum)),
    // Of square law from nothing at all the slope is 0 at its open end: a line through its first hundredth serves there.
    slopes: minimum > 0 ? [lawSlope(law, ratio, 0), lawSlope(law, ratio, 1)] : [0.01, 2],
  });
}

const STEPS = 128;
const STEP = 1 / STEPS;

/** The shape of a capacitor known only by its model; undefined where its capacitance does not rise all along the scale. */
function shapeOfModel(capacitanceAt: (position: number) => number): DialShape | undefined {
  const [least, most] = [capacitanceAt(0), capacitanceAt(1)];
  const shares = Array.from({ length: STEPS + 1 }, (_, i) => (capacitanceAt(i * STEP) - least) / (most - least));
  if (!shares.every((share, i) => i === 0 || share > shares[i - 1])) return undefined;
  const shareAt = (p: number): number => (capacitanceAt(p) - least) / (most - least);
  const positionAt = (share: number): number => {
    if (Number.isNaN(share)) return share;
    let [low, high] = [0, STEPS];
    while (high - low > 1) {
      const middle = (low + high) >> 1;
      if (share < shares[middle]) high = middle;
      else low = middle;
    }
    let [a, b] = [low * STEP, high * STEP];
    for (let i = 0; i < 40; i++) {
      const middle = (a + b) / 2;
      if (share < shareAt(middle)) b = middle;
      else a = middle;
    }
    return (a + b) / 2;
  };
  return extended({
    shareAt,
    positionAt,
    slopes: [shares[1] / STEP, (1 - shares[STEPS - 1]) / STEP],
  });
}

/** The law of a set's capacitor where it has one. */
export const vaneLawOf = ({ tuning }: SetDescription): VaneLaw | undefined =>
  tuning.kind === 'variable' || tuning.kind === 'vanes' ? tuning.law : undefined;

/**
 * The capacitor of a set as a dial has it, from its sizes alone; what is across it left out.
 * @param set as read
 * @returns undefined for one that is fixed or does not do the tuning, or whose capacitance does not rise all along its scale
 */
export function capacitorOf(set: SetDescription): DialCapacitor | undefined {
  const { tuning } = set;
  if (tuning.kind === 'fixed' || tunedBy(set.arrangement) !== 'capacitor') return undefined;
  const alone = tuningModel({ ...tuning, stray: 0, trimmer: 0, padder: undefined, measured: undefined });
  const [minimum, maximum] = [alone.capacitanceAt(0), alone.capacitanceAt(1)];
  if (!(maximum > minimum)) return undefined;
  const law = vaneLawOf(set);
  const ends = { minimum, maximum, padder: tuning.padder };
  if (law) return { ...ends, shape: shapeOfLaw(law, minimum, maximum) };
  const shape = shapeOfModel(alone.capacitanceAt);
  return shape && { ...ends, shape };
}
