import { arrivalMemory, type SetDescription } from '../../../../engine/index.ts';
import {
  type BandPiece,
  BLOCK,
  bandAt,
  type Listening,
  openBandRecording,
  openListening,
  PROGRAMME_RATE,
  recordedProgramme,
  SOUND_RATE,
} from '../../../../outputs/audio/index.ts';
import { listeningTexts, warningSentences } from '../../../../outputs/words/index.ts';
import { coastFor } from '../../../workers/coast.ts';
import {
  AHEAD,
  type FromWorker,
  MORE_AFTER_GAP,
  MOST_AHEAD,
  type Moving,
  PIECE,
  type Played,
  type ToWorker,
} from './messages.ts';
import { listeningProblem } from './sound-problem.ts';
import { Spectrum } from './sound-spectrum.ts';

const STEPS = 4;
const memory = arrivalMemory();
let listening: Listening | undefined;
let port: MessagePort | undefined;
let programmeOf = new Map<number, SetDescription['place']['stations'][number]['programme']>();
const spare: Float32Array[] = [];
/** Pieces on their way or waiting at the player, and how many there should be. */
let ahead = 0;
let wanted = AHEAD;

const say = (message: FromWorker) => postMessage(message);
const problemOf = (error: unknown): string => listeningProblem(error, listeningTexts.problems.stopped);

/** Recorded-band pieces read ahead, since reading cannot wait inside a block. */
let bandPieces: BandPiece[] = [];
let bandAtPiece = 0;
let readBand: (() => void) | undefined;

function remember(set: SetDescription): void {
  programmeOf = new Map(set.place.stations.map((s, i) => [i, s.programme]));
}

const span = 512;
const envelope = new Float32Array(span);
const detected = new Float32Array(span);
const sound = new Float32Array(span);
const spectrum = new Spectrum(1024);
const traceRe = new Float64Array(1024);
const traceIm = new Float64Array(1024);
let filled = 0;
let sinceTold = 0;
let square = 0;
let squares = 0;
let limited = 1;

/** Keep what the screen shows: a block at a time, newest last. */
function watch(from: Listening): void {
  for (const [into, data] of [
    [detected, from.detected],
    [sound, from.pressure],
  ] as const) {
    into.copyWithin(0, BLOCK);
    into.set(data, span - BLOCK);
  }
  const [wave] = from.trace;
  if (wave) {
    envelope.copyWithin(0, BLOCK);
    for (let i = 0; i < BLOCK; i++) envelope[span - BLOCK + i] = Math.hypot(wave.re[STEPS * i], wave.im[STEPS * i]);
    if (filled === 0) {
      traceRe.set(wave.re.subarray(0, BLOCK * STEPS));
      traceIm.set(wave.im.subarray(0, BLOCK * STEPS));
      filled = 1;
    }
  }
  square += from.meters.pressure ** 2;
  squares++;
  limited = Math.min(limited, from.meters.limited);
  sinceTold += BLOCK;
  if (sinceTold < SOUND_RATE / 15) return;
  sinceTold = 0;
  filled = 0;
  const levels = new Float32Array(1024);
  spectrum.levels(traceRe, traceIm, levels);
  const half = (SOUND_RATE * STEPS) / 2;
  // The window is ±60 kHz: what lies beyond is not told apart.
  const keep = Math.round((60e3 / half) * 512);
  const moving: Moving = {
    kind: 'moving',
    envelope: envelope.slice(),
    detected: detected.slice(),
    sound: sound.slice(),
    spectrum: levels.slice(512 - keep, 512 + keep),
    from: from.pointer - 60e3,
    to: from.pointer + 60e3,
    pointer: from.pointer,
    level: 20 * Math.log10(Math.max(Math.sqrt(square / squares), 1e-12) / 20e-6),
    limited: 20 * Math.log10(limited),
    cathode: from.cathode,
  };
  square = squares = 0;
  limited = 1;
  say(moving);
}

let filling = false;
/** Make sound until enough is ahead, giving way to messages between pieces. */
function fill(): void {
  if (filling || !listening || !port) return;
  if (ahead >= wanted) return;
  filling = true;
  try {
    const piece = spare.pop() ?? new Float32Array(PIECE);
    for (let at = 0; at < PIECE; at += BLOCK) {
      listening.process(piece.subarray(at, at + BLOCK), BLOCK);
      watch(listening);
    }
    ahead++;
    port.postMessage(piece, [piece.buffer]);
  } catch (error) {
    listening = undefined;
    say({ kind: 'problem', message: problemOf(error) });
  }
  filling = false;
  if (ahead < wanted) again.port2.postMessage(0);
}
const again = new MessageChannel();
again.port1.onmessage = () => fill();

async function open(m: Extract<ToWorker, { kind: 'open' }>): Promise<void> {
  remember(m.set);
  listening = openListening(m.set, {
    time: m.time,
    memory,
    coast: await coastFor(m.set.place),
    position: m.position,
    station: m.station,
    level: m.level,
    how: m.how,
    programmes: loopsOf(m.programmes),
    scope: true,
    prepared: true,
  });
  listening.setVolume(m.volume);
  port = m.port;
  port.onmessage = ({ data }: MessageEvent<Played>) => {
    if ('gap' in data) wanted = Math.min(MOST_AHEAD, wanted + MORE_AFTER_GAP);
    else {
      spare.push(data.buffer);
      ahead--;
    }
    fill();
  };
  say({ kind: 'ready', warnings: warningSentences(listening.warnings) });
  fill();
}

/** Recordings that came with the page, at `PROGRAMME_RATE`. */
const loopsOf = (given: ReadonlyMap<number, Float32Array>) =>
  new Map([...given].map(([index, samples]) => [index, recordedProgramme([samples], PROGRAMME_RATE, 'speech')]));

/** A ring two seconds long that a microphone writes a little ahead of where the station reads. */
function microphone(station: number, from: MessagePort): void {
  const n = 2 * PROGRAMME_RATE;
  const ring = new Float32Array(n);
  listening?.setProgramme(station, ring);
  const lead = Math.round(0.15 * PROGRAMME_RATE);
  let at = Math.floor((listening?.clock ?? 0) / 2) + lead;
  from.onmessage = ({ data }: MessageEvent<Float32Array>) => {
    const now = Math.floor((listening?.clock ?? 0) / 2);
    if (at < now + lead / 3 || at > now + 1.5 * PROGRAMME_RATE) at = now + lead;
    for (let i = 0; i + 1 < data.length; i += 2, at++) {
      ring[at % n] = Math.max(-1, Math.min(1, (data[i] + data[i + 1]) / 2));
    }
  };
}

async function band(m: Extract<ToWorker, { kind: 'band' }>): Promise<void> {
  readBand = undefined;
  if (!m.file) {
    listening?.playBand(undefined);
    return;
  }
  const { file } = m;
  const read = async (start: number, length: number) =>
    new Uint8Array(await file.slice(start, start + length).arrayBuffer());
  const recording = await openBandRecording(read, file.size, file.name);
  const centre = m.centre ?? recording.centre;
  say({ kind: 'band', centre, seconds: recording.seconds });
  if (centre === undefined) return;
  const rate = SOUND_RATE * STEPS;
  const length = 16 * BLOCK * STEPS;
  bandPieces = [];
  bandAtPiece = 0;
  let next = 0;
  let reading = false;
  const mine = () => {
    if (reading || bandPieces.length >= 6 || readBand !== mine) return;
    reading = true;
    bandAt(recording, rate, next, length, centre, listening?.pointer).then(
      (piece) => {
        reading = false;
        next += length;
        bandPieces.push(piece);
        mine();
      },
      (error: unknown) => say({ kind: 'problem', message: problemOf(error) }),
    );
  };
  readBand = mine;
  mine();
  listening?.playBand((steps, re, im, pointer) => {
    const piece = bandPieces[0];
    if (!piece) {
      re.fill(0);
      im.fill(0);
      return pointer;
    }
    for (let i = 0; i < steps; i++) {
      re[i] = m.fullScale * piece.re[bandAtPiece + i];
      im[i] = m.fullScale * piece.im[bandAtPiece + i];
    }
    bandAtPiece += steps;
    if (bandAtPiece >= length) {
      bandAtPiece = 0;
      bandPieces.shift();
      readBand?.();
    }
    return piece.frequency;
  });
}

async function take(m: ToWorker): Promise<void> {
  if (m.kind === 'open') return open(m);
  if (m.kind === 'tune') listening?.tune(m.position);
  else if (m.kind === 'change') {
    const coast = await coastFor(m.set.place);
    remember(m.set);
    listening?.change(m.set, { time: m.time, coast });
  } else if (m.kind === 'how') listening?.setHow(m.how);
  else if (m.kind === 'volume') listening?.setVolume(m.level);
  else if (m.kind === 'lifted') listening?.setLifted(m.lifted);
  else if (m.kind === 'heater') listening?.setHeater(m.on);
  else if (m.kind === 'programme')
    listening?.setProgramme(
      m.station,
      recordedProgramme([m.samples], m.rate, programmeOf.get(m.station) === 'music' ? 'music' : 'speech'),
    );
  else if (m.kind === 'microphone') {
    if (m.port) microphone(m.station, m.port);
    else listening?.setProgramme(m.station, undefined);
  } else await band(m);
}

addEventListener('message', ({ data }: MessageEvent<ToWorker>) => {
  take(data).catch((error: unknown) => say({ kind: 'problem', message: problemOf(error) }));
});
