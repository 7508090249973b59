const PLURALS = new Intl.PluralRules('en');

/** The form for a number: `plural(n, 'turn', 'turns')`. */
export const plural = (n: number, one: string, other: string): string => (PLURALS.select(n) === 'one' ? one : other);
