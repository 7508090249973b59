import { type Warning, warning } from '../../facts/warning.ts';
import type { Circuit, Element } from '../../network/elements.ts';
import { elementId } from '../../network/ids.ts';
import type { Complex } from '../../numerics/complex.ts';
import type { Hertz, Volts } from '../../units/quantities.ts';
import { type Modes, modesOf } from '../modes/modes.ts';
import { type OutputRow, type StateSpace, stateSpace } from '../modes/state-space.ts';
import type { JunctionLaw } from '../transient/devices.ts';
import { sourceWeights } from '../transient/sources.ts';

/** One term of a response: drive·output/(s − λ), its state scaled so that a unit of detector current drives it by `gain`. */
export interface ResponseTerm {
  readonly re: number;
  readonly im: number;
  /** 1, or 0 for what no detector's current moves. */
  readonly gain: number;
  /** Drive by the sources over that by the detector's current. */
  readonly source: Complex;
  /** Voltage across the junction, and at each output, per unit of state. */
  readonly junction: Complex;
  readonly outputs: readonly Complex[];
}

/** A response as terms and what passes at once. */
export interface Response {
  readonly terms: readonly ResponseTerm[];
  /** At the junction from the sources and from the current; then the same for every output. */
  readonly direct: { readonly source: Complex; readonly current: number };
  readonly outputs: readonly { readonly source: Complex; readonly current: number }[];
}

/** What the detector sees of a network: around the carrier, and from direct current up. Plain data. */
export interface EnvelopeNetwork {
  /** Carrier at which values that vary with frequency were read. */
  readonly frequency: Hertz;
  /** Drives are emfs; every mode and its mirror image has a term. */
  readonly radio: Response;
  /** From the mean current; of mirror images one, doubled. Real parts count. */
  readonly audio: Response;
  /** What the junction looks into at 2, 3, … times the carrier, Ω. */
  readonly harmonics: readonly Complex[];
  /** Mean voltage across the junction, and at the outputs, with no signal and no current. */
  readonly bias: Volts;
  readonly outputBias: readonly Volts[];
  readonly warnings: readonly Warning[];
}

/** Multiples of the carrier that a table of a device with its circuit allows for. */
const HARMONICS = 16;

export type EnvelopeOutput =
  | { readonly kind: 'voltage'; readonly node: string; readonly over?: string }
  | { readonly kind: 'coil current'; readonly coil: string };

export interface NetworkOptions {
  readonly frequency: Hertz;
  /** Where resistances that vary with frequency are read for the audio side. Default 1 kHz. */
  readonly audioFrequency?: Hertz;
  /** The detectors' closed law; its resistance and leakage become part of the network. */
  readonly law?: JunctionLaw;
  /** Leakage taken out of a curve, S. */
  readonly leakage?: number;
  /** Radio-frequency voltages to be followed, for meters. */
  readonly radioOutputs?: readonly EnvelopeOutput[];
  readonly audioOutputs?: readonly EnvelopeOutput[];
}

/**
 * Take a circuit apart for the envelope engine. Two detectors must be alike and wired as a pair, their carriers equal
 * and opposite (or equal) and their mean currents equal: full-wave and doubler.
 * @throws RangeError for any other number of detectors, and for a circuit that cannot be.
 */
export function envelopeNetwork(circuit: Circuit, options: NetworkOptions): EnvelopeNetwork {
  const { frequency, audioFrequency = 1000, radioOutputs = [], audioOutputs = [] } = options;
  const whole = withJunctions(circuit, options.law, options.leakage ?? 0);
  const w0 = 2 * Math.PI * frequency;
  const radio = stateSpace(whole, { frequency, audioFrequency });
  const D = radio.detectors.length;
  if (D !== 1 && D !== 2)
    throw new RangeError(`listening takes a circuit with one detector, or two that are alike, not ${D}`);
  const varies = whole.elements.some(
    (e) =>
      e.kind === 'impedance' ||
      (e.kind === 'resistor' && typeof e.resistance === 'function') ||
      (e.kind === 'inductor' && typeof e.resistance === 'function') ||
      (e.kind === 'capacitor' && e.lossTangent !== undefined && e.lossTangent !== 0),
  );
  const audio = varies ? stateSpace(whole, { frequency: audioFrequency, audioFrequency }) : radio;
  const trial = [w0, 2 * Math.PI * audioFrequency];
  const radioModes = modesOf(radio, trial);
  const audioModes = varies ? modesOf(audio, trial) : radioModes;
  const weights = sourceWeights(radio.emfs);
  const warnings = [...radio.warnings];
  const sign = D === 1 ? 0 : pairSign(radio, radioModes, weights, w0, warnings);
  const rows = (s: StateSpace, list: readonly EnvelopeOutput[]) =>
    list.map((o) => (o.kind === 'voltage' ? s.voltage(o.node, o.over) : s.current(o.coil)));
  const port = (s: StateSpace, second: number) =>
    D === 1 ? s.detectors[0].row : combine(s.detectors[0].row, s.detectors[1].row, 0.5, 0.5 * second);
  const volts = audio.emfs.map((e) => e.volts ?? 0);
  const quiet = audio.emfs.map(() => ({ re: 0, im: 0 }));
  const atRadio = response(radioModes, port(radio, sign), rows(radio, radioOutputs), weights, [1, sign], true);
  const audioRows = rows(audio, audioOutputs);
  return {
    frequency,
    radio: atRadio,
    audio: response(audioModes, port(audio, 1), audioRows, quiet, [1, 1], false),
    harmonics: Array.from({ length: HARMONICS - 1 }, (_, k) => {
      // The pulses of a pair are half a cycle apart: odd multiples meet like the carrier, even ones like each other.
      const n = k + 2;
      const even = D === 2 && n % 2 === 0;
      const { current } = transfer(
        even ? response(radioModes, port(radio, 1), [], weights, [1, 1], true) : atRadio,
        n * w0,
      );
      return { re: -current.re, im: -current.im };
    }),
    bias: restingVolts(audioModes, port(audio, 1), volts),
    outputBias: audioRows.map((r) => restingVolts(audioModes, r, volts)),
    warnings,
  };
}

/** The circuit with each detector replaced by its bare junction. */
function withJunctions(circuit: Circuit, law: JunctionLaw | undefined, leakage: number): Circuit {
  const Rs = law?.seriesResistance ?? 0;
  const G = (law?.leakage ?? 0) + leakage;
  if (Rs === 0 && G === 0) return circuit;
  return {
    elements: circuit.elements.flatMap((e): Element[] => {
      if (e.kind !== 'detector') return [e];
      const inner = Rs > 0 ? `${e.id}\u0000junction` : e.from;
      const parts: Element[] = [{ ...e, from: inner }];
      const resistor = (detail: string, from: string, to: string, resistance: number): Element => ({
        kind: 'resistor',
        id: elementId(`${e.id}:${detail}`),
        owner: e.owner,
        from,
        to,
        resistance,
      });
      if (Rs > 0) parts.push(resistor('series', e.from, inner, Rs));
      if (G > 0) parts.push(resistor('leakage', inner, e.to, 1 / G));
      return parts;
    }),
  };
}

const combine = (a: OutputRow, b: OutputRow, k: number, l: number): OutputRow => ({
  states: a.states.map((v, i) => k * v + l * b.states[i]),
  emfs: a.emfs.map((v, i) => k * v + l * b.emfs[i]),
  detectors: a.detectors.map((v, i) => k * v + l * b.detectors[i]),
});

/** Whether the carrier meets the second detector the same way round as the first (+1) or the other (−1). */
function pairSign(s: StateSpace, modes: Modes, weights: Complex[], w0: number, warnings: Warning[]): number {
  const [a, b] = s.detectors.map((d) => transfer(response(modes, d.row, [], weights, [1, 0], true), w0).source);
  const dot = a.re * b.re + a.im * b.im;
  const [p, q] = [Math.hypot(a.re, a.im), Math.hypot(b.re, b.im)];
  if (!(Math.min(p, q) > 0.7 * Math.max(p, q) && Math.abs(dot) > 0.9 * p * q)) {
    warnings.push(warning('waves.unequal-carriers'));
  }
  return dot < 0 ? -1 : 1;
}

function response(
  modes: Modes,
  junction: OutputRow,
  outputs: readonly OutputRow[],
  weights: readonly Complex[],
  currents: readonly number[],
  mirrored: boolean,
): Response {
  const E = weights.length;
  const D = junction.detectors.length;
  const at = modes.output(junction);
  const outs = outputs.map((r) => modes.output(r));
  const drive = (m: number, mirror: number): [Complex, Complex] => {
    let sr = 0;
    let si = 0;
    for (let k = 0; k < E; k++) {
      const [br, bi] = [modes.emfs.re[m * E + k], mirror * modes.emfs.im[m * E + k]];
      sr += br * weights[k].re - bi * weights[k].im;
      si += br * weights[k].im + bi * weights[k].re;
    }
    let gr = 0;
    let gi = 0;
    for (let k = 0; k < D; k++) {
      gr += modes.detectors.re[m * D + k] * currents[k];
      gi += mirror * modes.detectors.im[m * D + k] * currents[k];
    }
    return [
      { re: sr, im: si },
      { re: gr, im: gi },
    ];
  };
  const raw: { m: number; mirror: number; source: Complex; current: Complex }[] = [];
  for (let m = 0; m < modes.count; m++) {
    for (const mirror of mirrored && m >= modes.real ? [1, -1] : [1]) {
      const [source, current] = drive(m, mirror);
      raw.push({ m, mirror, source, current });
    }
  }
  const size = (z: Complex) => Math.hypot(z.re, z.im);
  const mostCurrent = Math.max(...raw.map((t) => size(t.current)), 1e-300);
  const terms = raw.map(({ m, mirror, source, current }): ResponseTerm => {
    const moved = size(current) > 1e-13 * mostCurrent;
    const unit = moved ? current : { re: 1, im: 0 };
    const twice = !mirrored && m >= modes.real ? 2 : 1;
    const scaled = (re: number, im: number): Complex => ({
      re: twice * (re * unit.re - mirror * im * unit.im),
      im: twice * (re * unit.im + mirror * im * unit.re),
    });
    const u2 = unit.re ** 2 + unit.im ** 2;
    return {
      re: modes.re[m],
      im: mirror * modes.im[m],
      gain: moved ? 1 : 0,
      source: {
        re: (source.re * unit.re + source.im * unit.im) / u2,
        im: (source.im * unit.re - source.re * unit.im) / u2,
      },
      junction: scaled(at.re[m], at.im[m]),
      outputs: outs.map((o) => scaled(o.re[m], o.im[m])),
    };
  });
  const direct = (r: OutputRow) => {
    let re = 0;
    let im = 0;
    let current = 0;
    for (let k = 0; k < E; k++) {
      re += r.emfs[k] * weights[k].re;
      im += r.emfs[k] * weights[k].im;
    }
    for (let k = 0; k < D; k++) current += r.detectors[k] * currents[k];
    return { source: { re, im }, current };
  };
  return { terms, direct: direct(junction), outputs: outputs.map(direct) };
}

/** What cells alone hold an output at. */
function restingVolts(modes: Modes, row: OutputRow, volts: readonly number[]): number {
  const E = volts.length;
  const c = modes.output(row);
  let v = 0;
  for (let k = 0; k < E; k++) v += row.emfs[k] * volts[k];
  for (let m = 0; m < modes.count; m++) {
    let br = 0;
    let bi = 0;
    for (let k = 0; k < E; k++) {
      br += modes.emfs.re[m * E + k] * volts[k];
      bi += modes.emfs.im[m * E + k] * volts[k];
    }
    const lr = Math.min(modes.re[m], -1e-6);
    const li = modes.im[m];
    const pr = c.re[m] * br - c.im[m] * bi;
    const pi = c.re[m] * bi + c.im[m] * br;
    v += ((m < modes.real ? -1 : -2) * (pr * lr + pi * li)) / (lr * lr + li * li);
  }
  return v;
}

/** Transfer of a whole response at angular frequency w, and its slope by jw. For audio responses only w near 0 means much. */
export function transfer(
  { terms, direct }: Response,
  w: number,
): { source: Complex; current: Complex; sourceSlope: Complex } {
  let [sr, si] = [direct.source.re, direct.source.im];
  let cr = direct.current;
  let ci = 0;
  let pr = 0;
  let pi = 0;
  for (const t of terms) {
    // junction/(jw − λ)
    const dr = -t.re;
    const di = w - t.im;
    const d = Math.max(dr * dr + di * di, 1e-12);
    const qr = (t.junction.re * dr + t.junction.im * di) / d;
    const qi = (t.junction.im * dr - t.junction.re * di) / d;
    cr += t.gain * qr;
    ci += t.gain * qi;
    const xr = qr * t.source.re - qi * t.source.im;
    const xi = qr * t.source.im + qi * t.source.re;
    sr += xr;
    si += xi;
    pr -= (xr * dr + xi * di) / d;
    pi -= (xi * dr - xr * di) / d;
  }
  return { source: { re: sr, im: si }, current: { re: cr, im: ci }, sourceSlope: { re: pr, im: pi } };
}
