import { availableParallelism } from 'node:os';
import {
  type FindAnswer,
  type FindQuestion,
  findSets,
  findWorker,
  lacksOf,
  readBox,
  usesOf,
  withKept,
  writeText,
} from '../../engine/index.ts';
import { clean } from '../../outputs/tables/index.ts';
import {
  type CommandOptions,
  callProblems,
  cliNotes,
  findAnswer,
  foundChance,
  foundNames,
  foundUse,
  lackText,
  problemSentence,
  readNote,
  wantName,
  wantState,
  whyFound,
  whyLeftOut,
} from '../../outputs/words/index.ts';
import { fileAndOptions } from '../arguments.ts';
import { packagedCoastFor } from '../coast.ts';
import { type Command, InputError, type Io } from '../command.ts';
import { findThreads } from '../find-threads.ts';
import { readPlace } from '../read-place.ts';
import { timeOfDay } from '../time-of-day.ts';
import { wrongOption } from '../wrong-option.ts';

const OPTIONS = {
  at: { type: 'string' },
  want: { type: 'string', multiple: true },
  keep: { type: 'string', multiple: true },
  out: { type: 'string' },
  threads: { type: 'string' },
  day: { type: 'boolean' },
  night: { type: 'boolean' },
  json: { type: 'boolean' },
} as const satisfies CommandOptions<'find'>;

const MOST_THREADS = 64;

export const find: Command = {
  name: 'find',
  options: OPTIONS,
  examples: [
    'faintwave find examples/boxes/beginner.json --at examples/medium-wave-galena.json --want "loudest Saltmarsh Radio"',
    'faintwave find examples/boxes/long-wave.json --at examples/long-wave-foil.json --want "most stations" --out found',
  ],
  async run(args, io) {
    const { values, file } = fileAndOptions(args, OPTIONS);
    if (file === undefined) throw new InputError(callProblems.nameBox);
    if (values.at === undefined) throw wrongOption('--at', { code: 'place or set' }, undefined);
    const threads = threadsFrom(values.threads);
    const both = await readBoxFile(file, io);
    const at = await readPlace(values.at, io, {
      want: values.want,
      keep: values.keep,
      box: both.written,
      boxFile: file,
    });
    const kept = at.set ? withKept(both, at.set, at.keep) : both;
    const question: FindQuestion = { ...kept, at: at.written, read: at.read };
    const time = timeOfDay(values, at.read.place);
    const lacks = lacksOf(kept.box, at.read);
    if (lacks.length > 0) {
      if (values.json)
        io.data(
          `${JSON.stringify({ sets: [], lacks: lacks.map((code) => ({ code, text: lackText(code) })) }, null, 2)}\n`,
        );
      else io.out(`${findAnswer.nothing}\n${lacks.map((code) => `  ${lackText(code)}\n`).join('')}`);
      return 1;
    }
    const when = { time, coast: packagedCoastFor(at.read.place) };
    const pool = findThreads({ question, time }, threads);
    try {
      const answer = await findSets(question, {
        work: pool?.work ?? findWorker(question, when),
        threads: pool ? threads : 1,
        progress: ({ share }) => io.progress('search', share),
      });
      await printAnswer(question, answer, values, io);
      return answer.sets.length > 0 ? 0 : 1;
    } finally {
      await pool?.end();
    }
  },
};

async function printAnswer(
  question: FindQuestion,
  answer: FindAnswer,
  { out, json }: { readonly out?: string; readonly json?: boolean },
  io: Io,
): Promise<void> {
  const { box, read } = question;
  const names = foundNames(box, answer.sets);
  const described = answer.sets.map((set, i) => set.describe(names[i]));
  const files =
    out === undefined
      ? []
      : await io.writeInto(
          out,
          described.map((set, i) => ({ name: `found-${i + 1}.json`, data: writeText(set) })),
        );
  if (json) {
    const sets = answer.sets.map((set, i) => ({
      name: names[i],
      why: whyFound(set, read.wants),
      wants: set.figures.map((figure) => ({ ...figure, want: figure.want, text: wantName(figure.want) })),
      parts: set.parts,
      effort: set.effort,
      chances: set.chances.map((one) => ({ ...one, name: read.place.stations[one.station].name })),
      takes: usesOf(box, set.choice),
      description: described[i],
    }));
    const leftOut = answer.leftOut.map((one) => ({ of: one.of, behind: one.behind, text: whyLeftOut(box, one) }));
    io.data(`${JSON.stringify({ sets, leftOut, counts: answer.counts, files }, null, 2)}\n`);
    return;
  }
  io.out(`${findAnswer.title(clean(box.name), clean(read.place.name))}\n${findAnswer.counts(answer.counts)}\n`);
  if (answer.sets.length === 0) io.out(`${findAnswer.noneInRange}\n`);
  for (const [i, set] of answer.sets.entries()) {
    io.out(`\n${i + 1}. ${clean(names[i])}\n   ${clean(whyFound(set, read.wants))}\n`);
    for (const figure of set.figures) io.out(`   ${clean(wantName(figure.want))}: ${wantState(figure)}\n`);
    for (const chance of set.chances)
      io.out(`   ${foundChance(chance, clean(read.place.stations[chance.station].name))}\n`);
    io.out(`   ${findAnswer.parts(set.parts, set.effort)}\n`);
    io.out(`   ${findAnswer.takes(usesOf(box, set.choice).map((use) => foundUse(box, use)))}\n`);
  }
  if (answer.leftOut.length > 0) io.out('\n');
  for (const one of answer.leftOut) io.out(`${clean(whyLeftOut(box, one))}\n`);
  for (const path of files) io.out(`${cliNotes.written(path)}\n`);
}

function threadsFrom(text: string | undefined): number {
  if (text === undefined) return Math.min(MOST_THREADS, availableParallelism());
  const threads = Number(text);
  if (!(Number.isInteger(threads) && threads >= 1 && threads <= MOST_THREADS))
    throw wrongOption('--threads', { code: 'number.range', min: 1, max: MOST_THREADS }, text);
  return threads;
}

async function readBoxFile(file: string, io: Io) {
  const result = readBox(await io.read(file));
  if (!result.ok)
    throw new InputError(
      `${callProblems.inFile(file, result.problems.length)}\n${result.problems.map((p) => `  ${problemSentence(p)}`).join('\n')}`,
    );
  for (const note of result.notes) io.err(`${cliNotes.note(readNote(note))}\n`);
  return result;
}
