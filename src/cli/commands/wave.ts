import {
  audible,
  createWaves,
  csvOf,
  DETECTOR_CHOICES,
  detectorChosen,
  isPoint,
  limited,
  POINTS,
  type PointId,
  rowWords,
  type Settings,
  stationOf,
  type WaveRow,
  waveScene,
  wavesOfSet,
  wavOf,
  withSettings,
  workingPointOf,
} from '../../outputs/explain/index.ts';
import { clean } from '../../outputs/tables/index.ts';
import {
  type CommandOptions,
  callProblems,
  cliNotes,
  warningSentences,
  waveAnswer,
} from '../../outputs/words/index.ts';
import { fileAndOptions } from '../arguments.ts';
import { packagedCoastFor } from '../coast.ts';
import { type Command, InputError } from '../command.ts';
import { endingOf } from '../ending.ts';
import { exactWaves } from '../exact-waves.ts';
import { quantityOf, sizeFrom } from '../option-values.ts';
import { readSet } from '../read-set.ts';
import { receiveOne } from '../receive-one.ts';
import { timeOfDay } from '../time-of-day.ts';
import { pngWidth, refuseWithoutPicture, writePicture } from '../write-picture.ts';
import { wrongOption } from '../wrong-option.ts';

const WAV_RATE = 48_000;

const OPTIONS = {
  point: { type: 'string', multiple: true },
  from: { type: 'string' },
  for: { type: 'string' },
  station: { type: 'string' },
  tone: { type: 'string' },
  depth: { type: 'string' },
  detector: { type: 'string' },
  capacitor: { type: 'string' },
  alone: { type: 'boolean' },
  day: { type: 'boolean' },
  night: { type: 'boolean' },
  average: { type: 'boolean' },
  cover: { type: 'boolean' },
  envelope: { type: 'boolean' },
  spectrum: { type: 'boolean' },
  size: { type: 'string' },
  width: { type: 'string' },
  print: { type: 'boolean' },
  exact: { type: 'boolean' },
  'coming-on': { type: 'boolean' },
  out: { type: 'string' },
  switch: { type: 'string' },
} as const satisfies CommandOptions<'wave'>;

export const wave: Command = {
  name: 'wave',
  options: OPTIONS,
  examples: [
    'faintwave wave examples/medium-wave-galena.json --out waves.svg',
    'faintwave wave examples/medium-wave-galena.json --point detector --from 0 --for 2ms --out fig.svg',
    'faintwave wave examples/long-wave-foil.json --point phones --for 2s --out phones.wav',
    'faintwave wave examples/medium-wave-galena.json --exact --point "top of the coil" --point detector --for 3ms --out true.svg',
  ],
  async run(args, io) {
    const { values, file } = fileAndOptions(args, OPTIONS);
    const set = await readSet(file, io, values.switch);
    const ending =
      values.out === undefined
        ? undefined
        : endingOf(values.out, values.exact ? ['svg', 'png', 'csv'] : ['svg', 'png', 'csv', 'wav']);
    refuseWithoutPicture(values, ending);
    if (ending) await io.checkTarget(values.out!, ending);
    const field = { time: timeOfDay(values, set.place), coast: packagedCoastFor(set.place) };
    // Medians, as the path of the station has them.
    const { reception, index } = receiveOne(set, values.station, field);
    if (values.exact) return exactWaves(set, reception, index, values, io);
    if (values['coming-on']) throw new InputError(callProblems.needsExact('--coming-on'));
    const base = wavesOfSet(set, reception, index, field);
    if (!base) throw new InputError(callProblems.noWave);
    const points = pointsFrom(values.point);
    const span = quantityOf(values.for ?? '2 ms', 'time', '--for', 50e-9, 5);
    const from = quantityOf(values.from ?? '0 s', 'time', '--from', 0, 55);
    const tone = values.tone === undefined ? undefined : quantityOf(values.tone, 'frequency', '--tone', 50, 20e3);
    if (values.detector !== undefined && !detectorChosen(values.detector))
      throw wrongOption('--detector', { code: 'one of', choices: DETECTOR_CHOICES }, values.detector);
    const settings: Settings = {
      ...(tone === undefined ? {} : { programme: { kind: 'tone', frequency: tone } }),
      ...(values.depth === undefined ? {} : { depth: quantityOf(values.depth, 'ratio', '--depth', 0, 2) }),
      ...(values.detector === undefined ? {} : { detector: values.detector }),
      ...(values.capacitor === undefined
        ? {}
        : { capacitance: quantityOf(values.capacitor, 'capacitance', '--capacitor', 0, 1e-4) }),
      ...(values.alone ? { neighbours: false } : {}),
    };
    const point =
      values.detector === undefined
        ? undefined
        : workingPointOf(set, reception, index, { detector: values.detector }, field);
    const others = point && { [values.detector!]: point };
    const waves = createWaves(withSettings({ ...base, others }, settings));
    const rows: WaveRow[] = points.map((point) => ({ waves, point }));
    const view = limited({ from, span });
    const station = stationOf(reception, index)!;
    const heading = waveAnswer.title({ ...station, name: clean(station.name) }, clean(set.name));
    for (const warning of warningSentences(waves.warnings)) io.err(`${cliNotes.note(warning)}\n`);
    const { out } = values;
    if (out === undefined) {
      io.out(`${heading}\n\n${rows.map(rowWords).join('\n')}\n\n${waveAnswer.toPicture}\n`);
      return 0;
    }
    if (ending === 'csv') await io.write(out, csvOf(rows, view));
    else if (ending === 'wav') {
      if (points.length !== 1) throw new InputError(callProblems.onePoint);
      await io.write(out, wavOf(audible(waves, points[0], span, WAV_RATE), WAV_RATE));
    } else {
      const size = sizeFrom(values.size, rows.length);
      const [width, height] = size;
      const wide = pngWidth(values.width, size, ending!);
      const { average, cover, envelope, spectrum } = values;
      const scene = waveScene({
        width,
        height,
        rows,
        view,
        show: { average, cover, envelope, spectrum },
        title: waveAnswer.pictureTitle(heading, span),
        letters: Math.max(10, Math.round(width / 92)),
        pixels: ending === 'png' ? wide / width : undefined,
      });
      await writePicture(io, out, scene, { ending: ending!, print: values.print, width: wide });
    }
    io.out(`${waveAnswer.written(heading, points, span, out)}\n`);
    return 0;
  },
};

function pointsFrom(given: readonly string[] | undefined): readonly PointId[] {
  const names = given?.flatMap((text) => text.split(',')).map((name) => name.trim()) ?? [];
  for (const name of names) if (!isPoint(name)) throw wrongOption('--point', { code: 'one of', choices: POINTS }, name);
  return names.length > 0 ? (names as PointId[]) : POINTS;
}
