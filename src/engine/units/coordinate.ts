import { plainText } from './number.ts';
import type { Degrees } from './quantities.ts';

/** Which of the two angles of a position. */
export type Axis = 'latitude' | 'longitude';

const NUMBER = String.raw`\d{1,3}(?:[.,]\d+)?`;
/** 52.5, −52°30′15″, 52 30 15 N, N52.5, 52d30m. */
const ANGLE = new RegExp(
  String.raw`^([NSEWO])?\s*([+-])?\s*(${NUMBER})\s*(?:°|º|d|deg)?\s*(?:(\d{1,2}(?:[.,]\d+)?)\s*(?:'|′|’|m|min)?\s*(?:(\d{1,2}(?:[.,]\d+)?)\s*(?:"|″|”|''|s|sec)?)?)?\s*([NSEWO])?$`,
  'i',
);

/** No coordinate is longer. */
const LONGEST = 40;

const decimal = (text: string | undefined) => (text === undefined ? 0 : Number(text.replace(',', '.')));

/**
 * One coordinate as people write it: decimal degrees, or degrees, minutes and seconds, with a sign or a letter.
 * @param text as "51.2 N", "51°12′N", "-3,5"
 * @param axis the letters differ: N and S, or E and W
 * @returns degrees north or east, of any size; undefined when it is none
 */
export function coordinateDegrees(text: string, axis: Axis): Degrees | undefined {
  const match = text.length > LONGEST ? null : ANGLE.exec(plainText(text));
  if (!match) return undefined;
  const [, before, sign, degrees, minutes, seconds, after] = match;
  if (before && after) return undefined;
  const letter = (before ?? after ?? '').toUpperCase();
  const letters = axis === 'latitude' ? 'NS' : 'EWO';
  if (letter && !letters.includes(letter)) return undefined;
  const m = decimal(minutes);
  const s = decimal(seconds);
  if (!(m < 60 && s < 60) || (minutes !== undefined && /[.,]/.test(degrees))) return undefined;
  // O is west in French and Spanish but east in German: refused rather than guessed.
  if (letter === 'O' || (letter && sign)) return undefined;
  return (decimal(degrees) + m / 60 + s / 3600) * (sign === '-' || letter === 'S' || letter === 'W' ? -1 : 1);
}

/**
 * One coordinate as `coordinateDegrees` reads it, within its range.
 * @returns degrees, or undefined when it is none or is out of its range.
 */
export function readCoordinate(text: string, axis: Axis): Degrees | undefined {
  const value = coordinateDegrees(text, axis);
  return value !== undefined && Math.abs(value) <= (axis === 'latitude' ? 90 : 180) ? value : undefined;
}
