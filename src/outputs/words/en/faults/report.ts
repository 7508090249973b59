import { formatQuantity } from '../../../../engine/units/format.ts';
import { ohms } from '../../figures.ts';

/** No cause is certain. */
const percent = (share: number): string => (share > 0.99 ? 'over 99 %' : formatQuantity(share, 'ratio', 2));

/** What the command about faults prints. */
export const faultAnswer = {
  title: (name: string): string => `Faults of ${name}`,
  readings: 'Resistances with nothing wrong, everything disconnected:',
  reading: (place: string, value: string): string => `${place}: ${value}`,
  ohms: (reading: number): string => (reading < 2e6 ? ohms(reading) : 'open'),
  playing: 'With nothing wrong, playing the strongest station:',
  volts: (volts: number): string => formatQuantity(volts, 'voltage', 2),
  causes: 'Likely causes:',
  probability: percent,
  anyOf: (faults: readonly string[]): string => faults.join('; or '),
  cause: (probability: number, faults: readonly string[]): string => `${percent(probability)}  ${faults.join('; or ')}`,
  causesIfOne: 'Likely causes, if there is one fault:',
  pairs: 'Two faults at once, which explain the observations together:',
  pair: (probability: number, faults: readonly string[]): string => `${percent(probability)}  ${faults.join('; and ')}`,
  bothOf: (faults: readonly string[]): string => faults.join('; and '),
  pairKnown: 'Two faults at once are likelier than one: mend one of them, then ask again.',
  remedy: (text: string): string => `Remedy: ${text}`,
  fits: (checks: readonly string[]): string => `fits: ${checks.join('; ')}`,
  fitsNot: (checks: readonly string[]): string => `does not fit: ${checks.join('; ')}`,
  observed: (check: string, answer: string): string => `${check}: ${answer}`,
  next: 'Next check:',
  expect: (sound: string, faulty: string): string => `Good: ${sound}. With the likeliest cause: ${faulty}.`,
  caution: (text: string): string => `⚠ ${text}`,
  known: 'The first cause is over 90 % likely.',
  tied: 'No check left tells enough: the causes with the highest probabilities cannot be told apart here.',
  tiedWith: (causes: readonly string[]): string => `Not told apart from the first on this set: ${causes.join('; ')}.`,
  contradicts: (check: string, answer: string): string =>
    `⚠ This does not fit the other observations, take it again: ${check}: ${answer}. If it stays, there may be two faults: mend the first and ask again.`,
  ask: (help: string): string => `  (${help}; Enter: not tried; “not possible”; “end”): `,
  notUnderstood: (help: string): string => `  Expected: ${help}.`,
  problems: (file: string, count: number): string => `${file}: ${count === 1 ? 'one problem' : `${count} problems`}`,
} as const;
