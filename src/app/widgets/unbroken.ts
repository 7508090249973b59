const BEFORE_UNIT = /(\d) (?=(?:[kMmµnp]?(?:m|g|F|H|Ω|V|W|A|Hz)|mm²|dB|turns?|strands?|%)(?:[^a-z]|$))/g;

/** The same words, with no line ending between a figure and its unit. */
export const unbroken = (words: string): string => words.replace(BEFORE_UNIT, '$1\u00a0');
