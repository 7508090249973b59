import { jsonSchema } from '../../engine/set/json-schema.ts';
import type { Command } from '../command.ts';

export const schema: Command = {
  name: 'schema',
  about: 'Print the JSON Schema of a description file.',
  usage: 'schema',
  examples: ['faintwave schema > faintwave-set-1.schema.json'],
  async run(_args, io) {
    io.data(`${JSON.stringify(jsonSchema(), null, 2)}\n`);
    return 0;
  },
};
