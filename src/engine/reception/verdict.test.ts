import { describe, expect, it } from 'vitest';
import type { Disturbance, Loudness } from './path/types.ts';
import { isHeard, verdictOf, worstOf } from './verdict.ts';

const beside = (effect: Disturbance['effect'], separation = 0): Disturbance => ({
  index: 1,
  by: 'Ash',
  frequency: 612e3,
  carrierRatio: 0,
  audioRatio: 0,
  separation,
  effect,
});

describe('one verdict for one station', () => {
  it('is its loudness, whatever is heard behind it', () => {
    for (const alone of ['loud', 'comfortable', 'quiet', 'faint', 'not heard'] as const satisfies Loudness[])
      for (const others of [[], [beside('none')], [beside('behind'), beside('interferes')]])
        expect(verdictOf(true, alone, others)).toBe(alone);
  });
  it('masked where any of the others masks it, but not what nobody hears', () => {
    expect(verdictOf(true, 'quiet', [beside('none'), beside('masks')])).toBe('masked');
    expect(verdictOf(true, 'not heard', [beside('masks')])).toBe('not heard');
  });
  it('out of range beyond the dial, whatever else', () => {
    expect(verdictOf(false, 'loud', [])).toBe('out of range');
    expect(verdictOf(false, 'quiet', [beside('masks')])).toBe('out of range');
  });
  it('heard is what is neither masked, nor out of range, nor too weak', () => {
    expect((['loud', 'comfortable', 'quiet', 'faint'] as const).every(isHeard)).toBe(true);
    expect((['masked', 'out of range', 'not heard'] as const).some(isHeard)).toBe(false);
  });
  it('the worst of several is the one it stands least above', () => {
    expect(worstOf([])).toBeUndefined();
    expect(worstOf([beside('behind', 20), beside('masks', -3), beside('interferes', 5)])?.separation).toBe(-3);
  });
});
