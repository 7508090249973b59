import {
  type Edit,
  heardAfter,
  receive,
  trapEffects,
  trapFor,
  trialsOf,
  twoCircuitsEdits,
  twoCircuitsFor,
  withValueAt,
  writeText,
} from '../../engine/index.ts';
import { clean } from '../../outputs/tables/index.ts';
import {
  type CommandOptions,
  cliNotes,
  jsonText,
  reworkAnswer,
  trapEffectWords,
  trapTexts,
  twoCircuitsTexts,
  twoCircuitsWords,
} from '../../outputs/words/index.ts';
import { fileAndOptions } from '../arguments.ts';
import { chooseStation } from '../choose-station.ts';
import { packagedCoastFor } from '../coast.ts';
import { type Command, InputError } from '../command.ts';
import { printChanges } from '../print-changes.ts';
import { readWrittenSet } from '../read-set.ts';
import { timeOfDay } from '../time-of-day.ts';

const OPTIONS = {
  stop: { type: 'string' },
  'two-circuits': { type: 'boolean' },
  station: { type: 'string' },
  day: { type: 'boolean' },
  night: { type: 'boolean' },
  out: { type: 'string' },
  json: { type: 'boolean' },
  switch: { type: 'string' },
} as const satisfies CommandOptions<'rework'>;

export const rework: Command = {
  name: 'rework',
  options: OPTIONS,
  examples: [
    'faintwave rework examples/medium-wave-galena.json --stop Saltmarsh --station Quayside',
    'faintwave rework examples/medium-wave-galena.json --two-circuits --station 1089 --out two.json',
  ],
  async run(args, io) {
    const { values, file } = fileAndOptions(args, OPTIONS);
    const { set, written } = await readWrittenSet(file, io, values.switch);
    const when = { time: timeOfDay(values, set.place), coast: packagedCoastFor(set.place) };
    const { stations } = set.place;
    if (values['two-circuits'] && values.stop !== undefined) throw new InputError(reworkAnswer.oneOnly);
    const stop = values.stop === undefined ? undefined : chooseStation(stations, values.stop, 0, '--stop');
    const { best } = receive(set, when);
    const station = chooseStation(stations, values.station, best.find((one) => one !== stop) ?? best[0]);
    const trials = trialsOf(set, when);
    const results: { sentences: string[]; changes: readonly Edit[] }[] = [];
    if (values['two-circuits']) {
      const facts = twoCircuitsFor(trials, station);
      results.push(
        facts
          ? {
              sentences: twoCircuitsWords(facts, heardAfter(trials, twoCircuitsEdits(set, facts))),
              changes: twoCircuitsEdits(written, facts),
            }
          : { sentences: [twoCircuitsTexts.none], changes: [] },
      );
    } else if (stop !== undefined) {
      const offer = trapFor(trials, { stop, target: station === stop ? undefined : station });
      results.push(
        offer
          ? {
              sentences: trapEffectWords(offer.effect, heardAfter(trials, offer.changes, stop)),
              changes: offer.changes,
            }
          : { sentences: [trapTexts.none], changes: [] },
      );
    } else
      results.push(
        ...trapEffects(trials, station).map((effect) => ({ sentences: trapEffectWords(effect), changes: [] })),
      );
    const sentences = results.flatMap((one) => one.sentences);
    const changes = results.flatMap((one) => one.changes).map(({ path, to }) => ({ path, value: to }));
    const description = changes.reduce<unknown>((base, { path, value }) => withValueAt(base, path, value), written);
    const { out } = values;
    const isNothing = out !== undefined && changes.length === 0;
    const status = isNothing ? 1 : 0;
    if (isNothing) io.err(`${reworkAnswer.notWritten(clean(out))}\n`);
    else if (out !== undefined) await io.write(out, writeText(description));
    if (values.json) {
      io.data(`${jsonText({ sentences, changes, description })}\n`);
      return status;
    }
    io.out(`${reworkAnswer.title(clean(set.name), clean(stations[station]?.name ?? ''))}\n\n`);
    for (const sentence of sentences.length > 0 ? sentences : [reworkAnswer.noTraps]) io.out(`• ${sentence}\n`);
    if (changes.length > 0) printChanges(changes, io);
    if (out !== undefined && !isNothing) io.out(`\n${cliNotes.written(out)}\n`);
    return status;
  },
};
