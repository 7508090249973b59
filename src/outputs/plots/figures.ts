export const minus = (words: string): string => words.replace(/^-/, '−');

/** No signal at all is drawn as far down as anything is. */
const NOTHING = -200;
export const drawable = (level: number): number => (level > NOTHING ? Math.min(level, -NOTHING) : NOTHING);
