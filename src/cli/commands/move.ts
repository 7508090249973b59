import {
  BANDS,
  type BandName,
  type Move,
  moveBand,
  SameBandError,
  withValueAt,
  writeText,
} from '../../engine/index.ts';
import { clean } from '../../outputs/tables/index.ts';
import { type CommandOptions, callProblems, cliNotes, moveAnswer, moveWords } from '../../outputs/words/index.ts';
import { fileAndOptions } from '../arguments.ts';
import { type Command, InputError } from '../command.ts';
import { printChanges } from '../print-changes.ts';
import { readWrittenSet } from '../read-set.ts';
import { wrongOption } from '../wrong-option.ts';

const NAMES = Object.keys(BANDS) as BandName[];
const spelt = (name: string): string => name.replace(' ', '-');

const OPTIONS = {
  to: { type: 'string' },
  out: { type: 'string' },
  json: { type: 'boolean' },
  switch: { type: 'string' },
} as const satisfies CommandOptions<'move'>;

export const move: Command = {
  name: 'move',
  options: OPTIONS,
  examples: [
    'faintwave move examples/long-wave-foil.json --to medium-wave',
    'faintwave move examples/long-wave-foil.json --to medium-wave --out moved.json',
  ],
  async run(args, io) {
    const { values, file } = fileAndOptions(args, OPTIONS);
    const to = NAMES.find((name) => name === values.to || spelt(name) === values.to);
    if (!to) throw wrongOption('--to', { code: 'one of', choices: NAMES.map(spelt) }, values.to);
    const { set, written } = await readWrittenSet(file, io, values.switch);
    let moved: Move;
    try {
      moved = moveBand(set, { to });
    } catch (refusal) {
      if (refusal instanceof SameBandError) throw new InputError(callProblems.onBandAlready(refusal.band));
      throw refusal;
    }
    const changes = [
      { path: ['name'], value: moveAnswer.name(String(written.name), to).slice(0, 120) },
      ...moved.changes.map(({ path, to: value }) => ({ path, value })),
    ];
    const sentences = moveWords(moved);
    const description = changes.reduce<unknown>((base, { path, value }) => withValueAt(base, path, value), written);
    if (values.out !== undefined) await io.write(values.out, writeText(description));
    if (values.json) {
      io.data(`${JSON.stringify({ sentences, changes, description }, null, 2)}\n`);
      return 0;
    }
    io.out(`${moveAnswer.title(clean(set.name), to)}\n\n`);
    for (const sentence of sentences) io.out(`• ${sentence}\n`);
    printChanges(changes.slice(1), io);
    if (values.out !== undefined) io.out(`\n${cliNotes.written(values.out)}\n`);
    return 0;
  },
};
