import { formatNumber, formatQuantity } from '../../../../engine/units/format.ts';
import type { HeardNames } from '../../../../engine/vary/suggestion-order.ts';
import type { TwoCircuits } from '../../../../engine/vary/two-circuits.ts';
import { bandSpan, wholeDB } from '../../figures.ts';
import { printable } from '../../printable.ts';
import { verdictWords } from '../reception/verdicts.ts';
import { heardAfterWords } from './stations-changed.ts';

const turns = (count: number): string => `${formatNumber(count, 3)} turns`;

/**
 * Two tuned circuits as they were worked out: what to wind and set, and what comes of it.
 * @param facts as `twoCircuitsFor` has them
 * @param heard the stations they take away and add
 * @returns one sentence each
 */
export function twoCircuitsWords(facts: TwoCircuits, heard: HeardNames): string[] {
  const { arrangement, aerialTurns, station, before, after, beyond } = facts;
  const { aerialTap, detectorTap, coupling, distance } = arrangement;
  const name = printable(station.name);
  const apart =
    coupling === undefined
      ? `${formatQuantity(distance, 'length', 2)} apart`
      : `coupled ${formatQuantity(coupling, 'ratio', 2)}`;
  const taps = [
    ...(aerialTap === undefined ? [] : [`aerial tap at ${formatNumber(aerialTap, 3)}`]),
    ...(detectorTap === undefined ? [] : [`detector tap at ${formatNumber(detectorTap, 3)}`]),
  ];
  const clearance = (dB: number): string => (Number.isFinite(dB) ? `${wholeDB(dB)} dB` : 'no other station heard');
  const covers = ([low, high]: readonly [number, number]): string => bandSpan(low, high);
  return [
    `Tuning coil ${turns(facts.turns)}, aerial coil ${turns(aerialTurns)} on a former of its own, ${[apart, ...taps].join(', ')}.`,
    `The aerial circuit has a tuning capacitor of its own${arrangement.aerialTuning ? '' : ', like the other'}.`,
    `${name}: ${verdictWords[station.after.verdict]} (now ${verdictWords[station.before.verdict]}), ${formatQuantity(station.after.level - station.before.level, 'level', 2)} of loudness, clearance ${clearance(station.after.clearance)} (now ${clearance(station.before.clearance)}).`,
    `The dial covers ${covers(after)} (now ${covers(before)}).`,
    ...(beyond.length > 0 ? [`The aerial circuit does not reach ${beyond.map(printable).join(', ')}.`] : []),
    ...heardAfterWords(heard),
  ];
}

/** Texts of the page and the command that make two circuits. */
export const twoCircuitsTexts = {
  title: 'Two tuned circuits',
  about: (name: string): string =>
    `A second tuned circuit in the aerial, with coils, distance and taps worked out for what you want, or for ${printable(name)}.`,
  make: 'Work out two circuits',
  take: 'Use them',
  undoLabel: 'two tuned circuits',
  trying: 'Working out coils, distance and taps …',
  notFound: (reason: string): string => `They could not be worked out: ${reason}`,
  notNow:
    'Coils and taps were left as they are: the figures of this set were not ready. “Two tuned circuits” works them out.',
  none: 'This arrangement cannot be made into two tuned circuits: choose an aerial on a coil first.',
};
