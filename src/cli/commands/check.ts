import type { Problem } from '../../engine/index.ts';
import { clean } from '../../outputs/tables/index.ts';
import {
  type CommandOptions,
  callProblems,
  checkAnswer,
  cliNotes,
  problemSentence,
  problemText,
  readNote,
} from '../../outputs/words/index.ts';
import { filesAndOptions } from '../arguments.ts';
import { type Command, InputError } from '../command.ts';
import { readSource, shownSource, sourceText } from '../read-set.ts';

const OPTIONS = { json: { type: 'boolean' } } as const satisfies CommandOptions<'check'>;

/** A problem as data: its facts, and what is said of it. */
const problemData = (problem: Problem) => ({
  ...problemText(problem),
  code: problem.expected.code,
  more: problem.more,
});

export const check: Command = {
  name: 'check',
  options: OPTIONS,
  examples: ['faintwave check examples/*.json', 'faintwave check my-set.json --json'],
  async run(args, io) {
    const { values, positionals } = filesAndOptions(args, OPTIONS);
    if (positionals.length === 0) throw new InputError(callProblems.nameSets);
    let bad = 0;
    const report = [];
    for (const given of positionals) {
      const result = readSource(await sourceText(given, io));
      const file = shownSource(given);
      if (!result.ok) bad++;
      report.push({
        file,
        ok: result.ok,
        problems: result.ok ? [] : result.problems.map(problemData),
        notes: result.ok ? result.notes.map(readNote) : [],
      });
      if (values.json) continue;
      if (result.ok) {
        io.out(`${checkAnswer.fine(file, clean(result.set.name))}\n`);
        for (const note of result.notes) io.out(`  ${cliNotes.note(readNote(note))}\n`);
      } else {
        io.err(`${file}:\n${result.problems.map((p) => `  ${problemSentence(p)}\n`).join('')}`);
      }
    }
    if (values.json) io.data(`${JSON.stringify(report, null, 2)}\n`);
    return bad > 0 ? 2 : 0;
  },
};
