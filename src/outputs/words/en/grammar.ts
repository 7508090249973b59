const PLURALS = new Intl.PluralRules('en');

/** The form for a number: `plural(n, 'turn', 'turns')`. */
export const plural = (n: number, one: string, other: string): string => (PLURALS.select(n) === 'one' ? one : other);

/** A number with what is counted: `counted(3, 'turn', 'turns')`. */
export const counted = (n: number, one: string, other: string): string => `${n} ${plural(n, one, other)}`;

const LIST = new Intl.ListFormat('en-GB', { type: 'conjunction' });

/** "a, b and c". */
export const listOf = (items: readonly string[]): string => LIST.format(items);

const NUMERALS = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten'];

/** A small whole number in letters, a larger one in digits; "no" for none. */
export const numeral = (n: number): string => NUMERALS[n] ?? String(n);

/** Whole sentences one after the other. */
export const paragraph = (sentences: readonly string[]): string => sentences.join(' ');

/** The first few, and how many more there are. */
export const firstOf = (names: readonly string[]): string =>
  names.length > 5 ? `${names.slice(0, 5).join(', ')} and ${names.length - 5} more` : listOf(names);
