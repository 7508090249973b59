import { type Warning, warning } from '../../facts/warning.ts';
import type { Circuit } from '../../network/elements.ts';
import type { Hertz, Volts } from '../../units/quantities.ts';
import { type Device, lawOf } from '../transient/devices.ts';
import { Bank } from './bank.ts';
import { DistantStations } from './distant-stations.ts';
import type { Sound } from './drive.ts';
import { Decimator } from './envelope-resample.ts';
import { EVERY, envelopeState, MOST_DISTANT } from './envelope-state.ts';
import { envelopeSteps, type Stepped } from './envelope-step.ts';
import { FollowedDetector } from './followed-detector.ts';
import { HeardStations } from './heard-stations.ts';
import { junctionFor } from './junction.ts';
import type { BandWave, HeardStation, Listener, ListenerOptions, Meters } from './listener-types.ts';
import { type EnvelopeNetwork, transfer } from './network.ts';
import { settleBias } from './settle-bias.ts';
import { GLIDE, StationDrive } from './station-drive.ts';

/** Options with what is not given filled in. */
type Complete = ListenerOptions & Required<Pick<ListenerOptions, 'rate' | 'decimation' | 'window' | 'largestBlock'>>;

/** Carrier across the detector that tables are made for where none is stated: between these, V. */
const [LEAST_STRONGEST, MOST_STRONGEST] = [0.3, 60];

/**
 * The sound of a set, from the envelopes of all stations: the whole linear network in a frame that turns with the
 * pointer, the detector solved with it at every step.
 * @throws RangeError for a circuit without one detector (or two alike), and for rates and sizes that cannot be.
 */
export function createListener(circuit: Circuit, options: ListenerOptions): Listener {
  const { rate = 192_000, decimation = 4, largestBlock = 128 } = options;
  const { window = 0.16 * rate } = options;
  if (!(rate >= 8000 && rate <= 1e7)) throw new RangeError(`the rate must be from 8 kHz to 10 MHz, not ${rate}`);
  if (!(Number.isInteger(decimation) && decimation >= 1 && decimation <= 64))
    throw new RangeError(`the decimation must be a whole number from 1 to 64, not ${decimation}`);
  if (!(window > 0 && window < rate / 2))
    throw new RangeError(`a window of ${window} Hz does not fit ${rate} steps a second`);
  if (!(Number.isInteger(largestBlock) && largestBlock >= 1)) throw new RangeError('largestBlock must be 1 or more');
  if (!(options.pointer > 0)) throw new RangeError(`the pointer must be above 0 Hz, not ${options.pointer}`);
  return new EnvelopeListener(circuit, { ...options, rate, decimation, window, largestBlock });
}

/** A listener's state: what is followed, where it glides to, and what was asked for since the last block. */
class EnvelopeListener implements Listener {
  readonly soundRate: number;
  readonly trace: Listener['trace'];
  readonly traceCurrent: Listener['traceCurrent'];
  readonly meters: Meters = { carrier: 0, meanCurrent: 0, iterations: 0, lost: 0 };
  readonly warnings: Warning[];

  private readonly options: Complete;
  private readonly detector: FollowedDetector;
  private readonly heard: HeardStations;
  private readonly distant: DistantStations;
  private readonly drive: StationDrive;
  private readonly stepped: Stepped;
  private readonly down: readonly Decimator[];
  private circuit: Circuit;
  private current: EnvelopeNetwork;
  private pointer: Hertz;
  /** rad/s. */
  private frame: number;
  private bias: Volts;
  private pending: { readonly network: EnvelopeNetwork; readonly pointer: Hertz } | undefined;
  private pendingDevice: { readonly device: Device; readonly rough: boolean } | undefined;

  constructor(circuit: Circuit, options: Complete) {
    const { rate, decimation, outputs, largestBlock, radioOutputs = [], pointer, window, stations } = options;
    const h = 1 / rate;
    const most = largestBlock * decimation;
    this.options = options;
    this.soundRate = rate / decimation;
    this.circuit = circuit;
    this.pointer = pointer;
    this.frame = 2 * Math.PI * pointer;
    this.heard = new HeardStations(stations, pointer, window);
    this.detector = new FollowedDetector(options);
    this.current = this.detector.network(circuit, pointer);
    this.makeLaw(false);
    this.heard.view(this.current);
    this.heard.arriveViews();
    this.bias = this.current.bias;
    this.distant = new DistantStations(this.heard, most, h);
    this.drive = new StationDrive(this.heard, most, h, decimation);
    const radio = new Bank(radioOutputs.length, h, false);
    const audio = new Bank(outputs.length, h, true);
    radio.aim(this.current.radio, this.frame);
    audio.aim(this.current.audio, 0);
    radio.set(1, this.frame);
    audio.set(1, 0);
    const isTraced = radioOutputs.length > 0;
    const traced = () => ({ re: new Float64Array(isTraced ? most : 0), im: new Float64Array(isTraced ? most : 0) });
    this.trace = radioOutputs.map(traced);
    this.traceCurrent = traced();
    this.stepped = {
      radio,
      audio,
      junction: junctionFor(this.detector.law),
      distant: this.distant.distant,
      block: {
        sourceRe: this.drive.sourceRe,
        sourceIm: this.drive.sourceIm,
        distantOpen: this.distant.open,
        audio: outputs.map(() => new Float64Array(most)),
        radio: isTraced ? this.trace : undefined,
        current: isTraced ? this.traceCurrent : undefined,
      },
      outputBias: Float64Array.from(this.current.outputBias),
      state: envelopeState(),
    };
    this.down = outputs.map(() => new Decimator(decimation, most));
    this.warnings = [...this.current.warnings];
    if (stations.length > MOST_DISTANT)
      this.warnings.push(warning('waves.distant-stations-left-out', { counted: MOST_DISTANT }));
    settleBias(this.current, this.bias, this.detector.law, this.stepped.state, audio);
  }

  process(
    frames: number,
    envelopes: readonly Sound[],
    out: readonly Sound[],
    quadrature?: readonly (Sound | undefined)[],
    wave?: BandWave,
  ): void {
    const { decimation, largestBlock } = this.options;
    const steps = frames * decimation;
    if (!(steps > 0 && steps <= largestBlock * decimation))
      throw new RangeError(`a block has from 1 to ${largestBlock} samples, not ${frames}`);
    const { frame } = this;
    const isGliding = this.begin();
    const frameTo = 2 * Math.PI * this.pointer;
    this.drive.clear(steps);
    this.takeStations(frames, envelopes, quadrature, frame, frameTo, isGliding);
    if (wave !== undefined) this.drive.addWave(wave, steps, frame, frameTo);
    if (isGliding) this.glide(steps, frame, frameTo);
    else {
      this.distant.look(1);
      envelopeSteps(this.stepped, this.detector.law, this.bias, 0, steps);
    }
    this.end(steps, out);
  }

  network(circuit: Circuit, frequency: Hertz): EnvelopeNetwork {
    this.circuit = circuit;
    return this.detector.network(circuit, frequency);
  }

  retune(network: EnvelopeNetwork, pointer: Hertz): void {
    if (!(pointer > 0)) throw new RangeError(`the pointer must be above 0 Hz, not ${pointer}`);
    this.pending = { network, pointer };
  }

  setDevice(device: Device, rough = false): void {
    lawOf(device);
    this.pendingDevice = { device, rough };
  }

  setStation(index: number, { frequency, emf }: HeardStation): void {
    const { heard } = this;
    if (!(index >= 0 && index < heard.count)) throw new RangeError(`there is no station ${index}`);
    heard.frequency[index] = frequency;
    heard.emfTo[index] = emf;
    heard.view(this.current);
    heard.arriveViews();
  }

  /** Take up what was asked for since the last block. @returns whether anything glides. */
  private begin(): boolean {
    const { pendingDevice, heard } = this;
    this.pendingDevice = undefined;
    if (pendingDevice !== undefined) this.changeDevice(pendingDevice.device, pendingDevice.rough);
    const { pending } = this;
    this.pending = undefined;
    if (pending !== undefined) {
      const { radio, audio } = this.stepped;
      this.pointer = pending.pointer;
      this.current = pending.network;
      radio.aim(this.current.radio, 2 * Math.PI * this.pointer);
      audio.aim(this.current.audio, 0);
      heard.view(this.current);
    }
    const isChanging = heard.chooseSides(this.pointer, this.options.window);
    this.distant.gather(this.detector.law.slope);
    return isChanging || pending !== undefined;
  }

  private makeLaw(isRough: boolean): void {
    this.detector.makeLaw(this.current, () => this.strongest(), isRough);
  }

  /** Peak carrier across the detector that all stations together could give, V. */
  private strongest(): Volts {
    const { strongest } = this.options;
    if (strongest !== undefined) return strongest;
    const { heard, current } = this;
    let sum = 0;
    for (let k = 0; k < heard.count; k++) {
      const { source } = transfer(current.radio, 2 * Math.PI * heard.frequency[k]);
      sum += 2 * heard.emfTo[k] * Math.hypot(source.re, source.im);
    }
    return Math.min(Math.max(sum, LEAST_STRONGEST), MOST_STRONGEST);
  }

  private changeDevice(device: Device, isRough: boolean): void {
    const { detector, circuit, pending } = this;
    const { state } = this.stepped;
    const before = detector.law;
    if (detector.change(device)) {
      const pointer = pending?.pointer ?? this.pointer;
      this.pending = { network: detector.network(circuit, pointer), pointer };
    }
    this.makeLaw(isRough);
    const { law } = detector;
    const scale = before.slope / law.slope;
    state.x *= scale;
    this.distant.scale(scale);
    state.u = Math.log(Math.max(state.i0 / law.current + law.off, 1e-7));
  }

  /** Every station goes into the drive, or is lifted onto the detector's ticks, or both while it changes sides. */
  private takeStations(
    frames: number,
    envelopes: readonly Sound[],
    quadrature: readonly (Sound | undefined)[] | undefined,
    frame: number,
    frameTo: number,
    isGliding: boolean,
  ): void {
    const { heard, distant, drive } = this;
    const steps = frames * this.options.decimation;
    const { slope } = this.detector.law;
    let place = 0;
    for (let k = 0; k < heard.count; k++) {
      const isDistant = place < distant.distant.count && distant.member[place] === k;
      const isNear = heard.isNear(k);
      const re = envelopes[k];
      const im = quadrature?.[k];
      const isTurned = im !== undefined || heard.wasTurned(k);
      if (isDistant || isTurned) drive.take(k, frames, re, im, isTurned, isNear ? 1 : EVERY, isNear);
      if (isNear) drive.addStation(k, frames, re, isTurned, frame, frameTo);
      if (isDistant) distant.lift(place++, steps, drive.envRe, drive.envIm, isTurned, isGliding, slope);
      if (!isNear && !isDistant) heard.remember(k, re, frames);
    }
  }

  /** A block in which values glide from one network and pointer to the next, piece by piece. */
  private glide(steps: number, frame: number, frameTo: number): void {
    const { radio, audio, outputBias } = this.stepped;
    const { bias: biasBefore, current } = this;
    for (let from = 0; from < steps; from += GLIDE) {
      const to = Math.min(from + GLIDE, steps);
      const share = to / steps;
      this.frame = frame + share * (frameTo - frame);
      radio.set(share, this.frame);
      audio.set(share, 0);
      this.bias = biasBefore + share * (current.bias - biasBefore);
      this.distant.look(share);
      envelopeSteps(this.stepped, this.detector.law, this.bias, from, to);
    }
    this.heard.arrive();
    for (let o = 0; o < outputBias.length; o++) outputBias[o] = current.outputBias[o];
  }

  private end(steps: number, out: readonly Sound[]): void {
    const { meters, down } = this;
    const { state, block } = this.stepped;
    if (!(Number.isFinite(state.x) && Number.isFinite(state.u) && Number.isFinite(state.v))) this.giveUp();
    for (let o = 0; o < down.length; o++) down[o].run(block.audio[o], steps, out[o]);
    meters.carrier = state.x * this.detector.law.slope;
    meters.meanCurrent = state.i0;
    meters.iterations = state.iterations / state.steps;
  }

  /** Numbers that are none any more: everything is at rest again, and that is counted. */
  private giveUp(): void {
    const { radio, audio, block, state } = this.stepped;
    this.meters.lost++;
    for (const bank of [radio, audio]) {
      bank.zr.fill(0);
      bank.zi.fill(0);
    }
    this.distant.forget();
    const { iterations, steps } = state;
    Object.assign(state, envelopeState(), { iterations, steps });
    for (const a of block.audio) a.fill(0);
  }
}
