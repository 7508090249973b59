import type { SetDescription } from './description.ts';
import { closest } from './fields.ts';
import { brief, type Problem } from './problem.ts';

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
  if (
    (set.aerial.kind === 'frame' || set.aerial.kind === 'ferrite rod') &&
    set.arrangement.kind !== set.aerial.kind &&
    set.arrangement.kind !== 'elements'
  ) {
    problems.push({
      path: 'arrangement.kind',
      expected: `"${set.aerial.kind}"`,
      received: brief(set.arrangement.kind),
      hint: 'a frame or rod is its own tuning coil',
    });
  }
  if (set.arrangement.kind === 'elements') {
    for (const [i, element] of set.arrangement.elements.entries()) {
      if (element.kind === 'coil' && !names.includes(element.coil))
        problems.push({
          path: `arrangement.elements[${i}].coil`,
          expected: 'the name of a coil',
          received: brief(element.coil),
          hint: closest(element.coil, names) ?? 'add one',
        });
    }
  }
  return problems;
}

