import { describe, expect, test } from 'vitest';
import { exampleSet } from '../../../test/support/example-set.ts';
import { builtSet } from '../built/built-set.ts';
import type { FaultCode, SignCode } from './fault.ts';
import { faultModel } from './fault-model.ts';
import { isByEar, noticedShare } from './heard-signs.ts';

describe('a change in loudness is noticed', () => {
  const share = (
    sign: SignCode,
    before: readonly number[],
    after?: readonly number[],
    fault: FaultCode = 'earth-dry',
  ) => noticedShare(sign, fault, { margins: before }, after);

  test('where it is many decibels on any station that is heard', () => {
    expect(share('louder-with-other-earth', [20, 15], [21, 24])).toBeGreaterThan(0.99);
    expect(share('louder-with-other-earth', [-60, -80], [22, -5])).toBeGreaterThan(0.99);
  });

  test('not where it is a fraction of one', () => {
    expect(share('louder-with-other-earth', [20, 15], [20.4, 15.2])).toBeLessThan(0.02);
    expect(share('crackle-on-tapping', [20, 15], [20.1, 15.1])).toBeLessThan(0.02);
  });

  test('sooner while it happens than between two trials', () => {
    const change = [[20], [21.6]] as const;
    expect(share('crackle-on-tapping', ...change)).toBeGreaterThan(0.9);
    expect(share('louder-with-other-earth', ...change)).toBeLessThan(0.2);
  });

  test('not where nothing is heard before or after', () => {
    expect(share('louder-with-other-wire', [-90], [-4])).toBeLessThan(0.02);
  });

  test('and what is no change in loudness is noticed as before', () => {
    expect(isByEar('hum')).toBe(false);
    expect(share('hum', [20], [20])).toBe(1);
    expect(share('crackle-on-turning', [20], [20], 'vanes-touch')).toBe(1);
    expect(share('crackle-on-turning', [20], [20], 'rotor-contact-dirty')).toBeLessThan(0.02);
  });
});

test('another earth helps a dry one where it costs something: at the high end, hardly on long wave', () => {
  const yesWith = (name: string): number => {
    const { byClass, classes } = faultModel(builtSet(exampleSet(name)), { cases: 6 });
    const answers = byClass.get('sign:louder-with-other-earth')!;
    return answers[2 * classes.findIndex((one) => one.startsWith('improve-earth')) + 1];
  };
  expect(yesWith('medium-wave-galena')).toBeGreaterThan(0.55);
  expect(yesWith('long-wave-foil')).toBeLessThan(0.35);
});
