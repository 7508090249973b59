import { describe, expect, it } from 'vitest';
import { CALCULATIONS } from './index.ts';

const problems = (name: string, input: unknown): string[] => {
  const result = CALCULATIONS.find((c) => c.name === name)!.run(input);
  return result.ok ? [] : result.problems.map((p) => `${p.path}: ${p.message}`);
};
const nested = (depth: number): unknown => {
  let value: unknown = 1;
  for (let i = 0; i < depth; i++) value = i % 2 ? { detector: value } : [value];
  return value;
};

describe('bad input to calc', () => {
  it('names every problem, each with its path, what was expected and what was given', () => {
    for (const { name } of CALCULATIONS)
      for (const input of [{}, { shape: 7, frequency: '5 pF' }, 'coil', null, 5, { detector: 'galena', wire: [] }]) {
        const found = problems(name, input);
        expect(found.length, name).toBeGreaterThan(0);
        for (const problem of found) {
          expect(problem, name).toMatch(/^[^:]+: .*expected .*received /s);
          expect(problem, name).not.toMatch(/Invalid|undefined|Object\b/);
        }
      }
  });

  it('says what a missing value should be', () => {
    expect(problems('noise', { bandwidth: 9000, environment: 'city' })).toEqual([
      'frequency: expected a frequency such as "198 kHz", received nothing: it is missing',
    ]);
    expect(problems('detector', { detector: {}, load: {} })[0]).toMatch(
      /^load\.resistance: expected load: \{ "resistance".*received nothing/,
    );
  });

  it('is not upset by nesting, names of prototypes or size', () => {
    for (const { name } of CALCULATIONS) {
      expect(problems(name, nested(100_000)).length).toBeGreaterThan(0);
      expect(problems(name, { shape: 'solenoid', wire: nested(100_000) }).length).toBeGreaterThan(0);
      expect(problems(name, JSON.parse('{"__proto__": {"shape": "rod"}, "constructor": 1}')).length).toBeGreaterThan(0);
      expect(problems(name, { shape: 'x'.repeat(1e6) })[0].length).toBeLessThan(1000);
    }
    expect(({} as Record<string, unknown>).shape).toBeUndefined();
  });
});
