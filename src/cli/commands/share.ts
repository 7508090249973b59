import { linkOf, textOfLink, withCoarsePosition } from '../../engine/index.ts';
import { type CommandOptions, jsonText, problemSentence, shareAnswer } from '../../outputs/words/index.ts';
import { fileAndOptions } from '../arguments.ts';
import { type Command, InputError } from '../command.ts';
import { dataOut } from '../data-out.ts';
import { readWrittenSet } from '../read-set.ts';

const OPTIONS = {
  page: { type: 'string' },
  'exact-position': { type: 'boolean' },
  json: { type: 'boolean' },
  out: { type: 'string' },
} as const satisfies CommandOptions<'share'>;

export const share: Command = {
  name: 'share',
  options: OPTIONS,
  examples: [
    'faintwave share examples/medium-wave-galena.json',
    'faintwave share examples/coast-by-night.json --page https://example.org/faintwave/',
  ],
  async run(args, io) {
    const { values, file } = fileAndOptions(args, OPTIONS);
    const { set, written } = await readWrittenSet(file, io);
    const exactPosition = values['exact-position'] === true;
    const fragment = linkOf(set, written, { exactPosition });
    const read = textOfLink(fragment);
    // Nobody could open it.
    if ('problem' in read) throw new InputError(problemSentence(read.problem));
    const link = `${(values.page ?? '').split('#', 1)[0]}#${fragment}`;
    const isCoarse = !exactPosition && withCoarsePosition(set, written) !== written;
    if (values.json) await dataOut(io, values.out, `${jsonText({ link, exactPosition, positionRounded: isCoarse })}\n`);
    else await dataOut(io, values.out, `${link}\n`);
    if (isCoarse && !values.json) io.err(`${shareAnswer.coarse}\n`);
    return 0;
  },
};
