import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { inRoot } from '../../../scripts/support/paths.mjs';
import { plantedAnswers } from '../../../test/support/planted-faults.ts';
import { builtSet } from '../built/built-set.ts';
import { readText } from '../set/read.ts';
import { remedyClass } from './fault.ts';
import { faultModel } from './fault-model.ts';
import { faultTree, prunedTree, type TreeBranch, treeSureness } from './fault-tree.ts';

const modelOf = (name: string) => {
  const read = readText(readFileSync(inRoot(`examples/${name}.json`), 'utf8'));
  if (!read.ok) throw new Error(`${name} does not read`);
  return faultModel(builtSet(read.set), { cases: 4 });
};

describe.each(['medium-wave-galena', 'ferrite-rod-valve-diode', 'two-band'])('the decision tree of %s', (name) => {
  const model = modelOf(name);
  const tree = faultTree(model, { steps: 16 });

  test('every answer leads somewhere, every step is led to once, and the ends are all there is', () => {
    expect(tree.steps).toHaveLength(16);
    const led: number[] = [];
    let ends = 0;
    tree.steps.forEach(({ check, branches, good }, step) => {
      let next = 0;
      for (const { answers, isGood, goal, probability } of branches) {
        expect(answers[0]).toBe(next);
        next = answers[1] + 1;
        expect(isGood).toBe(good >= answers[0] && good <= answers[1]);
        if ('step' in goal) {
          expect(goal.step).toBeGreaterThan(step);
          led.push(goal.step);
        } else {
          ends += probability;
          const named = goal.causes.reduce((sum, cause) => sum + cause.probability, 0);
          expect(named + goal.rest).toBeCloseTo(1, 9);
          expect(goal.causes.length).toBeGreaterThan(0);
        }
      }
      expect(next).toBe(check.answers);
    });
    expect(led.sort((a, b) => a - b)).toEqual(tree.steps.slice(1).map((_, k) => k + 1));
    expect(ends).toBeCloseTo(1, 4);
  });

  test('nothing is asked twice on the way to an end', () => {
    const walk = (step: number, asked: ReadonlySet<string>): void => {
      const { check, branches } = tree.steps[step];
      expect(asked.has(check.id)).toBe(false);
      for (const { goal } of branches) if ('step' in goal) walk(goal.step, new Set([...asked, check.id]));
    };
    walk(0, new Set());
  });

  test('each step more makes it surer, and only what may be asked is', () => {
    const sure = Array.from({ length: 16 }, (_, k) => treeSureness(prunedTree(tree, k + 1)).first);
    for (let k = 1; k < sure.length; k++) expect(sure[k]).toBeGreaterThanOrEqual(sure[k - 1] - 1e-9);
    const byMeter = faultTree(model, { steps: 8, isAsked: ({ check }) => check.kind === 'ohms' });
    for (const { check } of byMeter.steps) expect(check.check.kind).toBe('ohms');
  });

  test('planted faults come out at their own end as often as the tree says', () => {
    let first = 0;
    let named = 0;
    const count = 240;
    for (let k = 0; k < count; k++) {
      const { fault, answerTo } = plantedAnswers(model, 40 + k, 1);
      let goal: TreeBranch['goal'] = { step: 0 };
      while ('step' in goal) {
        const { check, branches }: (typeof tree.steps)[number] = tree.steps[goal.step];
        const answer = answerTo(check);
        goal = branches.find(({ answers: [from, to] }) => answer >= from && answer <= to)!.goal;
      }
      const own = goal.causes.findIndex((cause) => remedyClass(cause.fault) === remedyClass(fault));
      if (own === 0) first++;
      if (own >= 0) named++;
    }
    const sure = treeSureness(tree);
    expect(first / count).toBeGreaterThan(sure.first - 0.1);
    expect(named / count).toBeGreaterThan(sure.named - 0.1);
  });
});
