import { once } from '../../../engine/numerics/lazily.ts';
import type { Hertz, Seconds, Volts } from '../../../engine/units/quantities.ts';
import { modulated } from './modulated.ts';
import { type BareOutput, bareOutput, settledVoltage } from './one-way.ts';
import type { Trace } from './range.ts';
import { recordedMean } from './recorded-smoothing.ts';
import { SampledWave } from './sampled-wave.ts';
import { smoothed } from './smoothing.ts';
import type { WaveContext } from './wave-context.ts';
import { commonStep, envelopeOf, type WaveProgramme } from './wave-programme.ts';
import type { WaveNeighbour, WaveSpec } from './wave-spec.ts';

/** Samples to a cycle of a strong neighbour (a weak one needs fewer), of the wanted carrier among neighbours, and alone. */
const PER_CYCLE = 24;
const PER_CYCLE_CROWDED = 40;
const PER_CYCLE_SMOOTHED = 64;
const MOST_SAMPLES = 900_000;

/** What the six points of the path are made from, each worked out when first asked for. */
export interface Signals {
  /** Envelopes, the unmodulated carrier being 1. */
  sent(): Trace;
  received(): Trace;
  /** Wanted and neighbours on one grid that repeats; undefined when the wanted one is alone. */
  crowd(): SampledWave | undefined;
  /** Envelope of all of them. */
  crowdEnvelope(): SampledWave;
  /** On the tuned circuit, the wanted carrier being 1. */
  tunedUnit(): Trace;
  /** The detector with nothing to smooth its output. */
  bare(): BareOutput;
  /** The voltage across the capacitor: one period of it, or the slow mean of a recording. */
  capacitor(): SampledWave;
}

export function signalsOf(context: WaveContext): Signals {
  const { spec, w, deeper, recording, passing, envelope, sampled } = context;
  const { carrier, depth, programme, neighbours } = spec;
  const corner = carrier / (2 * spec.loadedQ);
  const sent = envelope('sent', () => envelopeOf(programme, depth, 1));
  const received = envelope('received', () =>
    envelopeOf(programme, recording ? depth * deeper : depth, 1, passing, corner),
  );
  const together = sampled('crowd', () => stationsTogether(context, received()));
  const crowd = () => (neighbours.length === 0 ? undefined : together());
  return {
    sent,
    received,
    crowd,
    crowdEnvelope: sampled('crowdEnvelope', () => envelopeTogether(spec, together(), received())),
    tunedUnit: once((): Trace => crowd() ?? modulated(received(), w)),
    bare: once(() => bareOf(context)),
    capacitor: sampled('capacitor', () =>
      recording ? recordedMean(spec, received()) : smoothedBy(context, crowd(), received()),
    ),
  };
}

function stationsTogether({ spec, tones }: WaveContext, received: Trace): SampledWave {
  const { carrier, neighbours } = spec;
  const period = 1 / commonStep([carrier, ...tones, ...neighbours.flatMap((n) => [n.frequency, n.tone])]);
  const rates = neighbours.map((s) => (s.share > 0.3 ? PER_CYCLE : s.share > 0.03 ? 16 : 10) * s.frequency);
  const total = new Float64Array(sampleCount(period, Math.max(PER_CYCLE_CROWDED * carrier, ...rates)));
  addStation(total, period, carrier, 1, received);
  for (const s of neighbours) addStation(total, period, s.frequency, s.share, envelopeOf(oneToneOf(s), s.depth, 1));
  return new SampledWave(total, period);
}

/** Size of the sum of all stations, each turning at its distance from the wanted carrier. */
function envelopeTogether({ carrier, neighbours }: WaveSpec, { samples, period }: SampledWave, received: Trace) {
  const n = Math.ceil(samples.length / 6 / 8) * 8;
  const stations = [
    { w: 0, share: 1, e: received },
    ...neighbours.map((s) => ({
      w: 2 * Math.PI * (s.frequency - carrier),
      share: s.share,
      e: envelopeOf(oneToneOf(s), s.depth, 1),
    })),
  ];
  const size = Float64Array.from({ length: n }, (_, i) => {
    const t = (i * period) / n;
    let re = 0;
    let im = 0;
    for (const { w, share, e } of stations) {
      const a = share * e.at(t);
      re += a * Math.cos(w * t);
      im += a * Math.sin(w * t);
    }
    return Math.hypot(re, im);
  });
  return new SampledWave(size, period);
}

function bareOf({ spec, deeper, parts }: WaveContext): BareOutput {
  const { depth, neighbours, detector, bias, bothHalves, load, atDetector } = spec;
  const most = 1 + depth * Math.max(deeper, 1) + neighbours.reduce((sum, n) => sum + n.share * (1 + n.depth), 0);
  const reach = atDetector * most * 1.02;
  const output = bareOutput({ detector, resistance: load.resistance, bias, bothHalves, reach }, parts.bare);
  parts.bare = output.tables;
  return output;
}

/** The capacitor followed through one period of the carrier and its programme, or of all stations together. */
function smoothedBy({ spec, tones }: WaveContext, crowd: SampledWave | undefined, received: Trace): SampledWave {
  const { carrier, atDetector } = spec;
  const period = crowd?.period ?? 1 / commonStep([carrier, ...tones]);
  let drive: Float64Array;
  if (crowd) {
    drive = new Float64Array(crowd.samples);
    for (let i = 0; i < drive.length; i++) drive[i] *= atDetector;
  } else {
    drive = new Float64Array(sampleCount(period, PER_CYCLE_SMOOTHED * carrier));
    addStation(drive, period, carrier, atDetector, received);
  }
  const start: Volts = settledVoltage({ ...spec, resistance: spec.load.resistance, amplitude: atDetector });
  return new SampledWave(smoothed(drive, period / drive.length, { ...spec, start }), period);
}

/** The programme of a neighbour. */
export const oneToneOf = (n: WaveNeighbour): WaveProgramme => ({
  kind: 'tones',
  tones: [{ frequency: n.tone, share: 1, phase: 1 }],
});

/** A multiple of 8, so that blocks fall on samples all the way round. */
export const sampleCount = (period: Seconds, rate: Hertz): number =>
  8 * Math.ceil(Math.min(MOST_SAMPLES, Math.max(64, period * rate)) / 8);

/** Add share·e(t)·cos(2πft) to one period of samples; whole cycles fit. */
function addStation(into: Float64Array, period: Seconds, f: Hertz, share: number, e: Trace): void {
  const n = into.length;
  const cycles = Math.round(f * period);
  const turn = (2 * Math.PI * cycles) / n;
  const c = Math.cos(turn);
  const s = Math.sin(turn);
  let x = 1;
  let y = 0;
  for (let i = 0; i < n; i++) {
    if (i % 1024 === 0) {
      // Afresh now and then, lest rounding builds up.
      const whole = (cycles * i) % n;
      x = Math.cos((2 * Math.PI * whole) / n);
      y = Math.sin((2 * Math.PI * whole) / n);
    }
    into[i] += share * e.at((i * period) / n) * x;
    const next = x * c - y * s;
    y = x * s + y * c;
    x = next;
  }
}
