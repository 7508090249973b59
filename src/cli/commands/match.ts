import { matching, receive, trialsOf, wholeNumber } from '../../engine/index.ts';
import { clean } from '../../outputs/tables/index.ts';
import {
  type CommandOptions,
  coverageWords,
  jsonText,
  MATCHED_NAMES,
  matchAnswer,
  matchWords,
} from '../../outputs/words/index.ts';
import { fileAndOptions } from '../arguments.ts';
import { chooseStation } from '../choose-station.ts';
import { packagedCoastFor } from '../coast.ts';
import type { Command } from '../command.ts';
import { dataOut } from '../data-out.ts';
import { readSet } from '../read-set.ts';
import { timeOfDay } from '../time-of-day.ts';
import { wrongOption } from '../wrong-option.ts';

/** "12,18" as numbers above 0. */
function numbers(text: string | undefined, option: string): number[] {
  if (text === undefined) return [];
  const list = text.split(/[,;\s]+/).filter(Boolean);
  const values = list.map((one) => wholeNumber(one) ?? Number.NaN);
  if (list.length === 0 || !values.every((value) => value > 0 && value < 1e4))
    throw wrongOption(option, { code: 'positive numbers' }, text);
  return values;
}

const OPTIONS = {
  station: { type: 'string' },
  taps: { type: 'string' },
  ratios: { type: 'string' },
  day: { type: 'boolean' },
  night: { type: 'boolean' },
  json: { type: 'boolean' },
  out: { type: 'string' },
  switch: { type: 'string' },
} as const satisfies CommandOptions<'match'>;

export const match: Command = {
  name: 'match',
  options: OPTIONS,
  examples: [
    'faintwave match examples/medium-wave-galena.json --taps 8,16,24',
    'faintwave match examples/two-tuned-circuits.json --station 603',
  ],
  async run(args, io) {
    const { values, file } = fileAndOptions(args, OPTIONS);
    const set = await readSet(file, io, values.switch);
    const when = { time: timeOfDay(values, set.place), coast: packagedCoastFor(set.place) };
    const taps = numbers(values.taps, '--taps');
    const ratios = numbers(values.ratios, '--ratios');
    const reception = receive(set, when);
    const index = chooseStation(set.place.stations, values.station, reception.best[0]);
    const matches = matching(trialsOf(set, when), index, { taps, ratios, withCoverage: true });
    if (values.json || values.out !== undefined) {
      const answer = matches.map((one) => ({ ...one, sentence: matchWords(one) }));
      await dataOut(
        io,
        values.out,
        `${jsonText(answer)}
`,
      );
      return 0;
    }
    const station = set.place.stations[index];
    io.out(`${matchAnswer.title({ ...station, name: clean(station.name) }, clean(set.name))}\n\n`);
    for (const one of matches) {
      io.out(`${MATCHED_NAMES[one.what]}: ${matchWords(one)}\n`);
      const coverage = coverageWords(one);
      if (coverage) io.out(`  ${coverage}\n`);
    }
    if (matches.length === 0) io.out(`${matchAnswer.nothing}\n`);
    io.out(`\n${matchAnswer.explanation}\n`);
    return 0;
  },
};
