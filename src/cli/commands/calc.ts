import { warningTexts } from '../../outputs/words/index.ts';
import { filesAndOptions } from '../arguments.ts';
import { CALCULATIONS } from '../calc/index.ts';
import { type Command, InputError } from '../command.ts';
import { dataOut, OUT_OPTION } from '../data-out.ts';

const MOST_ROWS = 100_000;

export const calc: Command = {
  name: 'calc',
  about: 'Reach the engine from scripts: one JSON object (or an array of them) in, one out.',
  usage: 'calc WHAT [FILE] [--out FILE]',
  options: [OUT_OPTION, ...CALCULATIONS.map((c) => [c.name, c.about] as const)],
  examples: [
    `echo '${JSON.stringify(CALCULATIONS.find((c) => c.name === 'wire')?.example ?? {})}' | faintwave calc wire`,
    'faintwave calc coil rows.json',
  ],
  async run(args, io) {
    const { values, positionals } = filesAndOptions(args, { out: { type: 'string' } });
    const [what, file = '-', ...rest] = positionals;
    const calculation = CALCULATIONS.find((c) => c.name === what);
    if (!calculation) throw new InputError(`name what to calculate: ${CALCULATIONS.map((c) => c.name).join(', ')}`);
    if (rest.length > 0) throw new InputError(`one file at a time; "${rest[0]}" is one too many`);
    const text = await io.read(file);
    let input: unknown;
    try {
      input = JSON.parse(text);
    } catch (error) {
      throw new InputError(`${file === '-' ? 'the input' : file} is not JSON: ${(error as Error).message}`);
    }
    const rows = Array.isArray(input) ? input : [input];
    if (rows.length > MOST_ROWS) throw new InputError(`at most ${MOST_ROWS} rows in one call`);
    const results = rows.map((row, i) => {
      if (rows.length > 1) io.progress('calculating', i / rows.length);
      return calculation.run(row);
    });
    const problems = results.flatMap((result, i) =>
      result.ok ? [] : result.problems.map((p) => `  ${Array.isArray(input) ? `[${i}].` : ''}${p.path}: ${p.message}`),
    );
    if (problems.length > 0)
      throw new InputError(
        `${problems.length === 1 ? 'a problem' : `${problems.length} problems`}:\n${problems.join('\n')}\nFor example: ${JSON.stringify(calculation.example)}`,
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
