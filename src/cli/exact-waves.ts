import {
  nodeWaves,
  type Reception,
  type SetDescription,
  setCircuit,
  type WavePlace,
  wavePlaces,
} from '../engine/index.ts';
import { stationOf } from '../outputs/explain/index.ts';
import { nodeWaveScene, nodeWavesCsv, shownWaves, viewWithin } from '../outputs/explain/node-waves/index.ts';
import { clean } from '../outputs/tables/index.ts';
import {
  callProblems,
  cliNotes,
  nodeWaveTexts,
  warningSentences,
  waveAnswer,
  wavePointInSentence,
} from '../outputs/words/index.ts';
import { packagedCoastFor } from './coast.ts';
import { type Command, InputError } from './command.ts';
import { endingOf } from './ending.ts';
import { quantityOf, sizeFrom } from './option-values.ts';
import { timeOfDay } from './time-of-day.ts';
import { pngWidth, writePicture } from './write-picture.ts';
import { wrongOption } from './wrong-option.ts';

export interface ExactOptions {
  readonly point?: readonly string[];
  readonly from?: string;
  readonly for?: string;
  readonly tone?: string;
  readonly depth?: string;
  readonly detector?: string;
  readonly capacitor?: string;
  readonly alone?: boolean;
  readonly day?: boolean;
  readonly night?: boolean;
  readonly average?: boolean;
  readonly cover?: boolean;
  readonly envelope?: boolean;
  readonly spectrum?: boolean;
  readonly 'coming-on'?: boolean;
  readonly size?: string;
  readonly width?: string;
  readonly print?: boolean;
  readonly out?: string;
}

/** Options of the drawn waves that the worked-out ones have no use for. */
const NOT_HERE = ['detector', 'capacitor', 'average', 'cover', 'envelope', 'spectrum'] as const;

/** `wave --exact`: true waves at any points of the set. */
export async function exactWaves(
  set: SetDescription,
  reception: Reception,
  index: number | undefined,
  values: ExactOptions,
  io: Parameters<Command['run']>[1],
): Promise<number> {
  const other = NOT_HERE.find((name) => values[name] !== undefined);
  if (other) throw new InputError(callProblems.notWithExact(`--${other}`));
  const station = stationOf(reception, index);
  if (!station) throw new InputError(callProblems.noWave);
  const all = wavePlaces(setCircuit(set));
  const places = values.point === undefined ? undefined : placesFrom(values.point, all);
  const from = quantityOf(values.from ?? '0 s', 'time', '--from', 0, 50e-3);
  const span = quantityOf(values.for ?? '2 ms', 'time', '--for', 50e-9, 50e-3);
  const run = nodeWaves(set, {
    station: station.index,
    places,
    neighbours: !values.alone,
    begin: values['coming-on'] ? 'coming on' : 'settled',
    // A whole period of the lowest tone at least, for the reading.
    duration: Math.min(60e-3, Math.max(from + span, 5e-3)),
    tone: values.tone === undefined ? undefined : quantityOf(values.tone, 'frequency', '--tone', 200, 10e3),
    depth: values.depth === undefined ? undefined : quantityOf(values.depth, 'ratio', '--depth', 0, 2),
    time: timeOfDay(values, set.place),
    coast: packagedCoastFor(set.place),
  });
  const waves = shownWaves(run);
  const view = viewWithin({ from, span }, waves);
  for (const warning of warningSentences(waves.warnings)) io.err(`${cliNotes.note(warning)}\n`);
  const heading = waveAnswer.title({ ...station, name: clean(station.name) }, clean(set.name));
  const { out } = values;
  if (out === undefined) {
    const rest = all.filter((p) => !waves.waves.some((w) => w.id === p.id));
    io.out(
      `${clean(nodeWaveTexts.run(waves))}\n\n${waves.waves.map((w) => clean(nodeWaveTexts.reading(w))).join('\n')}\n\n${clean(waveAnswer.otherPoints(rest.map(titleOf)))}\n${waveAnswer.toFiles}\n`,
    );
    return 0;
  }
  const ending = endingOf(out, ['svg', 'png', 'csv']);
  if (ending === 'csv') await io.write(out, nodeWavesCsv(waves, view));
  else {
    const size = sizeFrom(values.size, waves.waves.length);
    const [width, height] = size;
    const wide = pngWidth(values.width, size, ending);
    const letters = Math.max(10, Math.round(width / 92));
    const scene = nodeWaveScene(waves, { width, height, view, letters, title: heading });
    await writePicture(io, out, scene, { ending, print: values.print, width: wide });
  }
  const titles = waves.waves.map(titleOf);
  io.out(`${waveAnswer.exactWritten(heading, titles, out)}\n`);
  return 0;
}

const MOST_POINTS = 8;

const titleOf = ({ point }: Pick<WavePlace, 'point'>): string => wavePointInSentence(point);

/** By id or by part of the title, whichever is meant by one only. */
function placesFrom(texts: readonly string[], all: readonly WavePlace[]): string[] {
  const ids = texts.map((text) => {
    const name = text.trim().toLowerCase();
    const title = (p: WavePlace): string => titleOf(p).toLowerCase();
    const named = all.filter((p) => p.id.toLowerCase() === name || title(p) === name);
    const near = named.length > 0 ? named : all.filter((p) => title(p).includes(name));
    const place = near.length === 1 ? near[0] : undefined;
    if (!place || name === '')
      throw wrongOption('--point', { code: 'point', points: all.map(titleOf), several: near.length > 1 }, text);
    return place.id;
  });
  if (ids.length > MOST_POINTS)
    throw wrongOption('--point', { code: 'points at most', most: MOST_POINTS }, String(ids.length));
  return [...new Set(ids)];
}
