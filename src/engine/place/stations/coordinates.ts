import { plainText } from '../../units/number.ts';
import type { Degrees } from '../../units/quantities.ts';
import type { Position } from '../geodesy.ts';

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
 * @returns degrees, or undefined when it is none or is out of its range.
 */
export function readCoordinate(text: string, axis: 'latitude' | 'longitude'): Degrees | undefined {
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
  const value = (decimal(degrees) + m / 60 + s / 3600) * (sign === '-' || letter === 'S' || letter === 'W' ? -1 : 1);
  return Math.abs(value) <= (axis === 'latitude' ? 90 : 180) ? value : undefined;
}

/** Latitude and longitude in one cell: "52.5, -1.25", "52°30′N 1°15′W", "52.5N/1.25W". */
export function readPosition(text: string): Position | undefined {
  if (text.length > 2 * LONGEST) return undefined;
  const trimmed = plainText(text);
  const separators = [/\s*[;/]\s*/, /,\s+/, /\s+(?=[NSEW])/i, /(?<=[NSEW])\s*,?\s*(?=[\d-])/i, /,/, /\s+/];
  for (const separator of separators) {
    const parts = trimmed.split(separator).filter((part) => part !== '');
    if (parts.length !== 2) continue;
    const latitude = readCoordinate(parts[0], 'latitude');
    const longitude = readCoordinate(parts[1], 'longitude');
    if (latitude !== undefined && longitude !== undefined) return { latitude, longitude };
  }
  return undefined;
}
