import type { UnfitReason, UnfitReasons } from '../../../../engine/measure/unfit.ts';
import { formatQuantity } from '../../../../engine/units/format.ts';
import { optionName } from '../fields/options.ts';

const PARTS = {
  coil: 'a plain coil',
  capacitor: 'a capacitor with its leads',
  aerial: 'an aerial below its natural frequency',
  'crystal earpiece': 'a crystal earpiece with one resonance',
} as const;

const SENTENCES: { readonly [C in keyof UnfitReasons]: (figures: UnfitReasons[C]) => string } = {
  'resonance.not-falling': () =>
    'expected frequencies that fall as the capacitance rises, got points from which no inductance follows',
  'dial.not-rising': () =>
    'expected positions that rise as the frequency falls (0 fully open, 1 fully meshed), got readings that do not',
  'dial.no-capacitor': () =>
    'expected "capacitor" with its law, least and greatest capacitance, or a set that has one, got neither',
  'dial.no-scale': () =>
    'expected a set with a variable capacitor whose capacitance rises all along its scale, got one without: state the "capacitor" of the readings',
  'dial.law-from-nothing': ({ law }) =>
    `expected a least capacitance above 0 for a ${optionName('tuning.law', law)} capacitor, got 0`,
  'width.no-peak': () => 'expected levels around a resonance, got levels without a peak',
  'detector.not-rising': () =>
    'expected currents that rise with the voltage as a junction’s do, got points that no junction fits',
  'decay.no-ringing': () => 'expected samples of an oscillation that dies away, got none in them',
  'detector.both-ways': ({ forward, reverse, leastForward, leastReverse }) =>
    `expected at least ${leastForward} points above 0 V and ${leastReverse} below, got ${forward} and ${reverse}`,
  'detector.current-against-voltage': ({ index }) =>
    `expected currents with the sign of their voltage, got the opposite at [${index}]`,
  'detector.no-current': ({ index }) =>
    `expected voltages at which a current is left for the detector, got none at [${index}]: the voltmeter takes all of it, or the source is below the voltage`,
  'upper-not-above-lower': () => 'expected "upper" above "lower", got it below',
  'ratio-not-above-one': () => 'expected the peak’s level over the lower one, above 1, got no more than 1',
  'aerial.adds-nothing': ({ index }) =>
    `expected a smaller capacitance of the set with the aerial than without, got none smaller at [${index}]`,
  'aerial.more-than-series': ({ index }) =>
    `expected less than the capacitor in series with the aerial, got more at [${index}]`,
  'aerial.level-not-falling': () => 'expected levels that fall as resistance is added, got levels that do not',
  'aiding-not-above-opposing': () =>
    'expected more inductance with the fields aiding than opposing, got no more: the two may be interchanged',
  'coupling-above-one': () =>
    'expected a mutual inductance below the geometric mean of the two coils, got one above it',
  'earth.not-above-zero': () =>
    'expected the earth’s two readings to be more together than the reading between the auxiliary earths, got no more',
  'earth.too-near': () => 'expected rods farther apart than about their length, got rods that share most of their soil',
  'resistance-of-leads': () => 'expected more resistance than the leads have, got no more',
  'no-triangle': () => 'expected three voltages of which none is above the sum of the others, got such a one',
  'as-open': () => 'expected levels below that of the open input, got the same',
  'field.calibration-not-rising': () => 'expected currents that rise with the emf, got currents that do not',
  'field.outside-calibration': ({ current, lowest, highest }) =>
    `expected a current within the calibration, ${formatQuantity(lowest, 'current')} to ${formatQuantity(highest, 'current')}, got ${formatQuantity(current, 'current')}`,
  'analyser.two-ports': () => 'expected a file of two ports (.s2p) for this fixture, got one of one port',
  'analyser.standards-do-not-reach': ({ frequency, lowest, highest }) =>
    `expected open, short and load measured over the whole sweep, got ${formatQuantity(lowest, 'frequency')} to ${formatQuantity(highest, 'frequency')} for a sweep that has ${formatQuantity(frequency, 'frequency')}`,
  'analyser.standards-all-three': () => 'expected "open", "short" and "load" together, got some of them',
  'analyser.not-calibrated': ({ highest }) =>
    `expected a reflection of at most 1, got ${highest.toFixed(3)}: the analyser was not calibrated`,
  'analyser.not-this-part': ({ part, times, resonance }) =>
    `expected a sweep as ${PARTS[part]} has, got one that differs from it by ${times.toFixed(0)} times the noise${resonance === undefined ? '' : ` (a resonance near ${formatQuantity(resonance, 'frequency')})`}: a cable, a second resonance or a coupled circuit would do that`,
  'analyser.more-shorted-than-open': () =>
    'expected less inductance with the secondary shorted than open, got no less: the two files may be interchanged',
  'too-few-different': ({ least, given }) => `expected at least ${least} points that differ, got ${given}`,
};

/** Why no figure follows from readings: what was expected, and what was given. */
export const unfitText = (reason: UnfitReason): string =>
  (SENTENCES[reason.code] as (figures: UnfitReason) => string)(reason);
