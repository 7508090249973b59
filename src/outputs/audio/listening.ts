import { type SetCircuit, setCircuit } from '../../engine/built/set-circuit.ts';
import type { Warning } from '../../engine/facts/warning.ts';
import { isLoop } from '../../engine/kinds/loops.ts';
import { magnitude } from '../../engine/numerics/complex.ts';
import { gaussian, uniform } from '../../engine/numerics/random.ts';
import { textHash } from '../../engine/numerics/text-hash.ts';
import { type TuningCurve, tuningCurve } from '../../engine/reception/dial/dial.ts';
import { BANDS, bandWidth, roomNoise } from '../../engine/reception/hearing/index.ts';
import { type FieldAtSite, type FieldOptions, fieldsAtSite } from '../../engine/reception/path/field.ts';
import {
  bearingOf,
  effectiveHeight,
  emfOf,
  type Receiver,
  receiver,
  receiveStation,
} from '../../engine/reception/path/receive-station.ts';
import type { SetDescription } from '../../engine/set/description.ts';
import type { StationDescription } from '../../engine/set/place.ts';
import { createListener } from '../../engine/solvers/envelope/envelope.ts';
import type { HeardStation, Listener } from '../../engine/solvers/envelope/listener-types.ts';
import type { Decibels, Hertz, Kelvins, Ratio, Volts } from '../../engine/units/quantities.ts';
import { ArrivingStation } from './fading.ts';
import { Fir } from './fir.ts';
import { Limiter } from './limiter.ts';
import { BandNoise } from './noise.ts';
import { madeProgramme, type ProgrammeLoop } from './programme.ts';
import { ValveHeater } from './valve-heater.ts';

/** Samples of sound a second. */
export const SOUND_RATE = 48_000;
const STEPS = 4;
/** Most samples in one call of `process`. */
export const BLOCK = 256;
/** Most stations followed: those strongest at the aerial. */
const MOST_STATIONS = 40;
const WINDOW: Hertz = 60e3;
/** R.m.s. of the chosen station when amplified. */
const AMPLIFIED = 0.09;
/** No amplifier gives more than this over true level, dB. */
const MOST_GAIN: Decibels = 100;
/** Blocks between two taking apart of the circuit while the dial turns. */
const RETUNE_EVERY = 5;

/** A station keeps its voice wherever it stands in a list. */
const seedOf = ({ name }: StationDescription, seed: number): number => textHash(name, seed);

/** Whether the sound is as loud as in the phones, with the noise of the room, or amplified. */
export type HowLoud = 'as in the phones' | 'amplified';

/** Which station, how loud, what is on the air. */
export interface ListeningOptions extends FieldOptions {
  /** Which station the dial starts on and the amplification is set for, by its place in the list. Default the one heard best. */
  readonly station?: number;
  /** Where the dial starts, 0 open … 1 meshed; default on the station. */
  readonly position?: Ratio;
  /** Default "amplified". */
  readonly how?: HowLoud;
  /** Default 1. */
  readonly seed?: number;
  /** Programmes by the station's place in the list; the others are made up. */
  readonly programmes?: ReadonlyMap<number, ProgrammeLoop>;
  /** Default true. */
  readonly noise?: boolean;
  /** The room, with true level only. Default true. */
  readonly room?: boolean;
  /** Default 1.5 s. */
  readonly fadeIn?: number;
  /** The radio-frequency side is written into `listener.trace` too. Default false. */
  readonly scope?: boolean;
  /** Make every station's programme before the first sound, not when first heard. Default false. */
  readonly prepared?: boolean;
  /** The whisker is off the crystal: no sound but the room's. Default false. */
  readonly lifted?: boolean;
  /** Of a valve: switched on from cold, or switched off while warm, at the beginning. Default warm, and on. */
  readonly heater?: 'switched on' | 'switched off';
}

/**
 * Another wave instead of the stations, V at the aerial: a recorded band, overwritten into `re`, `im`.
 * @returns the frequency it is around, Hz: within 100 kHz of the pointer, or what is written must be silence.
 */
export type BandPlayer = (steps: number, re: Float32Array, im: Float32Array, pointer: Hertz) => Hertz;

/** A set being listened to: samples come out as long as somebody asks. */
export interface Listening {
  /** Go on by up to `BLOCK` samples. */
  process(out: Float32Array, frames: number): void;
  tune(position: Ratio): void;
  /** The same set with other parts, or another time of day: what was ringing rings on. */
  change(set: SetDescription, options?: FieldOptions): void;
  setProgramme(station: number, loop: ProgrammeLoop | undefined): void;
  setHow(how: HowLoud): void;
  /** On top, dB. */
  setVolume(level: Decibels): void;
  setLifted(lifted: boolean): void;
  /** A valve's heater: its sound fades in as it warms, and goes on for a while when it is switched off. */
  setHeater(on: boolean): void;
  /** Play a recorded band instead of the stations; undefined: the stations again. */
  playBand(band: BandPlayer | undefined): void;
  readonly position: Ratio;
  readonly pointer: Hertz;
  /** Of a valve's cathode, K, once its heater has been switched. */
  readonly cathode: Kelvins | undefined;
  /** Samples since it was opened. */
  readonly clock: number;
  readonly meters: {
    readonly carrier: Volts;
    readonly lost: number;
    readonly limited: Ratio;
    readonly pressure: number;
  };
  /** Of the last block: after the detector, V, and the sound before the limiter, Pa. */
  readonly detected: Float32Array;
  readonly pressure: Float32Array;
  readonly trace: Listener['trace'];
  readonly stations: readonly { readonly name: string; readonly frequency: Hertz; readonly index: number }[];
  readonly warnings: readonly Warning[];
}

interface OnAir {
  readonly station: StationDescription;
  /** In the description's list. */
  readonly index: number;
  readonly field: FieldAtSite;
  /** The most it sends through the aerial: a frame faces it. */
  readonly emf: Volts;
}

/** What of the set has to be worked out anew when a part changes. */
interface Built {
  readonly circuit: SetCircuit;
  readonly ready: Receiver;
  readonly curve: TuningCurve;
  readonly onAir: readonly OnAir[];
}

function build(set: SetDescription, options: FieldOptions): Built {
  const circuit = setCircuit(set);
  const fieldOf = fieldsAtSite(set.place, options);
  const ready = receiver(circuit, fieldOf);
  const onAir = set.place.stations
    .map((station, index): OnAir => {
      const field = fieldOf(station);
      const emf = emfOf(circuit, station, field, bearingOf(station, field));
      return { station, index, field, emf };
    })
    .sort((a, b) => b.emf - a.emf)
    .slice(0, MOST_STATIONS)
    .sort((a, b) => a.index - b.index);
  return { circuit, ready, curve: tuningCurve(ready), onAir };
}

/** A gap in the place of the detector: next to no current, and straight up to hundreds of volts. */
const LIFTED = { saturationCurrent: 1e-16, ideality: 300 };

/**
 * `from` times a gain that glides from one to another. Numbers kept between blocks would each be a new one on the heap
 * at every sample; those of a loop are not. @returns sum of the squares that came.
 */
function glide(from: Float32Array, to: Float32Array, frames: number, first: number, last: number): number {
  const step = (last - first) / frames;
  let gain = first;
  let square = 0;
  for (let i = 0; i < frames; i++) {
    gain += step;
    square += from[i] * from[i];
    to[i] = from[i] * gain;
  }
  return square;
}

/** Pascals r.m.s. of a level. */
const pascals = (level: Decibels): number => 20e-6 * 10 ** (level / 20);

/**
 * Listen to a set as described, at its place.
 * @param first as read
 * @param options station, loudness, programmes, time and coastline
 * @returns a listening at `SOUND_RATE`
 * @throws RangeError for a set that cannot be heard at all.
 */
export function openListening(first: SetDescription, options: ListeningOptions = {}): Listening {
  const { seed = 1, noise = true, room = true } = options;
  let fields: FieldOptions = options;
  let built = build(first, fields);
  let how: HowLoud = options.how ?? 'amplified';
  let volume = 1;
  let lifted = options.lifted ?? false;
  const tuned = built.onAir.map((s) => receiveStation(built.ready, s.station));
  const best = tuned.reduce((b, s, k) => (s.heard.margin > (tuned[b]?.heard.margin ?? -1e9) ? k : b), 0);
  const asked = built.onAir.findIndex((s) => s.index === options.station);
  const reference = tuned[asked >= 0 ? asked : best];
  const heardBest = built.onAir[asked >= 0 ? asked : best]?.index;
  let position: Ratio = options.position ?? reference?.position ?? 0.5;
  let other = reference?.other ?? position;
  let pointer = pointerAt();
  const amplification = reference
    ? Math.min(AMPLIFIED / Math.max(pascals(reference.heard.spl), 1e-12), 10 ** (MOST_GAIN / 20))
    : 1;

  const programmes = new Map(options.programmes);
  const made = new Map<string, ProgrammeLoop>();
  const arriving = new Map<string, ArrivingStation>();
  let wayOf: ArrivingStation[] = [];
  let loops: (ProgrammeLoop | undefined)[] = [];
  let envelopes: Float32Array[] = [];
  let quadratures: (Float32Array | undefined)[] = [];
  let spare: Float32Array[] = [];
  let heardNow: boolean[] = [];
  let listener: Listener;
  let phones: Fir;
  const roomFir = new Fir(SOUND_RATE, roomGain(first), BLOCK);
  const roomNormal = gaussian(uniform(seed ^ 0x100e));
  const roomSound = new Float32Array(BLOCK);
  const hiss = new BandNoise(SOUND_RATE * STEPS, seed);
  const waveRe = new Float32Array(BLOCK * STEPS);
  const waveIm = new Float32Array(BLOCK * STEPS);
  const limiter = new Limiter({ rate: SOUND_RATE, fadeIn: options.fadeIn });
  const atTransducer = new Float32Array(BLOCK);
  const detected = new Float32Array(BLOCK);
  const pressure = new Float32Array(BLOCK);
  const outs = [atTransducer, detected];
  let band: BandPlayer | undefined;
  let clock = 0;
  let waited = RETUNE_EVERY;
  let wantsTuning = false;
  let gain = targetGain();
  let heater: ValveHeater | undefined;
  let warmth = 1;
  if (options.heater) switchHeater(options.heater === 'switched on', options.heater === 'switched on');
  let noiseVolts = 0;
  let ports = '';
  const meters = { carrier: 0, lost: 0, limited: 1, pressure: 0 };
  start();

  function pointerAt(): Hertz {
    const f = built.curve.frequencyAt(position);
    return Math.max(built.curve.lowest * 0.98, Math.min(built.curve.highest * 1.02, f));
  }
  function targetGain(): number {
    return volume * (how === 'amplified' ? amplification : 1);
  }
  function switchHeater(on: boolean, cold = false): void {
    heater ??= heardBest === undefined ? undefined : ValveHeater.of(first, heardBest, built.circuit.detector, fields);
    if (!heater) return;
    heater.on = on;
    if (cold) heater.cool();
    if (cold) warmth = 0;
  }
  function device() {
    return lifted ? LIFTED : built.circuit.detector;
  }
  function sources(): HeardStation[] {
    // A frame without a fixed direction is turned to the station by the pointer.
    const wanted = nearest();
    const facing = wanted && bearingOf(wanted.station, wanted.field);
    return built.onAir.map(({ station, field }) => ({
      frequency: station.frequency,
      emf: band ? 0 : emfOf(built.circuit, station, field, facing),
      phase: 2 * Math.PI * uniform(seedOf(station, seed))(),
    }));
  }
  function setLevels(): void {
    for (const [k, s] of sources().entries()) listener.setStation(k, s);
  }
  /** A listener for the circuit as it is; also when other parts changed what the outputs are called. */
  function start(): void {
    const { circuit } = built;
    const { transducer, assembly } = circuit;
    ports = portsOf(circuit);
    listener = createListener(assembly.circuitAt(position, other), {
      device: device(),
      stations: sources(),
      pointer,
      rate: SOUND_RATE * STEPS,
      decimation: STEPS,
      window: WINDOW,
      largestBlock: BLOCK,
      outputs: [
        { kind: 'voltage', node: transducer.from, over: transducer.to },
        { kind: 'voltage', node: assembly.outputPort.from, over: assembly.outputPort.to },
      ],
      radioOutputs: options.scope
        ? [{ kind: 'voltage', node: assembly.carrierPort.from, over: assembly.carrierPort.to }]
        : [],
    });
    gather();
    fitPhones();
  }
  function portsOf({ transducer, assembly }: SetCircuit): string {
    return JSON.stringify([
      transducer,
      assembly.outputPort,
      assembly.carrierPort,
      assembly.wiring,
      built.onAir.map((s) => s.station.name),
    ]);
  }
  function gather(): void {
    wayOf = built.onAir.map(({ station, field }) => {
      const key = `${station.name} ${field.how} ${field.fading}`;
      let way = arriving.get(key);
      if (!way) {
        way = new ArrivingStation(
          {
            how: field.how === 'off the air' ? 'nothing' : field.how,
            fading: field.fading,
            seed: seedOf(station, seed),
          },
          SOUND_RATE,
        );
        arriving.set(key, way);
      }
      return way;
    });
    loops = built.onAir.map(({ index }, k) => programmes.get(index) ?? (options.prepared ? loopFor(k) : undefined));
    if (envelopes.length !== built.onAir.length) {
      envelopes = built.onAir.map(() => new Float32Array(BLOCK).fill(1));
      spare = built.onAir.map(() => new Float32Array(BLOCK));
      quadratures = spare.slice();
    }
    see();
  }
  function loopFor(k: number): ProgrammeLoop {
    const { index, station } = built.onAir[k];
    let loop = made.get(station.name);
    if (!loop) made.set(station.name, (loop = madeProgramme(station.programme, seedOf(station, seed))));
    return programmes.get(index) ?? loop;
  }
  /** Which stations are worth a programme where the pointer stands, and how much noise comes in there. */
  function see(): void {
    const { onAir, ready, circuit } = built;
    const levels = onAir.map((s) => s.emf * magnitude(ready.network.at(s.station.frequency).at(position, other).open));
    const most = Math.max(1e-12, ...levels);
    heardNow = onAir.map((s, k) => Math.abs(s.station.frequency - pointer) < 1.1 * WINDOW || levels[k] > 0.01 * most);
    for (let k = 0; k < onAir.length; k++) if (heardNow[k]) loops[k] ??= loopFor(k);
    const here = nearest();
    noiseVolts = noise && here ? here.field.noise * effectiveHeight(circuit, here.station.frequency) : 0;
  }
  function nearest(): OnAir | undefined {
    return built.onAir.reduce<OnAir | undefined>(
      (b, s) => (!b || Math.abs(s.station.frequency - pointer) < Math.abs(b.station.frequency - pointer) ? s : b),
      undefined,
    );
  }
  function fitPhones(): void {
    const { load } = built.circuit;
    phones = new Fir(
      SOUND_RATE,
      (f) => {
        const level = load.soundPressureAt(f, 1);
        const low = (f / 100) ** 2;
        return Number.isFinite(level) && f > 40 ? pascals(level) * (low / (1 + low)) : 0;
      },
      BLOCK,
    );
  }
  function roomGain(of: SetDescription): (f: Hertz) => number {
    const levels = roomNoise(of.ear.room, built.circuit.load.listening);
    return (f) => {
      const k = BANDS.reduce((b, m, i) => (Math.abs(Math.log(m / f)) < Math.abs(Math.log(BANDS[b] / f)) ? i : b), 0);
      // White noise of unit variance has 2/rate a hertz.
      return f < 60 || f > 9500 ? 0 : pascals(levels[k]) / Math.sqrt((bandWidth(BANDS[k]) * 2) / SOUND_RATE);
    };
  }
  function retune(): void {
    pointer = pointerAt();
    const { assembly } = built.circuit;
    // A second capacitor is peaked by the other hand; looked for on a grid, since every answer is kept.
    other =
      assembly.tuning.length > 1 && !assembly.ganged
        ? built.ready.network.at(2000 * Math.round(pointer / 2000)).peak(built.ready.smallConductance).other
        : position;
    listener.retune(listener.network(assembly.circuitAt(position, other), pointer), pointer);
    if (isLoop(built.circuit.set.aerial)) setLevels();
    see();
  }

  return {
    process(out, frames) {
      if (!(frames >= 1 && frames <= BLOCK))
        throw new RangeError(`a block has from 1 to ${BLOCK} samples, not ${frames}`);
      if (++waited > RETUNE_EVERY && wantsTuning) {
        waited = 0;
        wantsTuning = false;
        retune();
      }
      if (heater) {
        heater.wait(frames / SOUND_RATE);
        const curve = heater.newCurve();
        if (curve && !lifted) listener.setDevice(curve.device, curve.rough);
      }
      for (let k = 0; k < loops.length; k++) {
        const way = wayOf[k];
        const loop = heardNow[k] && !band ? loops[k] : undefined;
        const depth = Math.min(built.onAir[k].station.modulation, 1);
        way.fill(loop, depth, clock, frames, envelopes[k], spare[k]);
        quadratures[k] = way.fades ? spare[k] : undefined;
      }
      const steps = frames * STEPS;
      if (band) {
        const frequency = band(steps, waveRe, waveIm, pointer);
        listener.process(frames, envelopes, outs, quadratures, { frequency, re: waveRe, im: waveIm });
      } else if (noiseVolts > 0) {
        hiss.fill(noiseVolts, steps, waveRe, waveIm);
        listener.process(frames, envelopes, outs, quadratures, { frequency: pointer, re: waveRe, im: waveIm });
      } else listener.process(frames, envelopes, outs, quadratures);
      clock += frames;
      phones.run(atTransducer, pressure, frames);
      if (heater) {
        const { share } = heater;
        glide(pressure, pressure, frames, warmth, share);
        warmth = share;
      }
      if (room && how === 'as in the phones') {
        for (let i = 0; i < frames; i++) roomSound[i] = roomNormal();
        roomFir.run(roomSound, roomSound, frames);
        for (let i = 0; i < frames; i++) pressure[i] += roomSound[i];
      }
      const wanted = targetGain();
      const square = glide(pressure, out, frames, gain, wanted);
      gain = wanted;
      limiter.lowestGain = 1;
      limiter.run(out, frames);
      meters.carrier = listener.meters.carrier;
      meters.lost = listener.meters.lost;
      meters.limited = limiter.lowestGain;
      meters.pressure = Math.sqrt(square / frames);
    },
    tune(to) {
      if (!(to >= 0 && to <= 1)) throw new RangeError(`the dial goes from 0 to 1, not to ${to}`);
      position = to;
      wantsTuning = true;
    },
    change(to, options) {
      const before = built;
      const next = build(to, { ...fields, ...options });
      fields = { ...fields, ...options };
      built = next;
      if (portsOf(built.circuit) !== ports) {
        pointer = pointerAt();
        start();
        return;
      }
      if (before.circuit.detector !== built.circuit.detector) {
        listener.setDevice(device());
        heater =
          heater && heardBest !== undefined
            ? ValveHeater.of(to, heardBest, built.circuit.detector, fields)?.asWarmAs(heater)
            : undefined;
        if (!heater) warmth = 1;
      }
      setLevels();
      fitPhones();
      gather();
      retune();
    },
    setProgramme(index, loop) {
      if (loop) programmes.set(index, loop);
      else programmes.delete(index);
      gather();
    },
    setHow(to) {
      how = to;
    },
    setVolume(level) {
      volume = 10 ** (Math.max(-100, Math.min(40, level)) / 20);
    },
    setLifted(to) {
      lifted = to;
      listener.setDevice(device());
    },
    setHeater(on) {
      switchHeater(on);
    },
    playBand(to) {
      band = to;
      setLevels();
    },
    get position() {
      return position;
    },
    get cathode() {
      return heater?.temperature;
    },
    get clock() {
      return clock;
    },
    get pointer() {
      return pointer;
    },
    get trace() {
      return listener.trace;
    },
    get warnings() {
      return listener.warnings;
    },
    get stations() {
      return built.onAir.map(({ station, index }) => ({ name: station.name, frequency: station.frequency, index }));
    },
    meters,
    detected,
    pressure,
  };
}
