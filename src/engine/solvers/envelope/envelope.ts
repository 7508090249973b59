import { type Warning, warning } from '../../facts/warning.ts';
import type { Circuit } from '../../network/elements.ts';
import type { Hertz, Volts } from '../../units/quantities.ts';
import { type Device, lawOf } from '../transient/devices.ts';
import { makeBank } from './bank.ts';
import type { EnvelopeLaw } from './device-law.ts';
import { addCarrier, type Sound, stretch, type Turning } from './drive.ts';
import { Decimator } from './envelope-resample.ts';
import { type Distant, EVERY, envelopeState, envelopeSteps, MOST_DISTANT } from './envelope-step.ts';
import { type EnvelopeNetwork, type EnvelopeOutput, envelopeNetwork, transfer } from './network.ts';
import { lawTable, type Reduced, reduceDevice } from './tables.ts';

export type { EnvelopeNetwork, EnvelopeOutput, Sound };

/** A station as a carrier; what it says comes with every block. */
export interface HeardStation {
  readonly frequency: Hertz;
  /** Peak of the unmodulated carrier at the source, V. */
  readonly emf: Volts;
  /** Phase at the start, rad. Default 0. */
  readonly phase?: number;
}

export interface ListenerOptions {
  /** The detector; of a pair, both. */
  readonly device: Device;
  readonly stations: readonly HeardStation[];
  /** Where the set is tuned: the middle of the coherent window. */
  readonly pointer: Hertz;
  /** Steps a second. Default 192000. */
  readonly rate?: number;
  /** Steps to one sample of sound and of the stations' envelopes. Default 4: 48 kHz. */
  readonly decimation?: number;
  /** What is put out, at the sound's rate. */
  readonly outputs: readonly EnvelopeOutput[];
  /**
   * Stations within this of the pointer beat with one another; others only weigh on the detector. Default 0.16 of the
   * rate, 31 kHz at 192 kHz: beyond that currents running straight between steps cost more than the beats are worth.
   */
  readonly window?: Hertz;
  /** Most samples of sound in one block. Default 128. */
  readonly largestBlock?: number;
  /**
   * Allow for the carrier's harmonics on the circuit: for strong signals on circuits with a loaded Q below about 15.
   * Costs a tenth of a second when made and a third more time. Default false.
   */
  readonly harmonics?: boolean;
  /** Largest carrier across the detector the tables are made for, V. Default: what the stations could give. */
  readonly strongest?: Volts;
  /** Radio-frequency voltages written at every step into `trace`, in the frame. */
  readonly radioOutputs?: readonly EnvelopeOutput[];
}

/** A wide-band wave at the source, V, at the engine's rate: noise, or a recorded band around `frequency`. */
export interface BandWave {
  readonly frequency: Hertz;
  readonly re: Sound;
  readonly im: Sound;
}

export interface Listener {
  /** Samples of sound a second. */
  readonly soundRate: number;
  /**
   * Go on by `frames` samples of sound. Allocates nothing and depends on nothing but what it was given.
   * @param envelopes amplitude of each station's carrier as a multiple of its emf (1 + modulation), one per station.
   * @param out one buffer per output. @param quadrature imaginary parts, for fading that turns the sidebands.
   */
  process(
    frames: number,
    envelopes: readonly Sound[],
    out: readonly Sound[],
    quadrature?: readonly (Sound | undefined)[],
    wave?: BandWave,
  ): void;
  /** Take apart a circuit for `retune`; plain data that another thread may make. */
  network(circuit: Circuit, frequency: Hertz): EnvelopeNetwork;
  /** Be at this circuit and pointer by the end of the next block, every value gliding there. */
  retune(network: EnvelopeNetwork, pointer: Hertz): void;
  /**
   * Another whisker spot, a warmer cathode: takes effect at the next block, what was stored stays.
   * @param rough tables made quickly, good to a decibel: for a curve that another soon replaces.
   */
  setDevice(device: Device, rough?: boolean): void;
  /** Level and frequency of a station, from the next block on, the level gliding. */
  setStation(index: number, station: HeardStation): void;
  /** Written in by every block when `radioOutputs` were asked for: step by step, in the frame of the pointer. */
  readonly trace: readonly { readonly re: Float64Array; readonly im: Float64Array }[];
  /** The carrier's current through the detector beside `trace`. */
  readonly traceCurrent: { readonly re: Float64Array; readonly im: Float64Array };
  readonly meters: Meters;
  readonly warnings: readonly Warning[];
}

/** As at the end of the last block. */
export interface Meters {
  /** Peak carrier across the detector, V. */
  carrier: Volts;
  /** Mean current through it, A. */
  meanCurrent: number;
  /** Mean iterations a step so far. */
  iterations: number;
  /** Blocks whose numbers had to be given up. Above 0 something is wrong with what was put in. */
  lost: number;
}

/** Steps between two settings of the filters while they glide. */
const GLIDE = 16;

/**
 * The sound of a set, from the envelopes of all stations: the whole linear network in a frame that turns with the
 * pointer, the detector solved with it at every step.
 * @throws RangeError for a circuit without one detector (or two alike), and for rates and sizes that cannot be.
 */
export function createListener(circuit: Circuit, options: ListenerOptions): Listener {
  const { rate = 192_000, decimation = 4, outputs, largestBlock = 128, radioOutputs = [] } = options;
  const { window = 0.16 * rate } = options;
  if (!(rate >= 8000 && rate <= 1e7)) throw new RangeError(`the rate must be from 8 kHz to 10 MHz, not ${rate}`);
  if (!(Number.isInteger(decimation) && decimation >= 1 && decimation <= 64))
    throw new RangeError(`the decimation must be a whole number from 1 to 64, not ${decimation}`);
  if (!(window > 0 && window < rate / 2))
    throw new RangeError(`a window of ${window} Hz does not fit ${rate} steps a second`);
  if (!(Number.isInteger(largestBlock) && largestBlock >= 1)) throw new RangeError('largestBlock must be 1 or more');
  if (!(options.pointer > 0)) throw new RangeError(`the pointer must be above 0 Hz, not ${options.pointer}`);
  const h = 1 / rate;
  const stations = options.stations.map((s) => ({ ...s }));
  const K = stations.length;
  const most = largestBlock * decimation;

  const backwards = Math.max(5, 2.2 * (options.strongest ?? 0));
  let reduced: Reduced = reduceDevice(options.device, backwards);
  let closed = lawOf(options.device);
  const networkOf = (c: Circuit, frequency: Hertz) =>
    envelopeNetwork(c, { frequency, law: closed, leakage: reduced.leakage, radioOutputs, audioOutputs: outputs });
  let current = networkOf(circuit, options.pointer);
  let lastCircuit = circuit;
  let law: EnvelopeLaw = reduced.law;
  const strongest = () => {
    if (options.strongest !== undefined) return options.strongest;
    let sum = 0;
    for (const s of stations) {
      const { source } = transfer(current.radio, 2 * Math.PI * s.frequency);
      sum += 2 * s.emf * Math.hypot(source.re, source.im);
    }
    return Math.min(Math.max(sum, 0.3), 60);
  };
  const makeLaw = (rough = false): EnvelopeLaw => {
    if (!options.harmonics && reduced.curve === undefined) return reduced.law;
    const harmonics = options.harmonics ? current.harmonics : [];
    return { ...reduced.law, table: lawTable(reduced, { highest: strongest() / reduced.law.slope, harmonics, rough }) };
  };
  law = makeLaw();

  const radio = makeBank(radioOutputs.length, h, false);
  const audio = makeBank(outputs.length, h, true);
  let frame = 2 * Math.PI * options.pointer;
  radio.aim(current.radio, frame);
  audio.aim(current.audio, 0);
  radio.set(1, frame);
  audio.set(1, 0);
  let pointer = options.pointer;
  let bias = current.bias;
  const outputBias = Float64Array.from(current.outputBias);

  // Each station: near the pointer it is part of the drive, by `near`; otherwise distant, by 1 − `near`.
  const near = Float64Array.from(stations, (s) => (Math.abs(s.frequency - pointer) < window ? 1 : 0));
  const nearTo = near.slice();
  const emf = Float64Array.from(stations, (s) => s.emf);
  const emfTo = emf.slice();
  const angle = Float64Array.from(stations, (s) => s.phase ?? 0);
  const open = Array.from({ length: 2 }, () => ({
    hr: new Float64Array(K),
    hi: new Float64Array(K),
    pr: new Float64Array(K),
    pi: new Float64Array(K),
    kr: new Float64Array(K),
    ki: new Float64Array(K),
  }));
  const view = (into: (typeof open)[number], network: EnvelopeNetwork) => {
    for (let k = 0; k < K; k++) {
      const t = transfer(network.radio, 2 * Math.PI * stations[k].frequency);
      into.hr[k] = t.source.re;
      into.hi[k] = t.source.im;
      into.pr[k] = t.sourceSlope.re;
      into.pi[k] = t.sourceSlope.im;
      into.kr[k] = -t.current.re;
      into.ki[k] = -t.current.im;
    }
  };
  view(open[0], current);
  view(open[1], current);

  const history = new Float64Array(K * 6); // last three of the envelope, real then imaginary
  history.fill(1);
  for (let k = 0; k < K; k++) history.fill(0, k * 6 + 3, k * 6 + 6);
  const past3 = new Float64Array(3);
  const turning: Turning = { re: 1, im: 0, turnRe: 1, turnIm: 0 };
  const glideFrames = Math.max(1, Math.round(GLIDE / decimation));
  /** Keep up with a station that is not heard at all. */
  const remember = (envelope: Sound, frames: number, at: number) => {
    for (let i = 0; i < 3; i++) {
      const f = frames - 3 + i;
      history[at + i] = f >= 0 ? envelope[f] : history[at + i + frames];
    }
  };
  const envRe = new Float64Array(most);
  const envIm = new Float64Array(most);
  const sourceRe = new Float64Array(most);
  const sourceIm = new Float64Array(most);
  const ticks = Math.ceil(most / EVERY) + 1;
  const member = new Int32Array(MOST_DISTANT); // station of each distant place
  const lastTick = new Float64Array(2 * K);
  for (let k = 0; k < K; k++) lastTick[2 * k] = emf[k] * (1 - near[k]);
  const xOf = new Float64Array(K);
  const distant: Distant = {
    count: 0,
    open: new Float64Array(MOST_DISTANT),
    kr: new Float64Array(MOST_DISTANT),
    ki: new Float64Array(MOST_DISTANT),
    x: new Float64Array(MOST_DISTANT),
  };
  const traces = () => ({
    re: new Float64Array(radioOutputs.length > 0 ? most : 0),
    im: new Float64Array(radioOutputs.length > 0 ? most : 0),
  });
  const trace = radioOutputs.map(traces);
  const traceCurrent = traces();
  const block = {
    sourceRe,
    sourceIm,
    distantOpen: new Float64Array(ticks * MOST_DISTANT),
    audio: outputs.map(() => new Float64Array(most)),
    radio: radioOutputs.length > 0 ? trace : undefined,
    current: radioOutputs.length > 0 ? traceCurrent : undefined,
  };
  const down = outputs.map(() => new Decimator(decimation, most));
  const state = envelopeState();
  let waveAngle = 0;
  let pending: { network: EnvelopeNetwork; pointer: number } | undefined;
  let pendingDevice: { device: Device; rough: boolean } | undefined;
  const meters: Meters = { carrier: 0, meanCurrent: 0, iterations: 0, lost: 0 };
  const warnings = [...current.warnings];
  if (K > MOST_DISTANT) warnings.push(warning('waves.distant-stations-left-out', { counted: MOST_DISTANT }));
  settle();

  /** With a bias cell: the steady state it holds, found by letting the mean current settle in long steps. */
  function settle(): void {
    if (bias === 0 && law.off === 1) return;
    // Resistance the mean current meets: minus the audio response at rest.
    const atRest = transfer(current.audio, 0).current.re;
    const R = Math.max(-atRest, 0);
    let u = 0;
    for (let i = 0; i < 200; i++) {
      const w = Math.exp(u);
      const f = bias / law.slope - (R * law.current * (w - law.off)) / law.slope - u - tableAt(u);
      const step = f / ((R * law.current * w) / law.slope + 1);
      u += step > 0 ? Math.log1p(step) : Math.max(step, -3);
      if (Math.abs(step) < 1e-10) break;
    }
    state.u = u;
    state.i0 = law.current * (Math.exp(u) - law.off);
    audio.rest(state.i0);
  }
  function tableAt(u: number): number {
    const t = law.table;
    if (!t) return 0;
    const c = Math.min(Math.max((u - t.lowest) * t.perUnit, 0), t.rows - 1.000001);
    const j = c | 0;
    return t.values[3 * j] + (c - j) * (t.values[3 * j + 3] - t.values[3 * j]);
  }

  function changeDevice(device: Device, rough: boolean): void {
    const before = law;
    const closedBefore = closed;
    const leakageBefore = reduced.leakage;
    reduced = reduceDevice(device, backwards);
    closed = lawOf(device);
    const series = (l: typeof closed) => l?.seriesResistance ?? 0;
    const leak = (l: typeof closed) => l?.leakage ?? 0;
    if (
      series(closed) !== series(closedBefore) ||
      leak(closed) !== leak(closedBefore) ||
      reduced.leakage !== leakageBefore
    ) {
      pending = { network: networkOf(lastCircuit, pending?.pointer ?? pointer), pointer: pending?.pointer ?? pointer };
    }
    law = makeLaw(rough);
    state.x *= before.slope / law.slope;
    for (let k = 0; k < K; k++) xOf[k] *= before.slope / law.slope;
    for (let k = 0; k < distant.count; k++) distant.x[k] *= before.slope / law.slope;
    state.u = Math.log(Math.max(state.i0 / law.current + law.off, 1e-7));
  }

  /** Take up what was asked for since the last block. @returns whether anything glides. */
  function begin(): boolean {
    if (pendingDevice !== undefined) {
      const { device, rough } = pendingDevice;
      pendingDevice = undefined;
      changeDevice(device, rough);
    }
    let gliding = false;
    if (pending !== undefined) {
      const { network } = pending;
      pointer = pending.pointer;
      pending = undefined;
      radio.aim(network.radio, 2 * Math.PI * pointer);
      audio.aim(network.audio, 0);
      current = network;
      view(open[1], network);
      gliding = true;
    }
    for (let k = 0; k < K; k++) {
      const off = Math.abs(stations[k].frequency - pointer);
      // A little reluctance, so that a station on the edge does not change sides all the time.
      nearTo[k] = off < window * (nearTo[k] > 0.5 ? 1.05 : 0.95) ? 1 : 0;
      if (nearTo[k] !== near[k] || emfTo[k] !== emf[k]) gliding = true;
    }
    gather();
    return gliding;
  }

  /** The stations that are distant, at least in part, strongest first if there are too many. */
  function gather(): void {
    for (let k = 0; k < distant.count; k++) xOf[member[k]] = distant.x[k];
    let n = 0;
    for (let k = 0; k < K && n < MOST_DISTANT; k++) {
      if (near[k] === 1 && nearTo[k] === 1) {
        xOf[k] = lastTick[2 * k] = lastTick[2 * k + 1] = 0;
        continue;
      }
      // Too faint to move the detector: ln I0 = x²/4 below a millionth.
      const size =
        Math.max(emf[k], emfTo[k]) *
        Math.sqrt(Math.max(open[0].hr[k] ** 2 + open[0].hi[k] ** 2, open[1].hr[k] ** 2 + open[1].hi[k] ** 2));
      if (size < 2e-3 * law.slope) {
        xOf[k] = 0;
        continue;
      }
      member[n++] = k;
    }
    distant.count = n;
    for (let k = 0; k < n; k++) distant.x[k] = xOf[member[k]];
  }

  /** Add a near station to the drive; its envelope is complex when `turned`, and then in envRe, envIm. */
  function drive(k: number, frames: number, envelope: Sound, turned: boolean, frame0: number, frame1: number): void {
    const w = 2 * Math.PI * stations[k].frequency;
    const stride = frame0 === frame1 && near[k] === nearTo[k] && emf[k] === emfTo[k] ? frames : glideFrames;
    for (let from = 0; from < frames; from += stride) {
      const to = Math.min(from + stride, frames);
      const share = to / frames;
      const off = w - (frame0 + share * (frame1 - frame0));
      // Straight runs between steps lose sinc² of the offset; made good here.
      const y = (off * h) / 2;
      const sinc = Math.abs(y) < 1e-4 ? 1 : Math.sin(y) / y;
      const gain = Math.max(sinc, 0.3) ** -2;
      const g0 = gain * levelAt(k, from / frames) * nearAt(k, from / frames);
      const g1 = gain * levelAt(k, share) * nearAt(k, share);
      const steps = (to - from) * decimation;
      turning.re = Math.cos(angle[k]);
      turning.im = Math.sin(angle[k]);
      turning.turnRe = Math.cos(off * h);
      turning.turnIm = Math.sin(off * h);
      const slope = (g1 - g0) / steps;
      if (!turned) addCarrier(envelope, from, to, decimation, history, 6 * k, turning, g0, slope, sourceRe, sourceIm);
      else turn(from * decimation, to * decimation, g0, slope);
      const a = angle[k] + off * h * steps;
      angle[k] = a - 2 * Math.PI * Math.round(a / (2 * Math.PI));
    }
  }
  function turn(from: number, to: number, gain: number, slope: number): void {
    const { turnRe, turnIm } = turning;
    let x = turning.re;
    let z = turning.im;
    let g = gain;
    for (let n = from; n < to; n++) {
      const t = x * turnRe - z * turnIm;
      z = x * turnIm + z * turnRe;
      x = t;
      g += slope;
      const e = g * envRe[n];
      const f = g * envIm[n];
      sourceRe[n] += e * x - f * z;
      sourceIm[n] += e * z + f * x;
    }
  }
  const levelAt = (k: number, t: number) => emf[k] + t * (emfTo[k] - emf[k]);
  const nearAt = (k: number, t: number) => near[k] + t * (nearTo[k] - near[k]);

  /** Open-circuit voltage over s of distant place p at every tick. */
  function lift(p: number, k: number, steps: number, quadrature: boolean): void {
    const [a, b] = open;
    const n = distant.count;
    const perSlope = 1 / law.slope;
    for (let at = 0; at < steps; at += EVERY) {
      const t = at / steps;
      const level = levelAt(k, t) * (1 - nearAt(k, t));
      const er = level * envRe[at];
      const ei = quadrature ? level * envIm[at] : 0;
      const dr = (er - lastTick[2 * k]) / (EVERY * h);
      const di = (ei - lastTick[2 * k + 1]) / (EVERY * h);
      lastTick[2 * k] = er;
      lastTick[2 * k + 1] = ei;
      const hr = a.hr[k] + t * (b.hr[k] - a.hr[k]);
      const hi = a.hi[k] + t * (b.hi[k] - a.hi[k]);
      const pr = a.pr[k] + t * (b.pr[k] - a.pr[k]);
      const pi = a.pi[k] + t * (b.pi[k] - a.pi[k]);
      const vr = hr * er - hi * ei + pr * dr - pi * di;
      const vi = hr * ei + hi * er + pr * di + pi * dr;
      block.distantOpen[(at / EVERY) * n + p] = Math.sqrt(vr * vr + vi * vi) * perSlope;
    }
  }

  function addWave(wave: BandWave, steps: number, frame0: number, frame1: number): void {
    const w = 2 * Math.PI * wave.frequency;
    for (let from = 0; from < steps; from += GLIDE) {
      const to = Math.min(from + GLIDE, steps);
      const off = w - (frame0 + (to / steps) * (frame1 - frame0));
      const cr = Math.cos(off * h);
      const ci = Math.sin(off * h);
      let x = Math.cos(waveAngle);
      let z = Math.sin(waveAngle);
      for (let n = from; n < to; n++) {
        const t = x * cr - z * ci;
        z = x * ci + z * cr;
        x = t;
        const re = wave.re[n];
        const im = wave.im[n];
        sourceRe[n] += re * x - im * z;
        sourceIm[n] += re * z + im * x;
      }
      waveAngle += off * h * (to - from);
      waveAngle -= 2 * Math.PI * Math.round(waveAngle / (2 * Math.PI));
    }
  }

  return {
    soundRate: rate / decimation,
    process(frames, envelopes, out, quadrature, wave) {
      const steps = frames * decimation;
      if (!(steps > 0 && steps <= most))
        throw new RangeError(`a block has from 1 to ${largestBlock} samples, not ${frames}`);
      const frame0 = frame;
      const bias0 = bias;
      const gliding = begin();
      const frame1 = 2 * Math.PI * pointer;
      for (let n = 0; n < steps; n++) sourceRe[n] = sourceIm[n] = 0;
      let place = 0;
      for (let k = 0; k < K; k++) {
        const isDistant = place < distant.count && member[place] === k;
        const isNear = near[k] > 0 || nearTo[k] > 0;
        const re = envelopes[k];
        const im = quadrature?.[k];
        const at = 6 * k;
        const turned = im !== undefined || history[at + 3] !== 0 || history[at + 4] !== 0 || history[at + 5] !== 0;
        if (isDistant || turned) {
          const stride = isNear ? 1 : EVERY;
          if (isNear && !turned) {
            // Both ways at once, for the length of a glide: the drive moves the history on.
            for (let i = 0; i < 3; i++) past3[i] = history[at + i];
            stretch(re, frames, decimation, stride, past3, 0, envRe);
          } else stretch(re, frames, decimation, stride, history, at, envRe);
          if (turned) stretch(im, frames, decimation, stride, history, at + 3, envIm);
        }
        if (isNear) drive(k, frames, re, turned, frame0, frame1);
        if (isDistant) lift(place++, k, steps, turned);
        if (!isNear && !isDistant) remember(re, frames, at);
      }
      if (wave !== undefined) addWave(wave, steps, frame0, frame1);
      const bias1 = current.bias;
      const sub = gliding ? GLIDE : steps;
      for (let from = 0; from < steps; from += sub) {
        const to = Math.min(from + sub, steps);
        const share = to / steps;
        if (gliding) {
          frame = frame0 + share * (frame1 - frame0);
          radio.set(share, frame);
          audio.set(share, 0);
          bias = bias0 + share * (bias1 - bias0);
          for (let p = 0; p < distant.count; p++) {
            const k = member[p];
            distant.kr[p] = open[0].kr[k] + share * (open[1].kr[k] - open[0].kr[k]);
            distant.ki[p] = open[0].ki[k] + share * (open[1].ki[k] - open[0].ki[k]);
          }
        } else if (from === 0) {
          for (let p = 0; p < distant.count; p++) {
            distant.kr[p] = open[1].kr[member[p]];
            distant.ki[p] = open[1].ki[member[p]];
          }
        }
        envelopeSteps(radio, audio, law, distant, block, bias, outputBias, state, from, to);
      }
      if (gliding) {
        for (let k = 0; k < K; k++) {
          near[k] = nearTo[k];
          emf[k] = emfTo[k];
        }
        copyView(open[1], open[0]);
        for (let o = 0; o < outputBias.length; o++) outputBias[o] = current.outputBias[o];
      }
      if (!(Number.isFinite(state.x) && Number.isFinite(state.u) && Number.isFinite(state.v))) {
        meters.lost++;
        radio.zr.fill(0);
        radio.zi.fill(0);
        audio.zr.fill(0);
        audio.zi.fill(0);
        distant.x.fill(0);
        xOf.fill(0);
        state.sr = state.si = state.ir = state.ii = state.i0 = state.x = state.u = state.distant = state.v = 0;
        for (const a of block.audio) a.fill(0);
      }
      for (let o = 0; o < down.length; o++) down[o].run(block.audio[o], steps, out[o]);
      meters.carrier = state.x * law.slope;
      meters.meanCurrent = state.i0;
      meters.iterations = state.iterations / state.steps;
    },
    network: (c, frequency) => {
      lastCircuit = c;
      return networkOf(c, frequency);
    },
    retune(network, to) {
      if (!(to > 0)) throw new RangeError(`the pointer must be above 0 Hz, not ${to}`);
      pending = { network, pointer: to };
    },
    setDevice(device, rough = false) {
      lawOf(device);
      pendingDevice = { device, rough };
    },
    setStation(index, station) {
      if (!(index >= 0 && index < K)) throw new RangeError(`there is no station ${index}`);
      stations[index].frequency = station.frequency;
      stations[index].emf = station.emf;
      emfTo[index] = station.emf;
      view(open[1], current);
      view(open[0], current);
    },
    trace,
    traceCurrent,
    meters,
    warnings,
  };
}

function copyView<T extends Record<string, Float64Array>>(from: T, to: T): void {
  for (const key in from) to[key].set(from[key]);
}
