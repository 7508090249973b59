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

const warnings = (name: string, input: unknown): readonly string[] => {
  const result = CALCULATIONS.find((c) => c.name === name)!.run(input);
  if (!result.ok) throw new Error(result.problems[0].message);
  return result.answer.warnings;
};
const coil = { shape: 'solenoid', turns: 50, meanDiameter: 0.05, pitch: 0.001, wire: { diameter: 0.0005 } };

describe('bad input to calc', () => {
  it('says which keys it does not use, and is silent about its own', () => {
    expect(warnings('coil', { ...coil, frequncy: 1e6, wire: { ...coil.wire, metl: 'copper' } })).toEqual([
      '“wire.metl” is not used here and was left out.',
      '“frequncy” is not used here and was left out.',
    ]);
    expect(warnings('coil', { ...coil, constructor: 1 })).toEqual(['“constructor” is not used here and was left out.']);
    const upright = { shape: 'vertical', height: 10, length: 0, base: 1, wire: { diameter: 0.002 } };
    expect(warnings('aerial', upright)).toEqual([]);
    expect(warnings('aerial', { ...upright, length: 5 })).toHaveLength(1);
    for (const { name, example } of CALCULATIONS)
      if (name !== 'reception') expect(warnings(name, example).join(), name).not.toMatch(/not used|no finite/);
  });

  it('says so when a figure has no end', () => {
    expect(warnings('groundwave', { frequency: 1e6, distance: 1e5, ground: 'average', power: 0 })).toEqual([
      'What was given leaves no finite figure for level.',
    ]);
  });

  it('refuses, with a reason, what is possible in each part and impossible together', () => {
    const wound = { shape: 'solenoid', formerDiameter: 0.063, wire: { diameter: '26 SWG', covering: 'enamel' } };
    expect(problems('turns', { inductance: 2e-4, coil: wound, turns: 1e6 })[0]).toMatch(
      /^\(top\): expected values .* got .*20000/,
    );
    const hair = { shape: 'inverted-L', height: 10, length: 1e-15, base: 1, wire: { diameter: 0.002 } };
    expect(problems('aerial', hair)[0]).toMatch(
      /^\(top\): expected sizes that go together, .*more than the wire is thick/,
    );
  });

  it('names every problem, each with its path, what was expected and what was given', () => {
    for (const { name } of CALCULATIONS)
      for (const input of [{}, { shape: 7, frequency: '5 pF' }, 'coil', null, 5, { detector: 'galena', wire: [] }]) {
        const found = problems(name, input);
        expect(found.length, name).toBeGreaterThan(0);
        for (const problem of found) {
          expect(problem, name).toMatch(/^[^:]+: .*expected .*got /s);
          expect(problem, name).not.toMatch(/Invalid|undefined|Object\b/);
        }
      }
  });

  it('has a reason in words for whatever the engine refuses of values that lead nowhere together', () => {
    const times = (value: unknown, factor: number): unknown =>
      typeof value === 'number'
        ? value * factor
        : typeof value === 'string'
          ? value.replace(/^[\d.]+(?= )/, (digits) => String(Number(digits) * factor))
          : value;
    for (const { name, example } of CALCULATIONS) {
      if (name === 'reception' || name === 'vary' || name === 'detection') continue;
      const change = (value: unknown, to: (changed: unknown) => unknown): void => {
        if (typeof value === 'object' && value !== null)
          for (const [key, inner] of Object.entries(value))
            change(inner, (changed) => to({ ...value, ...(Array.isArray(value) ? [] : { [key]: changed }) }));
        else
          for (const factor of [1e-4, 0.1, 10, 1e4])
            for (const problem of problems(name, to(times(value, factor)))) {
              if (/expected (?:sizes|values) that/.test(problem)) expect(problem, name).toMatch(/[}…]: \S+ \S+/);
              expect(problem, name).toMatch(/expected .*got /s);
            }
      };
      change(example, (changed) => changed);
    }
  });

  it('says what a missing value should be', () => {
    expect(problems('noise', { bandwidth: 9000, environment: 'city' })).toEqual([
      'frequency: expected a frequency such as "198 kHz", got nothing: it is missing',
    ]);
    expect(problems('detector', { detector: {}, load: {} })[0]).toMatch(
      /^load\.resistance: expected load: \{ "resistance".*got nothing/,
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
