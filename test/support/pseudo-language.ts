/** A language made of English in brackets: whatever is shown outside them was not made in `outputs/words`. */
const OPEN = '⟦';
const CLOSE = '⟧';

/** The same words, every text in brackets. Functions keep their figures, lists and tables their shape. */
export function bracketed<T>(words: T): T {
  if (typeof words === 'string') return (words === '' ? '' : `${OPEN}${words}${CLOSE}`) as T;
  if (typeof words === 'function')
    return ((...given: unknown[]) => bracketed((words as unknown as (...x: unknown[]) => unknown)(...given))) as T;
  if (Array.isArray(words)) return words.map(bracketed) as T;
  if (typeof words === 'object' && words !== null)
    return Object.fromEntries(Object.entries(words).map(([key, value]) => [key, bracketed(value)])) as T;
  return words;
}

/** What stands outside all brackets, a line for each stretch. */
function outsideBrackets(text: string): string[] {
  const outside: string[] = [];
  let depth = 0;
  let stretch = '';
  for (const c of text) {
    if (c === OPEN) {
      if (depth === 0) {
        outside.push(stretch);
        stretch = '';
      }
      depth++;
    } else if (c === CLOSE) depth = Math.max(0, depth - 1);
    else if (depth === 0) stretch += c;
  }
  return [...outside, stretch];
}

/** Signs of units and the letters of part tags (L1, C2, T3 …) are the same in every language. */
const UNITS =
  /^(?:[fpnµmkMG]?(?:A|F|H|Hz|J|N|S|V|W|Ω|m|s|g|Pa|bit)|[kcm]?m²?|dB|dBm|dBu|SPL|mV\/m|µV\/m|V\/m|kHz\/pF|SWG|AWG|UTC|h|min|in|ft|rms|mS\/m|Ω·m|ppm|tan|sin|cos)$/;

/**
 * Words of two or more letters that stand outside brackets, are no unit and no name of the user's.
 * @param names what the user wrote: names, notes, the description's own values.
 */
export function bareWords(text: string, names: Iterable<string> = []): string[] {
  let rest = outsideBrackets(text).join('\n');
  for (const name of [...names].filter(Boolean).sort((a, b) => b.length - a.length)) rest = rest.replaceAll(name, ' ');
  return [...rest.matchAll(/[\p{L}][\p{L}\p{N}²³/·’'-]*/gu)]
    .map(([word]) => word.replace(/[.,:;’'/-]+$/, ''))
    .filter((word) => /\p{L}{2}/u.test(word) && !UNITS.test(word) && !/^[A-Z]{1,2}\d/.test(word));
}

/** What may stand between two texts that only together make a sentence; two spaces are the gap between columns. */
const JOINT = /^(?: ?[,;] ?| )?$/;

/**
 * Pairs of bracketed texts side by side with nothing but space between: a sentence glued of pieces. Within a text's own
 * brackets another may stand beside another: there one template has put them.
 */
export function gluedSentences(text: string): string[] {
  const glued: string[] = [];
  let depth = 0;
  let start = 0;
  let before: { readonly text: string; readonly end: number } | undefined;
  for (let i = 0; i < text.length; i++) {
    if (text[i] === OPEN && depth++ === 0) start = i;
    else if (text[i] === CLOSE && depth > 0 && --depth === 0) {
      const one = text.slice(start, i + 1);
      if (before && JOINT.test(text.slice(before.end, start))) glued.push(`${before.text}…${one}`);
      before = { text: one, end: i + 1 };
    }
  }
  return glued;
}
