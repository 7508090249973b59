import type { Degrees } from './quantities.ts';

const POINTS = ['N', 'NNE', 'NE', 'ENE', 'E', 'ESE', 'SE', 'SSE', 'S', 'SSW', 'SW', 'WSW', 'W', 'WNW', 'NW', 'NNW'];
const LETTER: Readonly<Record<string, string>> = { north: 'N', east: 'E', south: 'S', west: 'W' };

/**
 * A direction by a point of the compass: "NE", "north-east", "north north east", "SSW", in letters of any case.
 * @param text what somebody wrote
 * @returns degrees from north by east, 0 to 337.5; undefined for what is no point of the sixteen
 */
export function bearingOfPoint(text: string): Degrees | undefined {
  if (text.length > 40) return undefined;
  const letters = text
    .toLowerCase()
    .replace(/(north|south|east|west)(?:ern|erly)?/g, (_, word: string) => LETTER[word])
    .replace(/[\s.‐‑–-]+/g, '')
    .toUpperCase();
  const at = POINTS.indexOf(letters);
  return at < 0 ? undefined : at * 22.5;
}
