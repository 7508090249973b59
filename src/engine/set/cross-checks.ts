import { closest } from '../fields/fields.ts';
import type { Hint, Problem } from '../fields/problem.ts';
import { aerialLead } from '../kinds/arrangements/aerial-lead.ts';
import type { ArrangementDescription } from '../kinds/arrangements/arrangement-schema.ts';
import { COIL_KEYS } from '../kinds/arrangements/coil-names.ts';
import { usedTurns } from '../kinds/arrangements/used-turns.ts';
import { isLoop } from '../kinds/loops.ts';
import { givenValue } from '../units/refusal.ts';
import { bandProblems, onEveryBand } from './band-checks.ts';
import type { SetDescription } from './description.ts';
import { noSuchStation, stationNamed } from './want-problems.ts';

type ElementDescription = Extract<ArrangementDescription, { kind: 'elements' }>['elements'][number];

const didYouMean = (option: string | undefined): Hint | undefined =>
  option === undefined ? undefined : { code: 'did-you-mean', option };

/** What single fields cannot see: names that refer to coils, taps within the coil, bands that the switch cannot have. */
export const crossChecks = (set: SetDescription): Problem[] => [
  ...onEveryBand(set, arrangementChecks),
  ...bandProblems(set),
];

/** What is wrong with the set as it stands. */
function arrangementChecks(set: SetDescription): Problem[] {
  const problems: Problem[] = [];
  const names = set.coils.map((c) => c.name);
  names.forEach((name, i) => {
    if (names.indexOf(name) !== i)
      problems.push({
        path: `coils[${i}].name`,
        expected: { code: 'name-of-its-own' },
        given: givenValue(name),
        hint: { code: 'name-taken', by: `coils[${names.indexOf(name)}]` },
      });
  });
  const arrangement = set.arrangement as Record<string, unknown>;
  const coilTurns = (key: string): number | undefined => {
    const name = arrangement[key];
    if (typeof name !== 'string') return undefined;
    const coil = set.coils.find((c) => c.name === name);
    if (!coil) {
      const near = closest(name, names);
      problems.push({
        path: `arrangement.${key}`,
        expected: { code: 'coil-name', names },
        given: givenValue(name),
        hint: didYouMean(near) ?? { code: 'name-a-coil' },
      });
      return undefined;
    }
    return coil.shape === 'multilayer' ? coil.turnsPerLayer * coil.layers : coil.turns;
  };
  const turns = coilTurns('coil');
  const aerialTurns = coilTurns('aerialCoil');
  coilTurns('rotor');
  // Turns that are not in use have no taps.
  const inUse = turns === undefined ? undefined : usedTurns(set.arrangement, turns).used;
  for (const key of ['aerialTap', 'detectorTap', 'usedTurns', 'fewest']) {
    const tap = arrangement[key];
    const limit = key === 'usedTurns' ? turns : key === 'aerialTap' ? (aerialTurns ?? inUse) : inUse;
    if (typeof tap === 'number' && limit !== undefined && !(tap <= limit)) {
      problems.push({
        path: `arrangement.${key}`,
        expected: { code: 'turns.at-most', turns: limit },
        given: givenValue(tap),
        hint: { code: 'taps-from-earth' },
      });
    }
  }
  if (set.arrangement.kind === 'frame' && set.aerial.kind !== 'frame')
    problems.push({
      path: 'aerial.kind',
      expected: { code: 'literal', value: 'frame' },
      given: givenValue(set.aerial.kind),
      hint: { code: 'frame-tunes' },
    });
  if (set.arrangement.kind === 'ferrite rod' && set.aerial.kind !== 'ferrite rod')
    problems.push({
      path: 'aerial.kind',
      expected: { code: 'literal', value: 'ferrite rod' },
      given: givenValue(set.aerial.kind),
      hint: { code: 'rod-tunes' },
    });
  if (isLoop(set.aerial) && set.arrangement.kind !== set.aerial.kind && set.arrangement.kind !== 'elements') {
    problems.push({
      path: 'arrangement.kind',
      expected: { code: 'literal', value: set.aerial.kind },
      given: givenValue(set.arrangement.kind),
      hint: { code: 'loop-is-coil' },
    });
  }
  for (const [key, other] of [
    ['aerialCoil', 'coil'],
    ['rotor', 'coil'],
  ] as const) {
    if (typeof arrangement[key] === 'string' && arrangement[key] === arrangement[other])
      problems.push({
        path: `arrangement.${key}`,
        expected: { code: 'coil-of-its-own' },
        given: givenValue(arrangement[key]),
        hint: { code: 'second-coil', taken: `arrangement.${other}` },
      });
  }
  const { kind } = set.arrangement;
  if (set.detector.wiring === 'full-wave' && (kind === 'slider' || kind === 'variometer' || kind === 'elements')) {
    problems.push({
      path: 'detector.wiring',
      expected: { code: 'one-of', options: ['single', 'doubler'] },
      given: givenValue('full-wave'),
      hint: { code: 'full-wave-needs-centre' },
    });
  }
  if (set.arrangement.kind === 'elements') problems.push(...listProblems(set.arrangement.elements, names));
  else problems.push(...trapProblems(set, names));
  return problems;
}

/** Traps: a coil that is no other's, a coil and a capacitor each known somehow, a station that is in the list. */
function trapProblems({ arrangement, place }: SetDescription, coils: readonly string[]): Problem[] {
  const problems: Problem[] = [];
  const named = arrangement as Partial<Record<string, unknown>>;
  const taken = new Map<unknown, string>(
    COIL_KEYS.flatMap((key) => (typeof named[key] === 'string' ? [[named[key], `arrangement.${key}`]] : [])),
  );
  for (const [i, trap] of aerialLead(arrangement).traps.entries()) {
    const at = `arrangement.traps[${i}]`;
    const { coil, inductance, capacitor, capacitance, stops } = trap;
    if (coil !== undefined && !coils.includes(coil))
      problems.push({
        path: `${at}.coil`,
        expected: { code: 'coil-name', names: coils },
        given: givenValue(coil),
        hint: didYouMean(closest(coil, coils)) ?? { code: 'add-a-coil' },
      });
    const by = coil === undefined ? undefined : taken.get(coil);
    if (by !== undefined)
      problems.push({
        path: `${at}.coil`,
        expected: { code: 'coil-of-its-own' },
        given: givenValue(coil),
        hint: { code: 'second-coil', taken: by },
      });
    if (coil !== undefined) taken.set(coil, `${at}.coil`);
    if (coil === undefined && inductance === undefined)
      problems.push({ path: `${at}.inductance`, expected: { code: 'trap-coil' } });
    if (capacitor === undefined && capacitance === undefined && stops === undefined)
      problems.push({ path: `${at}.stops`, expected: { code: 'trap-capacitor' } });
    if (stops !== undefined && stationNamed(place.stations, stops) === undefined)
      problems.push(noSuchStation(`${at}.stops`, place.stations, stops));
  }
  return problems;
}

/** A list of elements: every name once, and mutuals between coils that are there. */
function listProblems(elements: ElementDescription[], coils: readonly string[]): Problem[] {
  const problems: Problem[] = [];
  const names = elements.map((e) => e.name);
  const windings = elements.filter((e) => e.kind === 'inductor' || e.kind === 'coil').map((e) => e.name);
  for (const [i, element] of elements.entries()) {
    const at = `arrangement.elements[${i}]`;
    if (names.indexOf(element.name) !== i)
      problems.push({
        path: `${at}.name`,
        expected: { code: 'name-of-its-own' },
        given: givenValue(element.name),
        hint: { code: 'name-taken', by: `arrangement.elements[${names.indexOf(element.name)}]` },
      });
    if (element.kind === 'coil' && !coils.includes(element.coil))
      problems.push({
        path: `${at}.coil`,
        expected: { code: 'coil-name', names: coils },
        given: givenValue(element.coil),
        hint: didYouMean(closest(element.coil, coils)) ?? { code: 'add-a-coil' },
      });
    if (element.kind !== 'mutual') {
      if (element.from === element.to)
        problems.push({
          path: `${at}.to`,
          expected: { code: 'another-node' },
          given: givenValue(element.to),
          hint: { code: 'both-ends-on-one-node' },
        });
      continue;
    }
    for (const key of ['first', 'second'] as const) {
      if (windings.includes(element[key]) && (key === 'first' || element.first !== element.second)) continue;
      const near = closest(element[key], windings);
      problems.push({
        path: `${at}.${key}`,
        expected: { code: 'winding', another: key === 'second' },
        given: givenValue(element[key]),
        hint: didYouMean(near === element[key] ? undefined : near) ?? { code: 'mutual-between-two' },
      });
    }
  }
  return problems;
}
