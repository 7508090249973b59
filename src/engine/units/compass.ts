import { withinHalfTurn, withinTurn } from './angle.ts';
import type { Degrees } from './quantities.ts';

const POINTS = ['N', 'NNE', 'NE', 'ENE', 'E', 'ESE', 'SE', 'SSE', 'S', 'SSW', 'SW', 'WSW', 'W', 'WNW', 'NW', 'NNW'];
const LETTER: Readonly<Record<string, string>> = { north: 'N', east: 'E', south: 'S', west: 'W' };
const QUARTER: Degrees = 11.25;

const ofLetters = (letters: string): Degrees | undefined => {
  const at = POINTS.indexOf(letters);
  return at < 0 ? undefined : at * 22.5;
};

/** "N by E", "NE by E": a quarter of the way from one of the eight points towards one of the four. */
function pointBetween(of: string, towards: string): Degrees | undefined {
  const [from, to] = [ofLetters(of), ofLetters(towards)];
  if (of.length > 2 || towards.length > 1 || from === undefined || to === undefined) return undefined;
  const way = withinHalfTurn(to - from);
  const isPoint = Math.abs(way) === 45 || Math.abs(way) === 90;
  return isPoint ? withinTurn(from + Math.sign(way) * QUARTER) : undefined;
}

/** "N 45° E", "S 20 W": degrees from north or south towards east or west. */
function inQuadrant(from: string, degrees: number, towards: string): Degrees | undefined {
  if (degrees > 90) return undefined;
  const isClockwise = (from === 'N') === (towards === 'E');
  return withinTurn((from === 'N' ? 0 : 180) + (isClockwise ? degrees : -degrees));
}

/**
 * A direction by a point of the compass: "NE", "north-east", "north north east", "SSW", "W by N", or in a quadrant of it:
 * "N 45° E"; in letters of any case.
 * @param text what somebody wrote
 * @returns degrees from north by east, from 0 to below 360; undefined for what is no point of the thirty-two
 */
export function bearingOfPoint(text: string): Degrees | undefined {
  if (text.length > 40) return undefined;
  const short = text
    .toLowerCase()
    .replace(/(north|south|east|west)(?:ern|erly)?/g, (_, word: string) => LETTER[word])
    .toUpperCase();
  const quadrant = /^\s*([NS])\s*(\d{1,2}(?:\.\d+)?)\s*(?:°|DEG)?\s*([EW])\s*$/.exec(short);
  if (quadrant) return inQuadrant(quadrant[1], Number(quadrant[2]), quadrant[3]);
  const [of, towards, ...more] = short.split(/\bBY\b/).map((part) => part.replace(/[\s.‐‑–-]+/g, ''));
  if (more.length > 0) return undefined;
  return towards === undefined ? ofLetters(of) : pointBetween(of, towards);
}
