import { hasHeater, receive } from '../../engine/index.ts';
import {
  BLOCK,
  bandAt,
  type HowLoud,
  type ListeningOptions,
  LONGEST_RENDER,
  openBandRecording,
  openListening,
  renderListening,
  SOUND_RATE,
  SoundFileError,
  writeWav,
} from '../../outputs/audio/index.ts';
import { clean } from '../../outputs/tables/index.ts';
import {
  type CommandOptions,
  callProblems,
  cliNotes,
  listenAnswer,
  outOfRangeWords,
  soundFileWarning,
  verdictWords,
} from '../../outputs/words/index.ts';
import { fileAndOptions } from '../arguments.ts';
import { kilohertzOf } from '../choose-station.ts';
import { packagedCoastFor } from '../coast.ts';
import { type Command, InputError } from '../command.ts';
import { numberOf } from '../option-values.ts';
import { readSet } from '../read-set.ts';
import { receiveOne } from '../receive-one.ts';
import { timeOfDay } from '../time-of-day.ts';
import { wrongOption } from '../wrong-option.ts';

const LEVELS = new Map<string, HowLoud>([
  ['phones', 'as in the phones'],
  ['up', 'amplified'],
]);
const HEATER = new Map<string, ListeningOptions['heater']>([
  ['on', 'switched on'],
  ['off', 'switched off'],
]);

const OPTIONS = {
  out: { type: 'string' },
  station: { type: 'string' },
  sweep: { type: 'boolean' },
  seconds: { type: 'string' },
  as: { type: 'string' },
  heater: { type: 'string' },
  day: { type: 'boolean' },
  night: { type: 'boolean' },
  seed: { type: 'string' },
  band: { type: 'string' },
  centre: { type: 'string' },
  'full-scale': { type: 'string' },
  switch: { type: 'string' },
} as const satisfies CommandOptions<'listen'>;

export const listen: Command = {
  name: 'listen',
  options: OPTIONS,
  examples: [
    'faintwave listen examples/medium-wave-galena.json --station Lantern --seconds 10 --out lantern.wav',
    'faintwave listen examples/ferrite-rod-valve-diode.json --heater on --seconds 20 --out warming.wav',
    'faintwave listen examples/medium-wave-galena.json --sweep --seconds 60 --night --out dial.wav',
  ],
  async run(args, io) {
    const { values, file } = fileAndOptions(args, OPTIONS);
    const set = await readSet(file, io, values.switch);
    if (!values.out) throw wrongOption('--out', { code: 'sound file' }, values.out);
    const seconds = numberOf(values.seconds, 10, '--seconds', 0.1, LONGEST_RENDER);
    const seed = numberOf(values.seed, 1, '--seed', 0, 2 ** 31);
    const how = LEVELS.get(values.as ?? 'up');
    if (!how) throw wrongOption('--as', { code: 'one of', choices: [...LEVELS.keys()] }, values.as);
    const heater = values.heater === undefined ? undefined : HEATER.get(values.heater);
    if (values.heater !== undefined && !heater)
      throw wrongOption('--heater', { code: 'one of', choices: [...HEATER.keys()] }, values.heater);
    if (heater && !hasHeater(set.detector)) throw new InputError(callProblems.noHeater);
    await io.checkTarget(values.out, 'wav');
    const field = { time: timeOfDay(values, set.place), coast: packagedCoastFor(set.place) };
    const { reception, index } = values.band
      ? { reception: receive(set, field), index: undefined }
      : receiveOne(set, values.station, field);
    if (index === undefined && !values.band) throw new InputError(callProblems.noStations);
    const station = index === undefined ? undefined : reception.stations[index];
    if (station?.outOfRange && !values.sweep)
      io.err(`${cliNotes.outOfRange(clean(station.name), outOfRangeWords(station.outOfRange))}\n`);
    // As loud as the path states: the median of sets built like this one.
    const options = { ...field, station: index, level: station?.soundPressureLevel, how, seed, heater };
    const onProgress = (share: number): void => io.progress('listening', share);
    let sound: Float32Array;
    if (values.band) {
      sound = await playBand(values.band, seconds, options);
    } else {
      const sweep = values.sweep ? { from: 1, to: 0 } : undefined;
      sound = renderListening(set, { ...options, seconds, sweep, onProgress });
    }
    await io.write(values.out, writeWav([sound], { rate: SOUND_RATE }));
    const what = values.band
      ? listenAnswer.band
      : values.sweep
        ? listenAnswer.sweep
        : listenAnswer.station(
            { name: clean(station!.name), frequency: station!.frequency },
            verdictWords[station!.verdict],
          );
    io.out(`${listenAnswer.written(values.out, seconds, what, listenAnswer.loudness[how])}\n`);
    io.out(`${listenAnswer.care}\n`);
    return 0;

    /** Piece by piece: such files are larger than memory. */
    async function playBand(file: string, length: number, how: object): Promise<Float32Array> {
      const recording = await io.open(file);
      try {
        await io.checkTarget(values.out!, 'wav');
        const { size } = recording;
        const band = await openBandRecording(recording.read, size, file.split(/[\\/]/).pop());
        for (const code of band.warnings) io.err(`${cliNotes.note(soundFileWarning[code])}\n`);
        const centre =
          values.centre === undefined ? band.centre : numberOf(values.centre, 0, '--centre', 10, 30e3) * 1e3;
        if (centre === undefined) throw new InputError(callProblems.noCentre(file));
        const full = numberOf(values['full-scale'], 10, '--full-scale', 1e-6, 1e5) / 1e3;
        const frequency = values.station === undefined ? centre : (kilohertzOf(values.station) ?? 0) * 1e3;
        if (!(frequency > 0)) throw wrongOption('--station', { code: 'frequency of band' }, values.station);
        const dial = reception.dial.points;
        const nearest = dial.reduce((b, p) =>
          Math.abs(p.frequency - frequency) < Math.abs(b.frequency - frequency) ? p : b,
        );
        const listening = openListening(set, { ...how, position: nearest.position, noise: false });
        const out = new Float32Array(Math.round(length * SOUND_RATE));
        const rate = SOUND_RATE * 4;
        let piece = await bandAt(band, rate, 0, BLOCK * 4, centre, listening.pointer);
        listening.playBand((steps, re, im) => {
          for (let i = 0; i < steps; i++) {
            re[i] = full * piece.re[i];
            im[i] = full * piece.im[i];
          }
          return piece.frequency;
        });
        for (let at = 0; at < out.length; at += BLOCK) {
          const frames = Math.min(BLOCK, out.length - at);
          if (at > 0) piece = await bandAt(band, rate, at * 4, BLOCK * 4, centre, listening.pointer);
          onProgress(at / out.length);
          listening.process(out.subarray(at, at + frames), frames);
        }
        return out;
      } catch (error) {
        if (error instanceof SoundFileError) throw new InputError(`${file}: ${error.message}`);
        throw error;
      } finally {
        await recording.close();
      }
    }
  },
};
