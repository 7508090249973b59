/** Something with a figure for each thing that is wanted, more being better. */
export interface Scored {
  readonly scores: readonly number[];
}

/** All of its figures together. */
export const scoreSum = ({ scores }: Scored): number => scores.reduce((total, score) => total + score, 0);

/** Whether figures are as good as others in everything, by so much better (worse where below 0); the last, effort, whole. */
export const isAsGood = (a: ArrayLike<number>, b: ArrayLike<number>, by: number): boolean => {
  for (let i = 0; i < a.length; i++) if (!(a[i] >= b[i] + (i === a.length - 1 ? 0 : by))) return false;
  return true;
};

/**
 * Sets that none beats in everything. One that another comes within a hair of in everything is left out; the last score,
 * effort, counts whole.
 */
export class Front<T extends Scored> {
  readonly members: T[] = [];
  private readonly hair: number;
  constructor(hair: number) {
    this.hair = hair;
  }
  /** Whether one with these scores would not stay. */
  beats(scores: ArrayLike<number>): boolean {
    for (const other of this.members) if (isAsGood(other.scores, scores, -this.hair)) return true;
    return false;
  }
  /** @returns whether it stays. */
  add(one: T): boolean {
    const { members } = this;
    if (this.beats(one.scores)) return false;
    for (let i = members.length - 1; i >= 0; i--) if (isAsGood(one.scores, members[i].scores, 0)) members.splice(i, 1);
    members.push(one);
    return true;
  }
}

/** The best few of each score among those of one effort: what is a little behind by an estimate may be ahead in truth. */
export class Leaders<T extends Scored> {
  /** By effort, and then by score; the best first. */
  private readonly lists = new Map<number, T[][]>();
  private readonly most: number;
  constructor(most: number) {
    this.most = most;
  }
  /** Whether one with these scores would not stay. */
  beats(scores: ArrayLike<number>): boolean {
    const lists = this.lists.get(scores[scores.length - 1]);
    if (!lists) return false;
    for (let k = 0; k < lists.length; k++) if (this.hasPlace(lists[k], k, scores[k])) return false;
    return true;
  }
  add(one: T): void {
    const { scores } = one;
    const effort = scores[scores.length - 1];
    let lists = this.lists.get(effort);
    if (!lists) this.lists.set(effort, (lists = Array.from({ length: scores.length - 1 }, () => [])));
    for (const [k, list] of lists.entries()) {
      if (!this.hasPlace(list, k, scores[k])) continue;
      const at = list.findIndex((other) => scores[k] > other.scores[k]);
      list.splice(at < 0 ? list.length : at, 0, one);
      if (list.length > this.most) list.pop();
    }
  }
  all(): T[] {
    return [...new Set([...this.lists.values()].flat(2))];
  }
  private hasPlace(list: readonly T[], k: number, score: number): boolean {
    return list.length < this.most || score > list[list.length - 1].scores[k];
  }
}

/** The best few of each score, which always stay. */
const BEST_OF_EACH = 3;

/**
 * Those of a list that may still be among the best though each figure is uncertain, no more than so many.
 * @param list in a fixed order
 * @param slack dB by which one must be behind another in everything to be left out, tried one after the other, wide first
 * @param most to be kept
 */
export function contenders<T extends Scored>(list: readonly T[], slacks: readonly number[], most: number): T[] {
  const front = new Front<T>(0);
  for (const one of list) front.add(one);
  let kept: T[] = [...list];
  for (const slack of slacks) {
    kept = list.filter(
      (one) => !front.members.some((other) => other !== one && isAsGood(other.scores, one.scores, slack)),
    );
    if (kept.length <= most) return kept;
  }
  return spread(kept, most);
}

/** So many of a list that lie apart, the best of each score among them, in the order of the list. */
export function spread<T extends Scored>(list: readonly T[], most: number): T[] {
  if (list.length <= most) return [...list];
  const width = list[0].scores.length;
  const ranges = Array.from({ length: width }, (_, i) => {
    const values = list.map(({ scores }) => scores[i]).filter((x) => x > -150);
    return Math.max(1e-6, Math.max(...values) - Math.min(...values));
  });
  const chosen = new Set<T>();
  for (let i = 0; i < width; i++) {
    const best = [...list].sort((a, b) => b.scores[i] - a.scores[i]).slice(0, BEST_OF_EACH);
    for (const one of best) if (chosen.size < most) chosen.add(one);
  }
  const apart = new Map<T, number>();
  const distance = (a: T, b: T): number =>
    Math.hypot(...a.scores.map((x, i) => Math.min(2, Math.abs(x - b.scores[i]) / ranges[i])));
  for (const one of list) apart.set(one, Math.min(...[...chosen].map((other) => distance(one, other))));
  while (chosen.size < most) {
    let next: T | undefined;
    for (const one of list) if (!chosen.has(one) && (!next || apart.get(one)! > apart.get(next)!)) next = one;
    if (!next) break;
    chosen.add(next);
    for (const one of list) apart.set(one, Math.min(apart.get(one)!, distance(one, next)));
  }
  return list.filter((one) => chosen.has(one));
}
