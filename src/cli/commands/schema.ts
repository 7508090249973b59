import { publishedSchema } from '../../outputs/words/index.ts';
import { fileAndOptions } from '../arguments.ts';
import { type Command, InputError } from '../command.ts';
import { dataOut, OUT_OPTION } from '../data-out.ts';

export const schema: Command = {
  name: 'schema',
  about: 'Print the JSON Schema of a description file.',
  usage: 'schema [--out FILE]',
  options: [OUT_OPTION],
  examples: ['faintwave schema > faintwave-set-1.schema.json'],
  async run(args, io) {
    const { values, file } = fileAndOptions(args, { out: { type: 'string' } });
    if (file !== undefined)
      throw new InputError(`expected no file, got "${file.slice(0, 60)}"; --out names where it goes`);
    await dataOut(io, values.out, `${JSON.stringify(publishedSchema(), null, 2)}\n`);
    return 0;
  },
};
