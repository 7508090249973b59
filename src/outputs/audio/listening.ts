import { isLoop } from '../../engine/kinds/loops.ts';
import type { FieldOptions } from '../../engine/reception/path/field.ts';
import { receiveStation } from '../../engine/reception/path/receive-station.ts';
import type { SetDescription } from '../../engine/set/description.ts';
import { createListener } from '../../engine/solvers/envelope/envelope.ts';
import type { HeardStation, Listener } from '../../engine/solvers/envelope/listener-types.ts';
import type { Decibels, Hertz, Kelvins, Ratio, Volts } from '../../engine/units/quantities.ts';
import {
  type BandPlayer,
  BLOCK,
  type HowLoud,
  type Listening,
  type ListeningOptions,
  SOUND_RATE,
} from './listening-types.ts';
import { BandNoise } from './noise.ts';
import type { ProgrammeLoop } from './programme.ts';
import { ProgrammesOnAir } from './programmes-on-air.ts';
import { noiseAt, otherAt, pointerAt, portsOf, type SetOnAir, setOnAir, sourcesOf } from './set-on-air.ts';
import { amplificationOf, SoundAtEar } from './sound-at-ear.ts';
import { ValveHeater } from './valve-heater.ts';

/** Steps of the circuit in each sample of sound. */
const STEPS = 4;
const WINDOW: Hertz = 60e3;
/** Blocks between two taking apart of the circuit while the dial turns. */
const RETUNE_EVERY = 5;
/** A gap in the place of the detector: next to no current, and straight up to hundreds of volts. */
const LIFTED = { saturationCurrent: 1e-16, ideality: 300 };

/**
 * Listen to a set as described, at its place.
 * @param first as read
 * @param options station, loudness, programmes, time and coastline
 * @returns a listening at `SOUND_RATE`
 * @throws RangeError for a set that cannot be heard at all.
 */
export const openListening = (first: SetDescription, options: ListeningOptions = {}): Listening =>
  new SetListening(first, options);

/** A listening's state: the set as it is, where its dial stands, and what is heard of it. */
class SetListening implements Listening {
  readonly meters = { carrier: 0, lost: 0, limited: 1, pressure: 0 };
  readonly detected = new Float32Array(BLOCK);
  readonly pressure: Float32Array;
  position: Ratio;
  pointer: Hertz;
  clock = 0;

  private readonly seed: number;
  private readonly hasNoise: boolean;
  private readonly hasScope: boolean;
  /** Place in the list of the station that is amplified. */
  private readonly reference: number | undefined;
  private readonly programmes: ProgrammesOnAir;
  private readonly ear: SoundAtEar;
  private readonly hiss: BandNoise;
  private readonly waveRe = new Float32Array(BLOCK * STEPS);
  private readonly waveIm = new Float32Array(BLOCK * STEPS);
  private readonly atTransducer = new Float32Array(BLOCK);
  private readonly outs = [this.atTransducer, this.detected];
  private fields: FieldOptions;
  private set: SetOnAir;
  private other: Ratio;
  private lifted: boolean;
  private listener: Listener;
  private ports = '';
  private band: BandPlayer | undefined;
  private heater: ValveHeater | undefined;
  private noiseVolts: Volts = 0;
  private waited = RETUNE_EVERY;
  private wantsTuning = false;

  constructor(first: SetDescription, options: ListeningOptions) {
    const { seed = 1, noise = true, room = true, scope = false, lifted = false, how = 'amplified', fadeIn } = options;
    this.seed = seed;
    this.hasNoise = noise;
    this.hasScope = scope;
    this.lifted = lifted;
    this.fields = options;
    this.set = setOnAir(first, options);
    const { onAir, ready, circuit } = this.set;
    const tuned = onAir.map((s) => receiveStation(ready, s.station));
    const best = tuned.reduce((b, s, k) => (s.heard.margin > (tuned[b]?.heard.margin ?? -1e9) ? k : b), 0);
    const asked = onAir.findIndex((s) => s.index === options.station);
    const k = asked >= 0 ? asked : best;
    this.reference = onAir[k]?.index;
    this.position = options.position ?? tuned[k]?.position ?? 0.5;
    this.other = tuned[k]?.other ?? this.position;
    this.pointer = pointerAt(this.set, this.position);
    this.programmes = new ProgrammesOnAir(seed, options);
    this.hiss = new BandNoise(SOUND_RATE * STEPS, seed);
    const level = tuned[k]?.heard.spl;
    const stated = (options.level ?? Number.NaN) - (level ?? Number.NaN);
    const shift = Number.isFinite(stated) ? stated : 0;
    const amplification = amplificationOf(options.amplifiedFrom ?? (level === undefined ? undefined : level + shift));
    this.ear = new SoundAtEar(circuit, { how, amplification, shift, hasRoom: room, seed, fadeIn });
    this.pressure = this.ear.pressure;
    if (options.heater) this.switchHeater(options.heater === 'switched on', options.heater === 'switched on');
    this.listener = this.start();
  }

  process(out: Float32Array, frames: number): void {
    if (!(frames >= 1 && frames <= BLOCK))
      throw new RangeError(`a block has from 1 to ${BLOCK} samples, not ${frames}`);
    if (++this.waited > RETUNE_EVERY && this.wantsTuning) {
      this.waited = 0;
      this.wantsTuning = false;
      this.retune();
    }
    this.warm(frames);
    this.programmes.fill(this.clock, frames, this.band !== undefined);
    this.receive(frames);
    this.clock += frames;
    this.ear.run(this.atTransducer, out, frames, this.heater?.share);
    const { listener, meters, ear } = this;
    meters.carrier = listener.meters.carrier;
    meters.lost = listener.meters.lost;
    meters.limited = ear.meters.limited;
    meters.pressure = ear.meters.pressure;
  }

  tune(to: Ratio): void {
    if (!(to >= 0 && to <= 1)) throw new RangeError(`the dial goes from 0 to 1, not to ${to}`);
    this.position = to;
    this.wantsTuning = true;
  }

  change(to: SetDescription, options?: FieldOptions): void {
    const { detector } = this.set.circuit;
    const fields = { ...this.fields, ...options };
    this.set = setOnAir(to, fields);
    this.fields = fields;
    if (portsOf(this.set) !== this.ports) {
      this.pointer = pointerAt(this.set, this.position);
      this.listener = this.start();
      return;
    }
    if (detector !== this.set.circuit.detector) this.changeDetector();
    this.setLevels();
    this.ear.fitPhones(this.set.circuit);
    this.programmes.follow(this.set.onAir);
    this.retune();
  }

  setProgramme(index: number, loop: ProgrammeLoop | undefined): void {
    this.programmes.setProgramme(index, loop);
    this.programmes.follow(this.set.onAir);
    this.listenHere();
  }

  setHow(to: HowLoud): void {
    this.ear.how = to;
  }

  setVolume(level: Decibels): void {
    this.ear.setVolume(level);
  }

  setLifted(to: boolean): void {
    this.lifted = to;
    this.listener.setDevice(this.device());
  }

  setHeater(on: boolean): void {
    this.switchHeater(on);
  }

  playBand(to: BandPlayer | undefined): void {
    this.band = to;
    this.setLevels();
  }

  get cathode(): Kelvins | undefined {
    return this.heater?.temperature;
  }
  get trace() {
    return this.listener.trace;
  }
  get warnings() {
    return this.listener.warnings;
  }
  get stations() {
    return this.set.onAir.map(({ station, index }) => ({ name: station.name, frequency: station.frequency, index }));
  }

  /** A listener for the circuit as it is; also when other parts changed what the outputs are called. */
  private start(): Listener {
    const { transducer, assembly } = this.set.circuit;
    this.ports = portsOf(this.set);
    const listener = createListener(assembly.circuitAt(this.position, this.other), {
      device: this.device(),
      stations: this.sources(),
      pointer: this.pointer,
      rate: SOUND_RATE * STEPS,
      decimation: STEPS,
      window: WINDOW,
      largestBlock: BLOCK,
      outputs: [
        { kind: 'voltage', node: transducer.from, over: transducer.to },
        { kind: 'voltage', node: assembly.outputPort.from, over: assembly.outputPort.to },
      ],
      radioOutputs: this.hasScope
        ? [{ kind: 'voltage', node: assembly.carrierPort.from, over: assembly.carrierPort.to }]
        : [],
    });
    this.programmes.follow(this.set.onAir);
    this.listenHere();
    this.ear.fitPhones(this.set.circuit);
    return listener;
  }

  /** The next block through the circuit: the stations with the noise about the pointer, or a recorded band. */
  private receive(frames: number): void {
    const { listener, outs, waveRe: re, waveIm: im, pointer } = this;
    const { envelopes, quadratures } = this.programmes;
    const steps = frames * STEPS;
    if (this.band) {
      const frequency = this.band(steps, re, im, pointer);
      listener.process(frames, envelopes, outs, quadratures, { frequency, re, im });
    } else if (this.noiseVolts > 0) {
      this.hiss.fill(this.noiseVolts, steps, re, im);
      listener.process(frames, envelopes, outs, quadratures, { frequency: pointer, re, im });
    } else listener.process(frames, envelopes, outs, quadratures);
  }

  private retune(): void {
    this.pointer = pointerAt(this.set, this.position);
    this.other = otherAt(this.set, this.position, this.pointer);
    const { assembly } = this.set.circuit;
    const { listener, pointer } = this;
    listener.retune(listener.network(assembly.circuitAt(this.position, this.other), pointer), pointer);
    if (isLoop(this.set.circuit.set.aerial)) this.setLevels();
    this.listenHere();
  }

  /** Which stations are heard where the pointer stands, and how much noise comes in there. */
  private listenHere(): void {
    const { position, other, pointer } = this;
    this.programmes.listenAt(this.set, { position, other, pointer });
    this.noiseVolts = this.hasNoise ? noiseAt(this.set, pointer) : 0;
  }

  private sources(): HeardStation[] {
    const sources = sourcesOf(this.set, this.pointer, this.seed);
    return this.band ? sources.map((source) => ({ ...source, emf: 0 })) : sources;
  }

  private setLevels(): void {
    for (const [k, source] of this.sources().entries()) this.listener.setStation(k, source);
  }

  private device() {
    return this.lifted ? LIFTED : this.set.circuit.detector;
  }

  private changeDetector(): void {
    this.listener.setDevice(this.device());
    this.heater = this.heater && this.heaterOf()?.asWarmAs(this.heater);
    if (!this.heater) this.ear.warmth = 1;
  }

  private heaterOf(): ValveHeater | undefined {
    const { set, detector } = this.set.circuit;
    return this.reference === undefined ? undefined : ValveHeater.of(set, this.reference, detector, this.fields);
  }

  private switchHeater(on: boolean, cold = false): void {
    this.heater ??= this.heaterOf();
    if (!this.heater) return;
    this.heater.on = on;
    if (!cold) return;
    this.heater.cool();
    this.ear.warmth = 0;
  }

  /** A valve's cathode goes on warming or cooling, and its curve with it. */
  private warm(frames: number): void {
    if (!this.heater) return;
    this.heater.wait(frames / SOUND_RATE);
    const curve = this.heater.newCurve();
    if (curve && !this.lifted) this.listener.setDevice(curve.device, curve.rough);
  }
}
