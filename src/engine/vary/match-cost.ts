import type { FieldOptions } from '../reception/path/field.ts';
import { receive } from '../reception/path/receive.ts';
import { isHeard, numeral, verdictOf } from '../reception/path/summary.ts';
import type { SetDescription } from '../set/description.ts';
import { formatNumber } from '../units/format.ts';
import type { Hertz } from '../units/quantities.ts';

/** What a set as a whole can do: how many stations come through on it, and from where to where its dial goes. */
export interface Coverage {
  readonly heard: number;
  readonly lowest: Hertz;
  readonly highest: Hertz;
}

/** @throws RangeError for a set that cannot be built. */
export function coverageOf(set: SetDescription, when: FieldOptions = {}): Coverage {
  const { stations, dial } = receive(set, when);
  return {
    heard: stations.filter((station) => isHeard(verdictOf(station))).length,
    lowest: dial.lowest,
    highest: dial.highest,
  };
}

/** An end of the dial moved by a smaller share than this is where it was. */
const MUCH = 0.05;

/** "But six stations become one, and the dial then covers 415 to 762 kHz." @returns undefined where little changes. */
export function costWords(before: Coverage, after: Coverage): string | undefined {
  const moved = (a: Hertz, b: Hertz): boolean => Math.abs(b / a - 1) > MUCH;
  const kHz = (f: Hertz): string => formatNumber(Math.round(f / 1e3), 5);
  const said = [
    ...(after.heard < before.heard ? [fewerWords(before.heard, after.heard)] : []),
    ...(moved(before.lowest, after.lowest) || moved(before.highest, after.highest)
      ? [
          `the dial then covers ${kHz(after.lowest)} to ${kHz(after.highest)} kHz instead of ${kHz(before.lowest)} to ${kHz(before.highest)} kHz`,
        ]
      : []),
  ];
  return said.length > 0 ? `But ${said.join(', and ')}.` : undefined;
}

const fewerWords = (before: number, after: number): string =>
  before === 1
    ? 'the one station is lost'
    : `${numeral(before)} stations become ${after === 0 ? 'none' : numeral(after)}`;
