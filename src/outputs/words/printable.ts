import { safeText } from '../../engine/units/safe-text.ts';

// biome-ignore lint/suspicious/noControlCharactersInRegex: these are what a page cannot show
const CONTROL = /[\u0000-\u001f\u007f-\u009f\u200b-\u200f\u2028-\u202e\u2060-\u206f\ufeff\ufffe\uffff]+/g;

/** Words from people, as one line that a page can show. */
export const printable = (words: string): string => safeText(words).replace(CONTROL, ' ').trim();
