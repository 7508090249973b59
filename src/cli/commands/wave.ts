import { formatNumber, formatQuantity, receive } from '../../engine/index.ts';
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
} from '../../outputs/explain/index.ts';
import { sceneToSvg } from '../../outputs/scene/index.ts';
import { clean } from '../../outputs/tables/index.ts';
import { warningSentences } from '../../outputs/words/index.ts';
import { fileAndOptions } from '../arguments.ts';
import { chooseStation } from '../choose-station.ts';
import { coastFor } from '../coast.ts';
import { type Command, InputError } from '../command.ts';
import { endingOf } from '../ending.ts';
import { exactWaves } from '../exact-waves.ts';
import { quantityOf, sizeFrom } from '../option-values.ts';
import { readSet } from '../read-set.ts';
import { timeHelp, timeOfDay } from '../time-of-day.ts';
import { wrongOption } from '../wrong-option.ts';

const POINT_LIST = POINTS.join(', ');
const WAV_RATE = 48_000;

export const wave: Command = {
  name: 'wave',
  about: 'Draw the signal at any point of its path, over any stretch of time.',
  usage: 'wave SET [--exact] [--point POINT]… [--from TIME] [--for TIME] [--out FILE]',
  options: [
    ['--point POINT', `${POINT_LIST}; may be given more than once; default all`],
    ['--from TIME', 'where the picture begins; default 0'],
    ['--for TIME', 'how much time it shows, 50 ns to 5 s; default 2 ms'],
    ['--station NAME', 'the station, by part of its name or its frequency in kHz; default the one heard best'],
    ['--tone F', 'the tone that stands for the programme; default 1 kHz'],
    ['--depth SHARE', 'depth of modulation; default the station’s'],
    ['--detector NAME', `another detector: ${DETECTOR_CHOICES.join(', ')}`],
    ['--capacitor C', 'another load capacitor'],
    ['--alone', 'without neighbours'],
    ...timeHelp(),
    ['--average, --cover, --envelope, --spectrum', 'what is drawn over and beside the traces'],
    ['--size WxH', 'of the picture in px; default 1200x900, or lower for fewer points'],
    ['--print', 'in black, for printers'],
    [
      '--exact',
      'from the whole circuit cycle by cycle: --point is then any point of the set ("top of the coil"), --for at most 50 ms; without --out it says what a probe would read and what other points there are',
    ],
    ['--coming-on', 'with --exact: from the moment the station comes on, not when all has settled'],
    [
      '--out FILE',
      'ending in .svg (a picture), .csv (a table of numbers) or .wav (what an ear would get of the point)',
    ],
  ],
  examples: [
    'faintwave wave examples/medium-wave-galena.json --out waves.svg',
    'faintwave wave examples/medium-wave-galena.json --point detector --from 0 --for 2ms --out fig.svg',
    'faintwave wave examples/long-wave-foil.json --point phones --for 2s --out phones.wav',
    'faintwave wave examples/medium-wave-galena.json --exact --point "top of the coil" --point detector --for 3ms --out true.svg',
  ],
  async run(args, io) {
    const { values, file } = fileAndOptions(args, {
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
      print: { type: 'boolean' },
      exact: { type: 'boolean' },
      'coming-on': { type: 'boolean' },
      out: { type: 'string' },
    });
    const set = await readSet(file, io);
    const ending =
      values.out === undefined
        ? undefined
        : endingOf(values.out, values.exact ? ['svg', 'csv'] : ['svg', 'csv', 'wav']);
    if (ending) await io.checkTarget(values.out!, ending.kind);
    const field = { time: timeOfDay(values, set.place), coast: coastFor(set.place) };
    const reception = receive(set, field);
    const index = values.station === undefined ? undefined : chooseStation(reception.stations, values.station);
    if (values.exact) return exactWaves(set, reception, index, values, io);
    if (values['coming-on']) throw new InputError('--coming-on goes with --exact');
    const base = wavesOfSet(set, reception, index, field);
    if (!base) throw new InputError('this set receives no station, so there is no wave to draw');
    const points = pointsFrom(values.point);
    const span = quantityOf(values.for ?? '2 ms', 'time', '--for', 50e-9, 5);
    const from = quantityOf(values.from ?? '0 s', 'time', '--from', 0, 55);
    const tone = values.tone === undefined ? undefined : quantityOf(values.tone, 'frequency', '--tone', 50, 20e3);
    if (values.detector !== undefined && !detectorChosen(values.detector))
      throw wrongOption('--detector', DETECTOR_CHOICES.join(' or '), values.detector);
    const settings: Settings = {
      ...(tone === undefined ? {} : { programme: { kind: 'tone', frequency: tone } }),
      ...(values.depth === undefined ? {} : { depth: quantityOf(values.depth, 'ratio', '--depth', 0, 2) }),
      ...(values.detector === undefined ? {} : { detector: values.detector }),
      ...(values.capacitor === undefined
        ? {}
        : { capacitance: quantityOf(values.capacitor, 'capacitance', '--capacitor', 0, 1e-4) }),
      ...(values.alone ? { neighbours: false } : {}),
    };
    const waves = createWaves(withSettings(base, settings));
    const rows: WaveRow[] = points.map((point) => ({ waves, point }));
    const view = limited({ from, span });
    const station = stationOf(reception, index)!;
    const heading = `${clean(station.name)}, ${formatNumber(station.frequency / 1e3, 5)} kHz, in ${clean(set.name)}`;
    for (const warning of warningSentences(waves.warnings)) io.err(`note: ${warning}\n`);
    const { out } = values;
    if (out === undefined) {
      io.out(`${heading}\n\n${rows.map(rowWords).join('\n')}\n\nAdd --out FILE.svg for the picture of it.\n`);
      return 0;
    }
    if (ending?.ending === 'csv') await io.write(out, csvOf(rows, view));
    else if (ending?.ending === 'wav') {
      if (points.length !== 1) throw new InputError('--out: a sound is of one point; name it with --point');
      await io.write(out, wavOf(audible(waves, points[0], span, WAV_RATE), WAV_RATE));
    } else {
      const [width, height] = sizeFrom(values.size, rows.length);
      const { average, cover, envelope, spectrum } = values;
      const scene = waveScene({
        width,
        height,
        rows,
        view,
        show: { average, cover, envelope, spectrum },
        title: `${heading}: ${formatQuantity(span, 'time', 2)}`,
        letters: Math.max(10, Math.round(width / 92)),
      });
      await io.write(out, sceneToSvg(scene, { colours: values.print ? 'print' : 'day', size: 'true' }));
    }
    io.out(`${heading}: ${points.join(', ')}, ${formatQuantity(span, 'time', 3)} written to ${out}\n`);
    return 0;
  },
};

function pointsFrom(given: readonly string[] | undefined): readonly PointId[] {
  const names = given?.flatMap((text) => text.split(',')).map((name) => name.trim()) ?? [];
  for (const name of names) if (!isPoint(name)) throw wrongOption('--point', POINT_LIST, name);
  return names.length > 0 ? (names as PointId[]) : POINTS;
}
