import type { NumberHint } from './refusal.ts';

/** A number at the start of a text, and what follows it. */
export type LeadingNumber =
  | {
      readonly ok: true;
      readonly value: number;
      /** What follows, from the first space or letter on; '' for a number alone. */
      readonly rest: string;
      /** Which sign certainly stands before the decimals. */
      readonly decimals?: 'point' | 'comma';
      /** One point and three digits after it: taken as decimals, thousands where commas are the decimal sign. */
      readonly pointBeforeThree?: true;
    }
  | {
      readonly ok: false;
      /** What is wrong and what to write instead; undefined where the text does not begin with a number. */
      readonly hint?: NumberHint;
    };

/** No number or quantity is longer; a megabyte of digits is not worth reading. */
export const LONGEST_NUMBER = 64;

const DIGIT = /\p{Nd}/u;

/** Decimal digits come in runs of ten from nought to nine, some runs side by side (Unicode Standard, section 4.6). */
function asciiDigit(digit: string): string {
  const code = digit.codePointAt(0)!;
  let before = 0;
  while (before < 60 && DIGIT.test(String.fromCodePoint(code - before - 1))) before++;
  return String(before % 10);
}

/**
 * Digits of any script, full-width letters and signs, and the true minus as their plain forms; fractions of one
 * character spelt out.
 */
export const plainText = (text: string): string => (PLAIN.test(text) ? text.trim() : unfold(text).trim());

const PLAIN = /^[ -~]*$/;

const unfold = (text: string): string =>
  text
    .replace(/[\uff01-\uff5e]/g, (c) => String.fromCharCode(c.charCodeAt(0) - 0xfee0))
    .replace(/(?![0-9])\p{Nd}/gu, asciiDigit)
    .replace(/[\u2212\ufe63]/g, '-')
    .replace(/[\u00bc-\u00be\u2150-\u215e]/g, (c) => ` ${c.normalize('NFKC')}`)
    .replace(/\u2044/g, '/');

const SPACE = ' \\u00a0\\u2000-\\u200a\\u202f\\u205f\\u3000';
/** Digits with one separator at a time between them. An apostrophe or a space at the end belongs to the unit. */
const RUN = new RegExp(`^(?:\\d+(?:[.,'\u2018\u2019\u02bc_\u066b\u066c${SPACE}]\\d+)*\\.?|[.,\u066b]\\d+)`);
const SPACES = new RegExp(`[${SPACE}]`, 'g');
const APOSTROPHES = /[\u2018\u2019\u02bc]/g;

/** `digits`: as a program writes the number. */
type Run =
  | (Omit<Extract<LeadingNumber, { ok: true }>, 'rest' | 'value'> & { readonly digits: string })
  | { readonly ok: false; readonly hint: NumberHint };

const unclear = (number: string): Extract<Run, { ok: false }> => ({
  ok: false,
  hint: { code: 'number-unclear', number },
});

/** Thousands, or the Indian thousand and hundreds of it: "1 234 567", "12,34,567". */
const isGrouped = (whole: string, separator: string): boolean => {
  const [first, ...groups] = whole.split(separator);
  if (groups.length === 0 || first === '' || first.startsWith('0')) return false;
  const by = (size: number) => first.length <= size && groups.slice(0, -1).every((group) => group.length === size);
  return groups.at(-1)!.length === 3 && (by(3) || (groups.length > 1 && by(2)));
};

/** Digits and separators → the one number they can mean, or why there is none. */
function readRun(run: string): Run {
  const text = run
    .replace(SPACES, ' ')
    .replace(APOSTROPHES, "'")
    .replace(/\u066b$/, '');
  const separators = text.match(/[^\d]/g) ?? [];
  const kinds = [...new Set(separators)];
  const plain = (digits: string, rest: Partial<Run> = {}): Run => ({ ok: true, digits, ...rest }) as Run;
  if (kinds.length === 0) return plain(text);
  const [last] = separators.slice(-1);
  const times = separators.filter((separator) => separator === last).length;
  const [before, after] = [text.slice(0, text.lastIndexOf(last)), text.slice(text.lastIndexOf(last) + 1)];
  const isDecimal = last === '.' || last === ',' || last === '\u066b';
  if (kinds.length === 1) {
    if (times > 1 || !isDecimal)
      return last !== '\u066b' && isGrouped(text, last) ? plain(text.replaceAll(last, '')) : unclear(run);
    if (last === ',' && /^[1-9]\d{0,2}$/.test(before) && after.length === 3)
      return {
        ok: false,
        hint: {
          code: 'thousand-or-fraction',
          number: run,
          whole: `${before}${after}`,
          fraction: `${before}.${after}`,
        },
      };
    const decimals = last === ',' ? 'comma' : 'point';
    if (last === '.' && /^[1-9]\d{0,2}$/.test(before) && after.length === 3)
      return plain(text, { pointBeforeThree: true });
    return plain(`${before || '0'}.${after || '0'}`, after === '' || last === '\u066b' ? {} : { decimals });
  }
  // Two kinds: the first makes groups, the second, once, is before the decimals.
  const [group] = kinds;
  if (kinds.length > 2 || times > 1 || !isDecimal || !isGrouped(before, group) || after === '') return unclear(run);
  const decimals = last === ',' ? 'comma' : last === '.' ? 'point' : undefined;
  return plain(`${before.replaceAll(group, '')}.${after}`, { decimals });
}

/**
 * The number a text begins with, in any of the ways people write one: "0.45", "1,5", "1 000", "1,234.5", "1.234,5",
 * "1'000", "1,00,000", "1e-3", "2 1/2", "1/8", digits of any script. One point is a decimal point; one comma with three
 * digits after it is refused, because it can mean either. Never reads one number as another: what can be taken in two
 * ways, or in none, is refused.
 * @param written what somebody wrote
 * @returns the number and what follows it, or why there is none
 */
export function leadingNumber(written: string): LeadingNumber {
  if (written.length > LONGEST_NUMBER) return { ok: false, hint: { code: 'too-long' } };
  const text = plainText(written);
  const sign = /^[+-]/.exec(text)?.[0] ?? '';
  let rest = text.slice(sign.length);
  let run = RUN.exec(rest)?.[0];
  if (run === undefined) return { ok: false };
  let fraction = 0;
  let over = 1;
  const slash = /^\s*\/\s*(\d+)/.exec(rest.slice(run.length));
  if (slash) {
    rest = rest.slice(run.length + slash[0].length);
    over = Number(slash[1]);
    const mixed = new RegExp(`^(.*?)[${SPACE}](\\d+)$`).exec(run);
    if (mixed) {
      // "1 500/2" is 1500 halves or one and 500 halves.
      if (mixed[2].length === 3 || !/\d$/.test(mixed[1])) return unclear(`${run}${slash[0]}`);
      fraction = Number(mixed[2]) / over;
      over = 1;
      run = mixed[1];
    }
  } else {
    rest = rest.slice(run.length);
    const several = /^\s+(\d+)\s*\/\s*(\d+)/.exec(rest);
    if (several) {
      fraction = Number(several[1]) / Number(several[2]);
      rest = rest.slice(several[0].length);
    }
  }
  const power = /^e[+-]?\d+/i.exec(rest)?.[0] ?? '';
  if (power !== '' && (slash || fraction !== 0)) return unclear(text);
  const read = readRun(run);
  if (!read.ok) return read;
  if (fraction !== 0 && /[.]/.test(read.digits)) return unclear(text);
  rest = rest.slice(power.length);
  if (/^\s*[\d.,_\u066b\u066c'\u2018\u2019]\s*\d|^\s*\d/.test(rest)) return unclear(text);
  const size = Number(read.digits + power) / over + fraction;
  if (!Number.isFinite(size)) return { ok: false, hint: { code: 'not-finite' } };
  if (size === 0 && /[1-9]/.test(run)) return { ok: false, hint: { code: 'too-small' } };
  const { decimals, pointBeforeThree } = read;
  return { ok: true, value: sign === '-' ? -size : size, rest, decimals, pointBeforeThree };
}

/**
 * A number written alone, without a unit.
 * @param written what somebody wrote
 * @returns the number, or undefined.
 */
export function wholeNumber(written: string): number | undefined {
  const read = leadingNumber(written);
  return read.ok && read.rest === '' ? read.value : undefined;
}
