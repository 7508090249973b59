import { compareDetectorsOn, type DetectorOnStation } from '../../engine/index.ts';
import { clean, compareTable } from '../../outputs/tables/index.ts';
import {
  type CommandOptions,
  compareAnswer,
  comparedDetector,
  detectionLawWords,
  detectorMeritSentence,
  jsonText,
  nameOfDetector,
} from '../../outputs/words/index.ts';
import { fileAndOptions } from '../arguments.ts';
import { chooseStation } from '../choose-station.ts';
import { packagedCoastFor } from '../coast.ts';
import type { Command } from '../command.ts';
import { readSet } from '../read-set.ts';

const OPTIONS = { station: { type: 'string' }, json: { type: 'boolean' } } as const satisfies CommandOptions<'compare'>;

/** A row with the name of its detector, for other programs. */
const withLabel = ({ description, ...rest }: DetectorOnStation) => ({
  description,
  label: nameOfDetector(description),
  ...rest,
});

export const compare: Command = {
  name: 'compare',
  options: OPTIONS,
  examples: ['faintwave compare examples/medium-wave-galena.json --station 909'],
  async run(args, io) {
    const { values, file } = fileAndOptions(args, OPTIONS);
    const set = await readSet(file, io);
    const index = chooseStation(set.place.stations, values.station);
    const rows = compareDetectorsOn(set, index, undefined, true, { coast: packagedCoastFor(set.place) });
    if (values.json) {
      io.data(`${jsonText(rows.map(withLabel))}\n`);
      return 0;
    }
    const station = set.place.stations[index];
    const title = compareAnswer.title({ ...station, name: clean(station.name) }, clean(set.name));
    io.out(`${title}\n\n${compareTable(rows, io.width)}\n\n${compareAnswer.merits}\n`);
    for (const row of rows)
      io.out(
        `  ${compareAnswer.merit(comparedDetector(row), detectorMeritSentence(row.merit), detectionLawWords(row))}\n`,
      );
    io.out(`\n${compareAnswer.explanation}\n`);
    return 0;
  },
};
