import { readCoordinate } from '../../units/coordinate.ts';
import { plainText } from '../../units/number.ts';
import type { Position } from '../geodesy.ts';

/** No position is longer. */
const LONGEST = 80;

/** Latitude and longitude in one cell: "52.5, -1.25", "52°30′N 1°15′W", "52.5N/1.25W". */
export function readPosition(text: string): Position | undefined {
  if (text.length > LONGEST) return undefined;
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
