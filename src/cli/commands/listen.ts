import { type FileHandle, open } from 'node:fs/promises';
import { receive } from '../../engine/reception/path/receive.ts';
import { verdictOf } from '../../engine/reception/path/summary.ts';
import { formatNumber } from '../../engine/units/format.ts';
import { wholeNumber } from '../../engine/units/number.ts';
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
import { clean } from '../../outputs/tables/table.ts';
import { fileAndOptions } from '../arguments.ts';
import { chooseStation, kilohertzOf } from '../choose-station.ts';
import { coastFor } from '../coast.ts';
import { type Command, InputError } from '../command.ts';
import { readSet } from '../read-set.ts';

const LEVELS = new Map<string | undefined, HowLoud>([
  ['phones', 'as in the phones'],
  ['up', 'brought up'],
]);
const HEATER = new Map<string | undefined, ListeningOptions['heater']>([
  ['on', 'switched on'],
  ['off', 'switched off'],
]);

const number = (text: string | undefined, fallback: number, low: number, high: number, what: string): number => {
  if (text === undefined) return fallback;
  const value = wholeNumber(text) ?? Number.NaN;
  if (!(value >= low && value <= high))
    throw new InputError(`expected ${what} from ${low} to ${high}, received "${text.slice(0, 40)}"`);
  return value;
};

export const listen: Command = {
  name: 'listen',
  about: 'Hear the set before it is built: one station, or the whole dial turned from end to end, as a WAV file.',
  usage: 'listen SET --out FILE [--station NAME|kHz | --sweep] [--seconds 10]',
  options: [
    ['--out FILE', 'where the sound goes: WAV, 48 kHz, one channel'],
    ['--station NAME', 'the station, by part of its name or its frequency in kHz; default the one heard best'],
    ['--sweep', 'turn the dial from its low end to its high end instead'],
    ['--seconds N', `how long; default 10, at most ${LONGEST_RENDER}`],
    ['--as phones|up', 'true level as in the phones, the room with it; or brought up as with an amplifier (default)'],
    ['--heater on|off', 'switch a valve’s heater on from cold, or off while warm, at the beginning'],
    ['--night', 'with what the sky brings after dark, fading as it does'],
    ['--seed N', 'another run of noise, fading and programmes; the same seed gives the same sound, bit for bit'],
    ['--band FILE', 'a recorded band (stereo WAV: in-phase, quadrature) instead of the stations'],
    ['--centre kHz', 'its middle frequency, if neither its header nor its name says'],
    ['--full-scale mV', 'what its full scale is at the aerial; default 10 mV'],
  ],
  examples: [
    'faintwave listen examples/medium-wave-galena.json --station Lantern --seconds 10 --out lantern.wav',
    'faintwave listen examples/ferrite-rod-valve-diode.json --heater on --seconds 20 --out warming.wav',
    'faintwave listen examples/medium-wave-galena.json --sweep --seconds 60 --night --out dial.wav',
  ],
  async run(args, io) {
    const { values, file } = fileAndOptions(args, {
      out: { type: 'string' },
      station: { type: 'string' },
      sweep: { type: 'boolean' },
      seconds: { type: 'string' },
      as: { type: 'string' },
      heater: { type: 'string' },
      night: { type: 'boolean' },
      seed: { type: 'string' },
      band: { type: 'string' },
      centre: { type: 'string' },
      'full-scale': { type: 'string' },
    });
    const set = await readSet(file, io);
    if (!values.out) throw new InputError('name a file for the sound with --out, such as --out heard.wav');
    const seconds = number(values.seconds, 10, 0.1, LONGEST_RENDER, '--seconds');
    const seed = number(values.seed, 1, 0, 2 ** 31, '--seed');
    const how = LEVELS.get(values.as ?? 'up');
    if (!how) throw new InputError(`expected --as phones or --as up, received "${values.as?.slice(0, 40)}"`);
    const heater = HEATER.get(values.heater);
    if (values.heater !== undefined && !heater)
      throw new InputError(`expected --heater on or --heater off, received "${values.heater.slice(0, 40)}"`);
    if (heater && set.detector.kind !== 'valve')
      throw new InputError('--heater is for a set whose detector is a valve; this one has none');
    const field = { time: values.night ? ('night' as const) : ('day' as const), coast: coastFor(set.place) };
    const reception = receive(set, field);
    const index = values.band ? undefined : chooseStation(reception.stations, values.station, reception.best[0]);
    const station = index === undefined ? undefined : reception.stations[index];
    if (station?.outOfReach && !values.sweep)
      io.err(`note: ${clean(station.name)} is ${station.outOfReach}; the dial stands at its end\n`);
    const options = { ...field, station: index, how, seed, heater };
    let sound: Float32Array;
    if (values.band) {
      sound = await playBand(values.band, seconds, options);
    } else {
      const sweep = values.sweep ? { from: 1, to: 0 } : undefined;
      sound = renderListening(set, { ...options, seconds, sweep });
    }
    await io.write(values.out, writeWav([sound], { rate: SOUND_RATE }));
    const what = values.band
      ? 'the recorded band'
      : values.sweep
        ? 'the dial from its low end to its high end'
        : `${clean(station!.name)}, ${formatNumber(station!.frequency / 1e3, 5)} kHz, ${verdictOf(station!)}`;
    io.out(`${values.out}: ${formatNumber(seconds, 4)} s of ${what}, ${how}.\n`);
    io.out('Start listening with the volume down.\n');
    return 0;

    /** Piece by piece: such files are larger than memory. */
    async function playBand(file: string, length: number, how: object): Promise<Float32Array> {
      let handle: FileHandle | undefined;
      try {
        handle = await open(file);
        const { size } = await handle.stat();
        const read = async (start: number, count: number) => {
          const bytes = new Uint8Array(count);
          const { bytesRead } = await handle!.read(bytes, 0, count, start);
          return bytes.subarray(0, bytesRead);
        };
        const band = await openBandRecording(read, size, file.split(/[\\/]/).pop());
        for (const warning of band.warnings) io.err(`note: ${warning}\n`);
        const centre = values.centre === undefined ? band.centre : number(values.centre, 0, 10, 30e3, '--centre') * 1e3;
        if (centre === undefined)
          throw new InputError(
            `neither the header nor the name of ${file} says its middle frequency: give --centre kHz`,
          );
        const full = number(values['full-scale'], 10, 1e-6, 1e5, '--full-scale') / 1e3;
        const wanted = values.station === undefined ? centre : (kilohertzOf(values.station) ?? 0) * 1e3;
        if (!(wanted > 0)) throw new InputError('with --band, --station takes a frequency in kHz');
        const dial = reception.dial.points;
        const nearest = dial.reduce((b, p) =>
          Math.abs(p.frequency - wanted) < Math.abs(b.frequency - wanted) ? p : b,
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
          listening.process(out.subarray(at, at + frames), frames);
        }
        return out;
      } catch (error) {
        if (error instanceof SoundFileError) throw new InputError(`${file}: ${error.message}`);
        const { code } = error as NodeJS.ErrnoException;
        if (code === 'ENOENT') throw new InputError(`cannot read ${file}: there is no such file`);
        throw error;
      } finally {
        await handle?.close();
      }
    }
  },
};
