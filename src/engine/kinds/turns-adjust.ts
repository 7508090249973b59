import type { AdjustContext, Adjustment, Domain, Edit, Path, Wish } from './adjustment.ts';

/** Taps are counted in half turns where turns are few. */
export const halfTurns = (turns: number): number =>
  turns < 20 ? Math.max(1, Math.round(2 * turns) / 2) : Math.round(turns);

/** Turns are tried from a quarter to four times what they are. */
const REACH = 4;

/**
 * Whole turns to be tried in place of what there is: a station below the dial wants more turns, one above it fewer.
 * @param turns now
 * @param limits between which they are in any case
 */
export function turnsDomain(
  turns: number,
  { least = 1, most, about }: { least?: number; most: number; about: Pick<AdjustContext, 'beyond'> },
): Domain {
  const to = Math.max(1, Math.floor(most));
  const end = (x: number): number => Math.min(to, Math.max(Math.ceil(least), Math.round(x)));
  return {
    is: 'whole',
    from: about.beyond === 'below' ? end(turns) : end(turns / REACH),
    to: about.beyond === 'above' ? end(turns) : end(turns * REACH),
    scale: 'ratio',
  };
}

/** The turns of one winding, its taps along in proportion. */
export function turnsAdjustment(
  { id, part, path }: Pick<Adjustment, 'id' | 'part' | 'path'>,
  turns: number,
  { coil, most, about }: { coil: string | undefined; most: number; about: AdjustContext },
  also: (by: number) => readonly Edit[] = () => [],
): Adjustment {
  const serves: Wish[] = ['reach', 'band'];
  return {
    id,
    part,
    path,
    effort: 'rewind',
    domain: turnsDomain(turns, { most, about }),
    now: turns,
    serves,
    edits: (to) => {
      const by = (to as number) / turns;
      return [{ path, to }, ...also(by), ...tapsAlong(about, coil, by)];
    },
  };
}

const tapsAlong = (about: AdjustContext, coil: string | undefined, by: number): Edit[] =>
  about.tapsOn(coil).map(({ path, turns }: { path: Path; turns: number }) => ({ path, to: halfTurns(turns * by) }));
