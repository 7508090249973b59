import {
  compareDetectorsOn,
  type DetectorOnStation,
  type FieldOptions,
  receiveBands,
  type SetDescription,
  turnSwitch,
} from '../../engine/index.ts';
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
import { filesAndOptions } from '../arguments.ts';
import { chooseStation } from '../choose-station.ts';
import { packagedCoastFor } from '../coast.ts';
import { type Command, InputError } from '../command.ts';
import { compareWholeSets } from '../compare-several.ts';
import { dataOut } from '../data-out.ts';
import { readSet } from '../read-set.ts';
import { timeOfDay } from '../time-of-day.ts';

const OPTIONS = {
  station: { type: 'string' },
  day: { type: 'boolean' },
  night: { type: 'boolean' },
  json: { type: 'boolean' },
  out: { type: 'string' },
  sheet: { type: 'string' },
  paper: { type: 'string' },
  switch: { type: 'string' },
} as const satisfies CommandOptions<'compare'>;

/** A row with the name of its detector, for other programs. */
const withLabel = ({ description, ...rest }: DetectorOnStation) => ({
  description,
  label: nameOfDetector(description),
  ...rest,
});

/** The set on the band that is best on a station, or on the station received best of all. */
function onBestBand(set: SetDescription, station: string | undefined, when: FieldOptions): SetDescription {
  if (!set.bands) return set;
  const { best, bestOf } = receiveBands(set, when);
  const band = bestOf[chooseStation(set.place.stations, station, best[0])];
  return band === undefined ? set : turnSwitch(set, band);
}

export const compare: Command = {
  name: 'compare',
  options: OPTIONS,
  examples: [
    'faintwave compare examples/medium-wave-galena.json --station 909',
    'faintwave compare examples/medium-wave-galena.json examples/two-tuned-circuits.json',
    'faintwave compare examples/medium-wave-galena.json examples/slider-set.json --sheet both.pdf',
  ],
  async run(args, io) {
    const { values, positionals } = filesAndOptions(args, OPTIONS);
    const isSeveral = positionals.length > 1;
    const set = await readSet(positionals[0], io, values.switch, { isOnAnyBand: isSeveral });
    const when = { time: timeOfDay(values, set.place), coast: packagedCoastFor(set.place) };
    if (isSeveral) {
      const others: SetDescription[] = [];
      for (const file of positionals.slice(1)) others.push(await readSet(file, io, undefined, { isOnAnyBand: true }));
      const first = values.switch === undefined ? onBestBand(set, values.station, when) : set;
      return compareWholeSets([first, ...others], { ...values, when }, io);
    }
    for (const option of ['sheet', 'paper'] as const)
      if (values[option] !== undefined) throw new InputError(compareAnswer.severalOnly(`--${option}`));
    const index = chooseStation(set.place.stations, values.station);
    const rows = compareDetectorsOn(set, index, undefined, true, when);
    if (values.json || values.out !== undefined) {
      await dataOut(io, values.out, `${jsonText(rows.map(withLabel))}\n`);
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
