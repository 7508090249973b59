import { type ParseArgsConfig, parseArgs } from 'node:util';
import { callProblems } from '../outputs/words/index.ts';
import { InputError } from './command.ts';
import { wrongOption } from './wrong-option.ts';

type Options = NonNullable<ParseArgsConfig['options']>;
type Values<O extends Options> = ReturnType<typeof parseArgs<{ options: O; allowPositionals: true }>>['values'];

/**
 * A command's options, and the one file it works on.
 * @throws InputError for more than one file, and for an option that is not there or has no value.
 */
export function fileAndOptions<const O extends Options>(
  args: readonly string[],
  options: O,
): { values: Values<O>; file?: string } {
  const { values, positionals } = filesAndOptions(args, options);
  const [file, ...more] = positionals;
  if (more.length > 0) throw new InputError(callProblems.oneFile(positionals));
  return { values, file };
}

/** A command's options, and any number of files. @throws InputError for an option that is not there or has no value. */
export function filesAndOptions<const O extends Options>(
  args: readonly string[],
  options: O,
): { values: Values<O>; positionals: string[] } {
  try {
    return parseArgs({ args: [...args], options, allowPositionals: true });
  } catch (error) {
    const { code, message } = error as { code?: string; message: string };
    // The library names the option between quotation marks, once with all its ways of writing.
    const option = /'(?:-\w, )?(-{1,2}[^' =]*)/.exec(message)?.[1] ?? callProblems.options;
    const known = Object.keys(options).map((name) => `--${name}`);
    if (code === 'ERR_PARSE_ARGS_UNKNOWN_OPTION')
      throw wrongOption(callProblems.options, { code: 'options', options: known }, option);
    if (code === 'ERR_PARSE_ARGS_INVALID_OPTION_VALUE') {
      const name = option.replace(/^--/, '');
      throw options[name]?.type === 'string'
        ? wrongOption(option, { code: 'a value' }, undefined, callProblems.beginsWithDash(option))
        : wrongOption(
            option,
            { code: 'no value' },
            args.find((one) => one.startsWith(`${option}=`))?.slice(option.length + 1),
          );
    }
    throw error;
  }
}
