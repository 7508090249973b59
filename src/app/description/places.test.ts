import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { problemText } from '../../outputs/words/index.ts';
import { fieldPath, loadTitle, nameOf, stageOf } from './places.ts';

const written = JSON.parse(readFileSync('examples/medium-wave-galena.json', 'utf8')) as unknown;

describe('places of the description as the page labels them', () => {
  it.each([
    ['tuning.maximum', 'Tuning capacitor › Meshed', 'tuned circuit'],
    ['coils[0].turns', '“main” › Turns', 'tuned circuit'],
    ['place.stations[0].frequency', 'Place › “Saltmarsh Radio” › Frequency', 'field'],
    ['load.bypass', 'Phones or amplifier › By-pass capacitor', 'audio'],
    ['aerial', 'Aerial', 'aerial'],
    ['', 'The whole description', 'field'],
  ])('%s', (path, words, stage) => {
    expect(fieldPath(path, written)).toBe(words);
    expect(stageOf(path)).toBe(stage);
  });
  it('name the load by what it is', () => {
    expect(loadTitle('amplifier')).toBe('Amplifier');
    expect(loadTitle('crystal earpiece')).toBe('Earpiece');
    expect(loadTitle('moving-coil phones')).toBe('Phones');
  });
  it('in a problem', () => {
    const problem = {
      path: 'arrangement.aerialCoil',
      expected: { code: 'less-than-field', max: 1e-11, field: 'tuning.maximum' },
      hint: { code: 'second-coil', taken: 'arrangement.coil' },
    } as const;
    expect(problemText(problem, nameOf(written))).toMatchObject({
      expected: 'less than 10 pF, the value of “Tuning capacitor › Meshed”',
      hint: '“Arrangement › Tuning coil” names it already; add a second coil',
    });
  });
});
