import { counted } from '../grammar.ts';

/** What is assumed: typical values that nobody has confirmed. */
export const assumedWords = {
  mark: 'assumed',
  count: (count: number): string => `${counted(count, 'value', 'values')} assumed`,
  about: 'Typical values, taken because nothing was given. Change each to what you have, or confirm it.',
  confirm: 'Confirm',
  confirmOne: (what: string): string => `Confirm: ${what}`,
  confirmTip: 'A typical value that nobody has confirmed. Press if it is right.',
  confirmAll: 'Confirm all',
  confirmed: 'confirmed values',
  valueOf: (place: string, value: string): string => `${place}: ${value}`,
} as const;
