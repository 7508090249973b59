import { receiveRanged } from '../../engine/index.ts';
import { clean, dialStationsTable, dialTable } from '../../outputs/tables/index.ts';
import {
  type CommandOptions,
  coverageSentences,
  dialTableWords,
  jsonText,
  outOfRangeWords,
  warningSentences,
  writtenDial,
} from '../../outputs/words/index.ts';
import { fileAndOptions } from '../arguments.ts';
import { packagedCoastFor } from '../coast.ts';
import type { Command } from '../command.ts';
import { readSet } from '../read-set.ts';
import { timeOfDay } from '../time-of-day.ts';

const OPTIONS = {
  json: { type: 'boolean' },
  day: { type: 'boolean' },
  night: { type: 'boolean' },
  switch: { type: 'string' },
} as const satisfies CommandOptions<'dial'>;

export const dial: Command = {
  name: 'dial',
  options: OPTIONS,
  examples: ['faintwave dial examples/medium-wave-galena.json'],
  async run(args, io) {
    const { values, file } = fileAndOptions(args, OPTIONS);
    const set = await readSet(file, io, values.switch);
    const when = { time: timeOfDay(values, set.place), coast: packagedCoastFor(set.place) };
    const reception = receiveRanged(set, when);
    if (values.json) {
      io.data(`${jsonText(writtenDial(reception))}\n`);
      return 0;
    }
    io.out(
      `${clean(set.name)}\n\n${coverageSentences(reception.dial, reception.stations).join('\n')}\n\n${dialTable(reception.dial, io.width)}\n${dialTableWords.note}\n\n${dialStationsTable(reception, io.width)}\n`,
    );
    for (const s of reception.stations)
      if (s.outOfRange) io.out(`${clean(s.name)}: ${outOfRangeWords(s.outOfRange)}\n`);
    for (const warning of warningSentences(reception.dial.warnings)) io.out(`⚠ ${warning}\n`);
    return 0;
  },
};
