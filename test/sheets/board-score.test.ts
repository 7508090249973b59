import { describe, expect, test } from 'vitest';
import type { SetDescription } from '../../src/engine/set/description.ts';
import { boardLayout } from '../../src/outputs/sheets/board/layout.ts';
import { boardParts } from '../../src/outputs/sheets/board/parts.ts';
import { chanceSets, exampleSets } from '../support/board-report.ts';
import { type BoardScore, boardScore } from '../support/board-score.ts';

/** What must never be: each makes a builder join the wrong points, or leaves a word that cannot be read. */
const NEVER = ['overParts', 'pastDots', 'offDots', 'overWords'] as const satisfies readonly (keyof BoardScore)[];
/** What is hard to read at one place of the board. No example has it; a crowded set by chance may. */
const SELDOM = [
  'oneLine',
  'wordsOnWires',
  'strayNames',
  'strayNumbers',
] as const satisfies readonly (keyof BoardScore)[];
/** Of 500 sets by chance, up to 14 parts and 31 wires each: one in 25. */
const MOST_SELDOM = 20;

const present = (score: BoardScore, keys: readonly (keyof BoardScore)[]): string[] =>
  keys.flatMap((key) => (score[key] > 0 ? [`${key} ${score[key]}`] : []));

/** What of a score is beyond its limits. */
function beyond(score: BoardScore, wires: number): string[] {
  const wrong = present(score, NEVER);
  // A crossing is shown plainly, but the eye may leave its wire there: fewer than one for each wire.
  if (score.crossings >= wires) wrong.push(`${score.crossings} crossings of ${wires} wires`);
  // A word further away than an inch is looked for elsewhere.
  if (score.leader > 25) wrong.push(`a leader of ${score.leader} mm`);
  // What carries the signal before the detector goes round two sides of the board at most, as from corner to corner.
  if (score.sensitive > 1) wrong.push(`a wire to be kept short of ${score.sensitive} times two sides of the board`);
  return wrong;
}

function judged(set: SetDescription): { score: BoardScore; faults: string[] } {
  const layout = boardLayout(set, boardParts(set));
  const score = boardScore(layout);
  return { score, faults: beyond(score, layout.wiring.lines.length) };
}

describe('a board sheet cannot be misread', () => {
  test.each([...exampleSets()])('example %s', (_, set) => {
    const { score, faults } = judged(set);
    expect([...faults, ...present(score, SELDOM)]).toEqual([]);
    // Sets as people build them: no wire is hard to follow, and no name far from its dot.
    expect(score.crossings).toBeLessThanOrEqual(4);
    expect(score.leader).toBeLessThan(7);
    expect(score.sensitive).toBeLessThan(0.6);
  });

  const sets = chanceSets(500);
  const seldom: string[] = [];
  let checked = 0;
  test('there are 500 sets by chance', () => expect(sets.length).toBe(500));
  test.each(Array.from({ length: 20 }, (_, i) => 25 * i))('25 of them from no. %i', (first) => {
    for (const [i, set] of sets.slice(first, first + 25).entries()) {
      const { score, faults } = judged(set);
      expect(faults, `no. ${first + i}: ${JSON.stringify(set.arrangement)}`).toEqual([]);
      checked++;
      seldom.push(...present(score, SELDOM).map((fault) => `no. ${first + i}: ${fault}`));
    }
  });
  test('at most one in 25 of them has a place that is hard to read', () => {
    expect(checked, 'sets checked by the tests above').toBe(500);
    expect(seldom.length, seldom.join('\n')).toBeLessThanOrEqual(MOST_SELDOM);
  });
});

test('the score finds what is hard to read: wires straight from dot to dot over all that stands between', () => {
  const straight = chanceSets(20).map((set) => {
    const layout = boardLayout(set, boardParts(set));
    return { ...layout, ways: layout.ways.map((way) => [way[0], way[way.length - 1]]) };
  });
  const bad = straight.filter((layout) => {
    const score = boardScore(layout);
    return [...beyond(score, layout.wiring.lines.length), ...present(score, SELDOM)].length > 0;
  });
  expect(bad.length).toBeGreaterThan(15);
});
