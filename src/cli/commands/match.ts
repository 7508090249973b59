import { formatNumber, matching, receive, trialsOf, wholeNumber } from '../../engine/index.ts';
import { clean } from '../../outputs/tables/index.ts';
import { coverageWords, jsonText, MATCHED_NAMES, matchWords } from '../../outputs/words/index.ts';
import { fileAndOptions } from '../arguments.ts';
import { chooseStation } from '../choose-station.ts';
import { coastFor } from '../coast.ts';
import type { Command } from '../command.ts';
import { dataOut, OUT_OPTION } from '../data-out.ts';
import { readSet } from '../read-set.ts';
import { timeHelp, timeOfDay } from '../time-of-day.ts';
import { wrongOption } from '../wrong-option.ts';

/** "12,18" as numbers above 0. */
function numbers(text: string | undefined, option: string): number[] {
  if (text === undefined) return [];
  const list = text.split(/[,;\s]+/).filter(Boolean);
  const values = list.map((one) => wholeNumber(one) ?? Number.NaN);
  if (list.length === 0 || !values.every((value) => value > 0 && value < 1e4))
    throw wrongOption(option, 'numbers above 0 and below 10000, such as 12,18', text);
  return values;
}

export const match: Command = {
  name: 'match',
  about: 'The best taps, distance of the coils and transformer for a station, and what those at hand lose.',
  usage: 'match SET [--station NAME|kHz] [--taps 12,18] [--ratios 8,16] [--day | --night] [--json] [--out FILE]',
  options: [
    ['--station NAME', 'by part of its name or its frequency in kHz; default the one heard best'],
    ['--taps N,N', 'taps that are on the coil already, in turns from the earthed end'],
    ['--ratios N,N', 'turns ratios of transformers in the box, to one'],
    ...timeHelp(),
    ['--json', 'as data'],
    OUT_OPTION,
  ],
  examples: [
    'faintwave match examples/medium-wave-galena.json --taps 8,16,24',
    'faintwave match examples/two-tuned-circuits.json --station 603',
  ],
  async run(args, io) {
    const { values, file } = fileAndOptions(args, {
      station: { type: 'string' },
      taps: { type: 'string' },
      ratios: { type: 'string' },
      day: { type: 'boolean' },
      night: { type: 'boolean' },
      json: { type: 'boolean' },
      out: { type: 'string' },
    });
    const set = await readSet(file, io);
    const when = { time: timeOfDay(values, set.place), coast: coastFor(set.place) };
    const taps = numbers(values.taps, '--taps');
    const ratios = numbers(values.ratios, '--ratios');
    const reception = receive(set, when);
    const index = chooseStation(set.place.stations, values.station, reception.best[0]);
    const found = matching(trialsOf(set, when), index, { taps, ratios, withCoverage: true });
    if (values.json || values.out !== undefined) {
      const answer = found.map((one) => ({ ...one, sentence: matchWords(one) }));
      await dataOut(
        io,
        values.out,
        `${jsonText(answer)}
`,
      );
      return 0;
    }
    const station = set.place.stations[index];
    io.out(`${clean(station.name)}, ${formatNumber(station.frequency / 1e3, 5)} kHz, on ${clean(set.name)}\n\n`);
    for (const one of found)
      io.out(`${MATCHED_NAMES[one.what]}: ${[matchWords(one), coverageWords(one)].filter(Boolean).join(' ')}\n`);
    if (found.length === 0)
      io.out(
        'There is nothing to match: no tap, no coupled coils, no transformer, or the station is out of range of the dial.\n',
      );
    io.out(
      '\nOptimised separately, retuned each time. Best is the loudest at which the station stays clear of others; for a station that others disturb it is the clearest.\n',
    );
    return 0;
  },
};
