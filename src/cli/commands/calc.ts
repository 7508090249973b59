import { type CommandOptions, callProblems, warningTexts } from '../../outputs/words/index.ts';
import { filesAndOptions } from '../arguments.ts';
import { CALCULATIONS } from '../calc/index.ts';
import { type Command, InputError, type Io } from '../command.ts';
import { dataOut } from '../data-out.ts';
import { fitReadings } from '../readings-file.ts';

const MOST_ROWS = 100_000;

const OPTIONS = { out: { type: 'string' } } as const satisfies CommandOptions<'calc'>;

async function jsonOf(file: string, io: Io): Promise<unknown> {
  const text = await io.read(file);
  try {
    return JSON.parse(text);
  } catch (error) {
    throw new InputError(callProblems.notJson(file === '-' ? undefined : file, (error as Error).message));
  }
}

export const calc: Command = {
  name: 'calc',
  options: OPTIONS,
  examples: [
    `echo '${JSON.stringify(CALCULATIONS.find((c) => c.name === 'wire')?.example ?? {})}' | faintwave calc wire`,
    'faintwave calc coil rows.json',
  ],
  async run(args, io) {
    const { values, positionals } = filesAndOptions(args, OPTIONS);
    const [what, file = '-', ...rest] = positionals;
    const calculation = CALCULATIONS.find((c) => c.name === what);
    if (!calculation) throw new InputError(callProblems.nameCalculation(CALCULATIONS.map((c) => c.name)));
    if (rest.length > 0) throw new InputError(callProblems.oneInput(rest[0]));
    const input = (calculation.name === 'fit' ? await fitReadings(file, io) : undefined) ?? (await jsonOf(file, io));
    const rows = Array.isArray(input) ? input : [input];
    if (rows.length > MOST_ROWS) throw new InputError(callProblems.rowsAtMost(MOST_ROWS));
    const results = rows.map((row, i) => {
      if (rows.length > 1) io.progress('calculation', i / rows.length);
      return calculation.run(row);
    });
    const problems = results.flatMap((result, i) =>
      result.ok ? [] : result.problems.map((p) => `  ${Array.isArray(input) ? `[${i}].` : ''}${p.path}: ${p.message}`),
    );
    if (problems.length > 0)
      throw new InputError(
        [
          callProblems.inInput(problems.length),
          ...problems,
          callProblems.inputExample(JSON.stringify(calculation.example)),
        ].join('\n'),
      );
    const answers = results.map((result) => (result.ok ? result.answer : null));
    await dataOut(
      io,
      values.out,
      `${JSON.stringify(
        Array.isArray(input) ? answers : answers[0],
        (key, value) =>
          typeof value === 'number' && !Number.isFinite(value)
            ? String(value)
            : key === 'warnings' && Array.isArray(value)
              ? warningTexts(value)
              : value,
        2,
      )}\n`,
    );
    return 0;
  },
};
