import { type ParseArgsConfig, parseArgs } from 'node:util';
import { InputError } from './command.ts';

type Options = NonNullable<ParseArgsConfig['options']>;
type Values<O extends Options> = ReturnType<typeof parseArgs<{ options: O; allowPositionals: true }>>['values'];

/**
 * A command's options, and the one file it works on.
 * @throws InputError for more than one file; parseArgs' own error for an option that is not there.
 */
export function fileAndOptions<const O extends Options>(
  args: readonly string[],
  options: O,
): { values: Values<O>; file?: string } {
  const { values, positionals } = parseArgs({ args: [...args], options, allowPositionals: true });
  const [file, ...more] = positionals;
  if (more.length > 0) {
    const all = positionals.map((one) => `"${one.slice(0, 60)}"`).join(', ');
    throw new InputError(`expected one file, received ${all}; what has spaces goes between quotes`);
  }
  return { values, file };
}
