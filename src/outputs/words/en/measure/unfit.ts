import type { UnfitReason, UnfitReasons } from '../../../../engine/measure/unfit.ts';

const SENTENCES: { readonly [C in keyof UnfitReasons]: (figures: UnfitReasons[C]) => string } = {
  'resonance.not-falling': () =>
    'expected frequencies that fall as the capacitance rises, got points from which no inductance follows',
  'dial.not-rising': () =>
    'expected positions that rise as the frequency falls (0 fully open, 1 fully meshed), got readings that do not',
  'width.no-peak': () => 'expected levels around a resonance, got levels without a peak',
  'detector.not-rising': () =>
    'expected currents that rise with the voltage as a junction’s do, got points that no junction fits',
  'decay.no-ringing': () => 'expected samples of an oscillation that dies away, got none in them',
  'too-few-different': ({ least, given }) => `expected at least ${least} points that differ, got ${given}`,
};

/** Why no figure follows from readings: what was expected, and what was given. */
export const unfitText = (reason: UnfitReason): string =>
  (SENTENCES[reason.code] as (figures: UnfitReason) => string)(reason);
