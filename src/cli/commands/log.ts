import {
  type Light,
  type LogAgainstPrediction,
  type PlacedEntry,
  receiveOnBestBands,
  receiveRanged,
  type SetDescription,
} from '../../engine/index.ts';
import { clean, logTable } from '../../outputs/tables/index.ts';
import {
  type CommandOptions,
  callProblems,
  jsonText,
  logAnswer,
  logProblemText,
  logSurprises,
} from '../../outputs/words/index.ts';
import { filesAndOptions } from '../arguments.ts';
import { packagedCoastFor } from '../coast.ts';
import { type Command, InputError, type Io } from '../command.ts';
import { dataOut } from '../data-out.ts';
import { logAgainst } from '../log-file.ts';
import { readSet } from '../read-set.ts';

const OPTIONS = {
  json: { type: 'boolean' },
  out: { type: 'string' },
  switch: { type: 'string' },
} as const satisfies CommandOptions<'log'>;

export const log: Command = {
  name: 'log',
  options: OPTIONS,
  examples: ['faintwave log examples/medium-wave-galena.json examples/logs/first-evenings.csv'],
  async run(args, io) {
    const { values, positionals } = filesAndOptions(args, OPTIONS);
    if (positionals.length !== 2) throw new InputError(callProblems.setAndLog);
    const [file, logFile] = positionals;
    const set = await readSet(file, io, values.switch, { isOnAnyBand: true });
    const options = { coast: packagedCoastFor(set.place) };
    const receiveAt = values.switch === undefined ? receiveOnBestBands : receiveRanged;
    const at = (time: Light) => receiveAt(set, { ...options, time });
    const { answer, problems, isEmpty } = logAgainst(set, await io.read(logFile), at, io);
    if (values.json || values.out !== undefined) {
      const data = {
        stations: answer.stations,
        entries: answer.entries.map((one) => entryData(one, set)),
        problems: problems.map((problem) => ({ ...problem, message: logProblemText(problem) })),
      };
      await dataOut(io, values.out, `${jsonText(data)}\n`);
    } else if (isEmpty) io.out(`${logAnswer.none}\n`);
    else printLog(set, answer, io);
    return isEmpty ? 1 : 0;
  },
};

function printLog(set: SetDescription, { stations, entries, days }: LogAgainstPrediction, io: Io): void {
  const named = stations.map((station) => ({ ...station, name: clean(station.name) }));
  io.out(`${logAnswer.title(clean(set.name), clean(set.place.name))}\n\n`);
  io.out(`${logTable(named, io.width)}\n\n${logAnswer.read(entries.length, days)}\n`);
  for (const station of named) for (const surprise of logSurprises(station)) io.out(`? ${surprise}\n`);
}

/** An entry with the station that it is taken for, by its name in the list of the place. */
const entryData = (
  { entry: { cells: _written, ...entry }, light, station }: PlacedEntry,
  { place }: SetDescription,
) => ({
  ...entry,
  light,
  takenFor: station === undefined ? undefined : place.stations[station].name,
});
