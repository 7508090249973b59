import { expect, it } from 'vitest';
import { budgetSentence, chanceCell, chanceSentence } from './uncertainty.ts';

it('says how many such sets hear a station', () => {
  const said = (chance: number) => chanceSentence({ chance, verdict: 'quiet' });
  expect(said(1)).toBe('Nearly all such sets would tune it in and receive it audibly, not masked by another station.');
  expect(said(0.96)).toBe(
    'About 9 in 10 such sets would tune it in and receive it audibly, not masked by another station.',
  );
  expect(said(0.63)).toBe(
    'About 6 in 10 such sets would tune it in and receive it audibly, not masked by another station.',
  );
  expect(said(0.02)).toBe('Fewer than 1 in 20 such sets would receive it audibly.');
  expect(chanceSentence({ chance: 0, verdict: 'out of range' })).toBeUndefined();
});

it('says the same in a cell of a table', () => {
  expect([0, 0.04, 0.06, 0.63, 0.96, 0.98].map(chanceCell)).toEqual([
    'hardly any',
    'hardly any',
    '1 in 10',
    '6 in 10',
    '9 in 10',
    'nearly all',
  ]);
});

it('says what an unmeasured thing does and what measuring it would gain, where that is worth it', () => {
  expect(budgetSentence({ what: 'phones', effect: [-8.1, 7.9], gain: 3.9 })).toBe(
    'Sensitivity of the phones or loudspeaker: −8 to +8 dB at the ear. Measuring it would narrow the range by 4 dB.',
  );
  expect(budgetSentence({ what: 'earth', effect: [-2.4, 0.5], gain: 0.1 })).toBe(
    'Resistance of the earth: −2 to +1 dB at the ear.',
  );
  expect(budgetSentence({ what: 'detector', effect: [-5, 0.2], gain: 0.6 })).toBe(
    'Curve of the detector: −5 to 0 dB at the ear. Measuring a few points of it would narrow the range by 0.6 dB.',
  );
});
