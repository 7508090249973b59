import { type Hertz, leadingNumber } from '../engine/index.ts';
import { callProblems, hintText } from '../outputs/words/index.ts';
import { InputError } from './command.ts';
import { wrongOption } from './wrong-option.ts';

/** So many stations are named where none fits. */
const MOST_NAMED = 20;

/** "909" or "909 kHz" as a number; undefined for what is a name. @throws InputError for a number that is not clear. */
export function kilohertzOf(text: string, option = '--station'): number | undefined {
  const written = text.replace(/\s*kHz\s*$/i, '');
  const read = leadingNumber(written);
  if (read.ok) return read.rest === '' ? read.value : undefined;
  if (read.hint !== undefined && !/\p{L}/u.test(written)) throw new InputError(`${option}: ${hintText(read.hint)}`);
  return undefined;
}

/** A station by its frequency in kHz, its name or part of it; a whole name goes before a part of another. @returns its index. @throws InputError naming those there are. */
export function chooseStation(
  stations: readonly { readonly name: string; readonly frequency: Hertz }[],
  text: string | undefined,
  fallback = 0,
  option = '--station',
): number {
  if (stations.length === 0) throw new InputError(callProblems.noStations);
  if (text === undefined) return fallback;
  const kilohertz = kilohertzOf(text, option);
  const name = text.trim().toLowerCase();
  const whole = stations.findIndex((s) => s.name.trim().toLowerCase() === name);
  const index =
    kilohertz !== undefined
      ? stations.findIndex((s) => Math.abs(s.frequency / 1e3 - kilohertz) < 0.6)
      : whole >= 0
        ? whole
        : stations.findIndex((s) => s.name.toLowerCase().includes(name));
  if (index < 0) {
    const more = Math.max(0, stations.length - MOST_NAMED);
    throw wrongOption(option, { code: 'station', stations: stations.slice(0, MOST_NAMED), more }, text);
  }
  return index;
}
