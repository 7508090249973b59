import { linkOf, textOfLink, withCoarsePosition } from '../../engine/index.ts';
import { type CommandOptions, jsonText, problemSentence, shareAnswer } from '../../outputs/words/index.ts';
import { fileAndOptions } from '../arguments.ts';
import { packagedCoastFor } from '../coast.ts';
import { type Command, InputError } from '../command.ts';
import { dataOut } from '../data-out.ts';
import { readWrittenSet } from '../read-set.ts';
import { writeUpSet } from '../share-write-up.ts';
import { timeOfDay } from '../time-of-day.ts';

const OPTIONS = {
  html: { type: 'string' },
  markdown: { type: 'string' },
  photo: { type: 'string', multiple: true },
  log: { type: 'string' },
  day: { type: 'boolean' },
  night: { type: 'boolean' },
  page: { type: 'string' },
  'exact-position': { type: 'boolean' },
  json: { type: 'boolean' },
  out: { type: 'string' },
  switch: { type: 'string' },
} as const satisfies CommandOptions<'share'>;

const WRITE_UP_ONLY = ['photo', 'log', 'day', 'night'] as const;
const LINK_ONLY = ['page', 'json', 'out'] as const;

export const share: Command = {
  name: 'share',
  options: OPTIONS,
  examples: [
    'faintwave share examples/medium-wave-galena.json',
    'faintwave share examples/coast-by-night.json --page https://example.org/faintwave/',
    'faintwave share examples/medium-wave-galena.json --html my-set.html --log examples/logs/first-evenings.csv',
  ],
  async run(args, io) {
    const { values, file } = fileAndOptions(args, OPTIONS);
    const { set, written } = await readWrittenSet(file, io, values.switch);
    const exactPosition = values['exact-position'] === true;
    const isWriteUp = values.html !== undefined || values.markdown !== undefined;
    for (const option of isWriteUp ? LINK_ONLY : WRITE_UP_ONLY)
      if (values[option] !== undefined)
        throw new InputError(shareAnswer[isWriteUp ? 'linkOnly' : 'writeUpOnly'](`--${option}`));
    if (isWriteUp) {
      const when = { time: timeOfDay(values, set.place), coast: packagedCoastFor(set.place) };
      await writeUpSet(set, written, { ...values, exactPosition, when }, io);
      return 0;
    }
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
