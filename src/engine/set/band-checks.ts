import type { Problem } from '../fields/problem.ts';
import type { ArrangementDescription } from '../kinds/arrangements/arrangement-schema.ts';
import { givenValue } from '../units/refusal.ts';
import { foldedBand, standingBand, turnSwitch } from './band-switch.ts';
import type { SetDescription } from './description.ts';

/** Arrangements that a switch can change into one another: one capacitor tunes them all. */
const SWITCHED = ['direct', 'series capacitor', 'tapped', 'coupled', 'two circuits'] as const;

/** An arrangement that a band switch can change into another. */
type SwitchedArrangement = Extract<ArrangementDescription, { kind: (typeof SWITCHED)[number] }>;

/** @param arrangement as read */
export const isSwitched = (arrangement: ArrangementDescription): arrangement is SwitchedArrangement =>
  hasRoomForSwitch(arrangement.kind);

/**
 * Whether a band switch can be part of a set.
 * @param kind of its arrangement, as read or as written
 * @returns false for arrangements that are not tuned by one capacitor
 */
export const hasRoomForSwitch = (kind: unknown): boolean => SWITCHED.some((one) => one === kind);

/** @param path of a problem of a set whose switch was turned to a band */
const ofBand = (path: string, index: number): string => path.replace(/^arrangement\b/, `bands[${index}].arrangement`);

/**
 * Check a set with its switch on each of its bands.
 * @param check what is wrong with a set as it stands
 * @returns each problem once, at the place where the description has it
 */
export function onEveryBand(set: SetDescription, check: (standing: SetDescription) => Problem[]): Problem[] {
  const problems = check(set);
  const known = new Set(problems.map((problem) => JSON.stringify(problem)));
  for (const i of (set.bands ?? []).keys()) {
    const turned = turnSwitch(set, i);
    if (turned === set) continue;
    for (const problem of check(turned)) {
      const here = { ...problem, path: ofBand(problem.path, i) };
      const text = JSON.stringify(here);
      if (!known.has(text)) problems.push(here);
      known.add(text);
    }
  }
  return problems;
}

/** Bands of one name, no band or several on which the switch stands, and arrangements that no switch changes. */
export function bandProblems({ arrangement, bands }: SetDescription): Problem[] {
  if (!bands) return [];
  const problems: Problem[] = [];
  const names = bands.map(({ name }) => foldedBand(name));
  names.forEach((name, i) => {
    if (names.indexOf(name) !== i)
      problems.push({
        path: `bands[${i}].name`,
        expected: { code: 'name-of-its-own' },
        given: givenValue(bands[i].name),
        hint: { code: 'name-taken', by: `bands[${names.indexOf(name)}]` },
      });
  });
  const standing = standingBand({ bands });
  if (standing === undefined)
    problems.push({ path: 'bands', expected: { code: 'standing-band' }, hint: { code: 'switch-stands-once' } });
  for (const [i, { arrangement: own }] of bands.entries()) {
    if (own === undefined && i !== standing)
      problems.push({
        path: `bands[${i}].arrangement`,
        expected: { code: 'band-arrangement' },
        hint: { code: 'switch-stands-once' },
      });
    const { kind } = own ?? arrangement;
    const isOwn = own !== undefined;
    if ((isOwn || i === standing) && !hasRoomForSwitch(kind))
      problems.push({
        path: isOwn ? `bands[${i}].arrangement.kind` : 'arrangement.kind',
        expected: { code: 'one-of', options: SWITCHED },
        given: givenValue(kind),
        hint: { code: 'switch-changes' },
      });
  }
  return problems;
}
