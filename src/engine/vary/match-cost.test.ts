import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readText } from '../set/read.ts';
import { costWords } from './match-cost.ts';
import { matching } from './matching.ts';

describe('what a match costs', () => {
  const before = { heard: 6, lowest: 470e3, highest: 1585e3 };

  it('tells stations lost and a dial that moved, and nothing of trifles', () => {
    expect(costWords(before, { heard: 1, lowest: 415e3, highest: 762e3 })).toBe(
      'But six stations become one, and the dial then covers 415 to 762 kHz instead of 470 to 1585 kHz.',
    );
    expect(costWords(before, { ...before, heard: 7, highest: 1550e3 })).toBeUndefined();
    expect(costWords({ ...before, heard: 1 }, { ...before, heard: 0 })).toBe('But the one station is lost.');
  });

  it('is told of the loudest aerial tap of the first example, when asked for', () => {
    const read = readText(readFileSync('examples/medium-wave-galena.json', 'utf8'));
    if (!read.ok) throw new Error('the example does not read');
    const tap = matching(read.set, 0, { tellCosts: true }).find(({ what }) => what === 'aerial tap');
    expect(tap?.write).toBeDefined();
    expect(tap?.cost).toMatch(/^But \w+ stations become \w+, and the dial then covers \d+ to \d+ kHz/);
    expect(matching(read.set, 0).every(({ cost }) => cost === undefined)).toBe(true);
  });
});
