import { describe, expect, test } from 'vitest';
import { boardLayout } from '../../src/outputs/sheets/board/layout.ts';
import { boardParts } from '../../src/outputs/sheets/board/parts.ts';
import { chanceSets, exampleSets, scoreOf } from '../support/board-report.ts';
import { type BoardScore, boardScore } from '../support/board-score.ts';

/** What must never be: each makes a builder join the wrong points, or take one thing for another. */
const NEVER = {
  oneLine: 0,
  overParts: 0,
  pastDots: 0,
  offDots: 0,
  overWords: 0,
  wordsOnWires: 0,
  strayNames: 0,
  strayNumbers: 0,
} as const satisfies Partial<BoardScore>;

/** What of a score is beyond its limits. */
function beyond(score: BoardScore, wires: number): string[] {
  const wrong = Object.entries(NEVER).flatMap(([key, most]) =>
    score[key as keyof typeof NEVER] > most ? [`${key} ${score[key as keyof typeof NEVER]}`] : [],
  );
  // A crossing is shown plainly, but the eye may leave its wire there: fewer than one for each wire.
  if (score.crossings >= wires) wrong.push(`${score.crossings} crossings of ${wires} wires`);
  // A word further away than an inch is looked for elsewhere.
  if (score.leader > 25) wrong.push(`a leader of ${score.leader} mm`);
  // What carries the signal before the detector goes round two sides of the board at most, as from corner to corner.
  if (score.sensitive > 1) wrong.push(`a wire to be kept short of ${score.sensitive} times two sides of the board`);
  return wrong;
}

const faults = (set: Parameters<typeof boardParts>[0]): string[] => {
  const layout = boardLayout(set, boardParts(set));
  return beyond(boardScore(layout), layout.wiring.lines.length);
};

describe('a board sheet cannot be misread', () => {
  test.each([...exampleSets()])('example %s', (_, set) => {
    expect(faults(set)).toEqual([]);
    // Sets as people build them: no wire is hard to follow, and no name far from its dot.
    const score = scoreOf(set);
    expect(score.crossings).toBeLessThanOrEqual(4);
    expect(score.leader).toBeLessThan(7);
    expect(score.sensitive).toBeLessThan(0.6);
  });

  const sets = chanceSets(500);
  test('there are 500 sets by chance', () => expect(sets.length).toBe(500));
  test.each(Array.from({ length: 20 }, (_, i) => 25 * i))('25 of them from no. %i', (first) => {
    for (const [i, set] of sets.slice(first, first + 25).entries())
      expect(faults(set), `no. ${first + i}: ${JSON.stringify(set.arrangement)}`).toEqual([]);
  });
});

test('the score finds what is hard to read: wires straight from dot to dot over all that stands between', () => {
  const straight = chanceSets(20).map((set) => {
    const layout = boardLayout(set, boardParts(set));
    return { ...layout, ways: layout.ways.map((way) => [way[0], way[way.length - 1]]) };
  });
  const bad = straight.filter((layout) => beyond(boardScore(layout), layout.wiring.lines.length).length > 0);
  expect(bad.length).toBeGreaterThan(15);
});
