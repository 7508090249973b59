import {
  type CommandOptions,
  callProblems,
  publishedBoxSchemaText,
  publishedSchemaText,
} from '../../outputs/words/index.ts';
import { fileAndOptions } from '../arguments.ts';
import { type Command, InputError } from '../command.ts';
import { dataOut } from '../data-out.ts';

const OPTIONS = { box: { type: 'boolean' }, out: { type: 'string' } } as const satisfies CommandOptions<'schema'>;

export const schema: Command = {
  name: 'schema',
  options: OPTIONS,
  examples: ['faintwave schema > faintwave-set-1.schema.json', 'faintwave schema --box > faintwave-box-1.schema.json'],
  async run(args, io) {
    const { values, file } = fileAndOptions(args, OPTIONS);
    if (file !== undefined) throw new InputError(callProblems.noFile(file));
    await dataOut(io, values.out, values.box ? publishedBoxSchemaText() : publishedSchemaText());
    return 0;
  },
};
