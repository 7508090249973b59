import { closest } from '../fields/fields.ts';
import { brief, type Problem } from '../fields/problem.ts';
import type { ArrangementDescription } from '../kinds/arrangements/arrangement-schema.ts';
import { isLoop } from '../kinds/loops.ts';
import type { SetDescription } from './description.ts';

type ElementDescription = Extract<ArrangementDescription, { kind: 'elements' }>['elements'][number];

/** What single fields cannot see: names that refer to coils, taps within the coil. */
export function crossChecks(set: SetDescription): Problem[] {
  const problems: Problem[] = [];
  const names = set.coils.map((c) => c.name);
  names.forEach((name, i) => {
    if (names.indexOf(name) !== i)
      problems.push({
        path: `coils[${i}].name`,
        expected: 'a name of its own',
        received: brief(name),
        hint: `coils[${names.indexOf(name)}] has it already`,
      });
  });
  const arrangement = set.arrangement as Record<string, unknown>;
  const coilTurns = (key: string): number | undefined => {
    const name = arrangement[key];
    if (typeof name !== 'string') return undefined;
    const found = set.coils.find((c) => c.name === name);
    if (!found) {
      const near = closest(name, names);
      problems.push({
        path: `arrangement.${key}`,
        expected: `the name of a coil (${names.map((n) => `"${n}"`).join(', ') || 'there is none yet'})`,
        received: brief(name),
        hint: near ? `did you mean "${near}"?` : 'name one of the coils, or add one',
      });
      return undefined;
    }
    return found.shape === 'multilayer' ? found.turnsPerLayer * found.layers : found.turns;
  };
  const turns = coilTurns('coil');
  const aerialTurns = coilTurns('aerialCoil');
  coilTurns('rotor');
  for (const key of ['aerialTap', 'detectorTap', 'fewest']) {
    const tap = arrangement[key];
    const limit = key === 'aerialTap' && aerialTurns !== undefined ? aerialTurns : turns;
    if (typeof tap === 'number' && limit !== undefined && !(tap <= limit)) {
      problems.push({
        path: `arrangement.${key}`,
        expected: `at most the coil's ${limit} turns`,
        received: brief(tap),
        hint: 'taps are counted from the earthed end',
      });
    }
  }
  if (set.arrangement.kind === 'frame' && set.aerial.kind !== 'frame')
    problems.push({
      path: 'aerial.kind',
      expected: '"frame"',
      received: brief(set.aerial.kind),
      hint: 'this arrangement is tuned by the frame itself',
    });
  if (set.arrangement.kind === 'ferrite rod' && set.aerial.kind !== 'ferrite rod')
    problems.push({
      path: 'aerial.kind',
      expected: '"ferrite rod"',
      received: brief(set.aerial.kind),
      hint: 'this arrangement is tuned by the rod’s own coil',
    });
  if (isLoop(set.aerial) && set.arrangement.kind !== set.aerial.kind && set.arrangement.kind !== 'elements') {
    problems.push({
      path: 'arrangement.kind',
      expected: `"${set.aerial.kind}"`,
      received: brief(set.arrangement.kind),
      hint: 'a frame or rod is its own tuning coil',
    });
  }
  for (const [key, other] of [
    ['aerialCoil', 'coil'],
    ['rotor', 'coil'],
  ] as const) {
    if (typeof arrangement[key] === 'string' && arrangement[key] === arrangement[other])
      problems.push({
        path: `arrangement.${key}`,
        expected: 'a coil of its own',
        received: brief(arrangement[key]),
        hint: `arrangement.${other} names it already; add a second coil`,
      });
  }
  const { kind } = set.arrangement;
  if (set.detector.wiring === 'full-wave' && (kind === 'slider' || kind === 'variometer' || kind === 'elements')) {
    problems.push({
      path: 'detector.wiring',
      expected: '"single" or "doubler"',
      received: '"full-wave"',
      hint: 'a full-wave pair is fed from both ends of a coil whose middle is earthed, which this arrangement does not have',
    });
  }
  if (set.arrangement.kind === 'elements') problems.push(...listProblems(set.arrangement.elements, names));
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
        expected: 'a name of its own',
        received: brief(element.name),
        hint: `elements[${names.indexOf(element.name)}] has it already`,
      });
    if (element.kind === 'coil' && !coils.includes(element.coil))
      problems.push({
        path: `${at}.coil`,
        expected: 'the name of a coil',
        received: brief(element.coil),
        hint: closest(element.coil, coils) ?? 'add one',
      });
    if (element.kind !== 'mutual') {
      if (element.from === element.to)
        problems.push({
          path: `${at}.to`,
          expected: 'another node than its "from"',
          received: brief(element.to),
          hint: 'both ends on one node do nothing',
        });
      continue;
    }
    for (const key of ['first', 'second'] as const) {
      if (windings.includes(element[key]) && (key === 'first' || element.first !== element.second)) continue;
      const near = closest(element[key], windings);
      problems.push({
        path: `${at}.${key}`,
        expected: `the name of ${key === 'second' ? 'another' : 'an'} inductor or coil of the list`,
        received: brief(element[key]),
        hint: near && near !== element[key] ? `did you mean "${near}"?` : 'mutual inductance lies between two of them',
      });
    }
  }
  return problems;
}
