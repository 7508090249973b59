import { type Warning, warning } from '../../../engine/facts/warning.ts';
import type { Hertz, Seconds, Volts } from '../../../engine/units/quantities.ts';
import { drawnExtremes } from './drawn-extremes.ts';
import { amplitudeAt, type Band, type Line, recordedBand, sidebandLines } from './lines.ts';
import { magnitudeOf, mapped, mappedBothWays, modulated, scaled } from './modulated.ts';
import { once } from './once.ts';
import { type BareOutput, bareOutput, settledVoltage } from './one-way.ts';
import { noParts, type SampledPart, type WaveParts } from './parts.ts';
import type { PointId } from './points.ts';
import { commonStep, envelopeOf, GRID, onGrid, type Programme, sidebandPassing } from './programme.ts';
import { constant, emptyRange, type Trace } from './range.ts';
import { recordedMean, recordedSmoothing, rippleTables } from './recorded-smoothing.ts';
import { movingAverage, SampledWave } from './sampled-wave.ts';
import { smoothed } from './smoothing.ts';
import type { Neighbour, WaveSpec } from './wave-spec.ts';

export interface Scale {
  readonly low: number;
  readonly high: number;
}

/**
 * A signal at up to six points of its path, for any stretch of time. Each `…Into` method fills `min` and `max` with the
 * true least and greatest value in each of `pixels` equal parts of t0…t1; nothing is allocated once a point has been
 * looked at.
 */
export interface Waves {
  readonly spec: WaveSpec;
  at(point: PointId, t: Seconds): number;
  extent(point: PointId, t0: Seconds, t1: Seconds, pixels: number, min: Float64Array, max: Float64Array): void;
  /** The same as they are to be drawn: where cycles cannot be told apart, no column holds less than one. */
  drawn(point: PointId, t0: Seconds, t1: Seconds, pixels: number, min: Float64Array, max: Float64Array): void;
  /** The running average: over about three cycles of the carrier, weighted as a bell. */
  mean(point: PointId, t0: Seconds, t1: Seconds, pixels: number, min: Float64Array, max: Float64Array): void;
  meanAt(point: PointId, t: Seconds): number;
  /** The upper envelope; @returns false where there is none to draw. */
  envelope(point: PointId, t0: Seconds, t1: Seconds, pixels: number, min: Float64Array, max: Float64Array): boolean;
  /** The steady waves it is made of. */
  lines(point: PointId): readonly Line[];
  bands(point: PointId): readonly Band[];
  /** Extremes for the scale of its drawing. */
  scale(point: PointId): Scale;
  /** Work out now what drawing these points takes, which otherwise waits until they are first looked at. */
  make(points: readonly PointId[], lines: boolean): void;
  /** What has been worked out so far. */
  readonly parts: WaveParts;
  readonly warnings: readonly Warning[];
}

/** Neighbours weaker than this do not show. */
const FAINTEST = 1e-4;
/** A neighbour of this share has cycles that show. */
const STRONG = 0.3;
/** Samples to a cycle of a strong neighbour (a weak one needs fewer), of the wanted carrier among neighbours, and alone. */
const PER_CYCLE = 24;
const PER_CYCLE_CROWDED = 40;
const PER_CYCLE_SMOOTHED = 64;
const MOST_SAMPLES = 900_000;

/**
 * @param parts what was worked out elsewhere for the same spec; whatever is missing is worked out when first needed.
 * @throws RangeError for a carrier, level or Q that cannot be.
 */
export function createWaves(given: WaveSpec, parts: WaveParts = noParts()): Waves {
  const spec = settled(given);
  const { carrier, depth, programme, neighbours } = spec;
  const w = 2 * Math.PI * carrier;
  // Loading deepens what is sent, but never turns the carrier over.
  const deeper = Math.min(spec.deepening ?? 1, Math.max(1, 1 / Math.max(depth, 1e-6)));
  const passing = (f: Hertz) => {
    const { gain, lag } = sidebandPassing(spec.loadedQ, carrier, f);
    return { gain: gain * deeper, lag };
  };
  const corner = carrier / (2 * spec.loadedQ);
  const recording = programme.kind === 'recording';
  const warnings: Warning[] = [];
  if (recording && given.neighbours.length > 0) warnings.push(warning('waves.recording-alone'));
  if (depth > 1) warnings.push(warning('waves.over-modulation'));

  const sampled = (part: SampledPart, make: () => SampledWave): (() => SampledWave) =>
    once(() => {
      const made = parts.sampled[part];
      const wave = made ? new SampledWave(made.samples, made.period, made) : make();
      parts.sampled[part] = wave;
      return wave;
    });
  /** Of a recording there is much to keep; of tones hardly anything. */
  const envelope = (part: SampledPart, make: () => Trace): (() => Trace) =>
    recording ? sampled(part, () => make() as SampledWave) : once(make);

  const sent = envelope('sent', () => envelopeOf(programme, depth, 1));
  const received = envelope('received', () =>
    envelopeOf(programme, recording ? depth * deeper : depth, 1, passing, corner),
  );
  const tones = programme.kind === 'tones' ? programme.tones.filter((t) => t.share > 0).map((t) => t.frequency) : [];

  /** Wanted and neighbours together on one grid that repeats. */
  const together = sampled('crowd', () => {
    const all = [carrier, ...tones, ...neighbours.flatMap((n) => [n.frequency, n.tone])];
    const period = 1 / commonStep(all);
    const rates = neighbours.map((s) => (s.share > 0.3 ? PER_CYCLE : s.share > 0.03 ? 16 : 10) * s.frequency);
    const n = sampleCount(period, Math.max(PER_CYCLE_CROWDED * carrier, ...rates));
    const total = new Float64Array(n);
    addStation(total, period, carrier, 1, received());
    for (const s of neighbours) addStation(total, period, s.frequency, s.share, envelopeOf(oneToneOf(s), s.depth, 1));
    return new SampledWave(total, period);
  });
  /** Undefined when the wanted one is alone. */
  const crowd = () => (neighbours.length === 0 ? undefined : together());
  /** On the tuned circuit, the wanted carrier being 1. */
  const tunedUnit = once((): Trace => crowd() ?? modulated(received(), w));
  const bare = once((): BareOutput => {
    const most = 1 + depth * Math.max(deeper, 1) + neighbours.reduce((sum, n) => sum + n.share * (1 + n.depth), 0);
    const output = bareOutput(
      {
        detector: spec.detector,
        resistance: spec.load.resistance,
        bias: spec.bias,
        bothHalves: spec.bothHalves,
        reach: spec.atDetector * most * 1.02,
      },
      parts.bare,
    );
    parts.bare = output.tables;
    return output;
  });

  /** The voltage across the capacitor: one period of it, or the slow mean of a recording. */
  const capacitor = sampled('capacitor', () => {
    const { atDetector } = spec;
    if (recording) return recordedMean(spec, received());
    const crowded = crowd();
    let drive: Float64Array;
    let period: number;
    if (crowded) {
      period = crowded.period;
      drive = new Float64Array(crowded.samples);
      for (let i = 0; i < drive.length; i++) drive[i] *= atDetector;
    } else {
      period = 1 / commonStep([carrier, ...tones]);
      drive = new Float64Array(sampleCount(period, PER_CYCLE_SMOOTHED * carrier));
      addStation(drive, period, carrier, atDetector, received());
    }
    return new SampledWave(smoothed(drive, period / drive.length, { ...spec, start: settledStart(spec) }), period);
  });

  const traces: Record<PointId, () => Trace> = {
    programme: envelope('programme', () => envelopeOf(programme, depth, 0)),
    carrier: once(() => modulated(constant(spec.atAerial), w)),
    modulated: once(() => modulated(scaled(sent(), spec.atAerial), w)),
    tuned: once(() => scaled(tunedUnit(), spec.atTuned)),
    detector: once(() => {
      const map = spec.bothHalves ? mappedBothWays : mapped;
      return map(scaled(tunedUnit(), spec.atDetector), bare().at);
    }),
    phones: once(() => {
      if (!recording) return capacitor();
      parts.ripple ??= rippleTables(spec);
      return recordedSmoothing(spec, received(), capacitor(), parts.ripple);
    }),
  };

  const averaging = (samples: Float64Array, period: number): SampledWave => {
    const cycle = samples.length / (period * carrier);
    let averaged = samples;
    for (const cycles of [1, 1, 2, 3]) averaged = movingAverage(averaged, cycles * cycle);
    return new SampledWave(averaged, period);
  };
  const crowdedDetectorMean = sampled('detectorMean', () => {
    const { samples, period } = together();
    const { at } = bare();
    const out = new Float64Array(samples);
    for (let i = 0; i < out.length; i++) out[i] = at(out[i] * spec.atDetector);
    return averaging(out, period);
  });
  const phonesMean = sampled('phonesMean', () => {
    const { samples, period } = capacitor();
    return averaging(samples as Float64Array, period);
  });
  const means: Record<PointId, () => Trace> = {
    programme: traces.programme,
    carrier: once(() => averageOfLines(linesOf.carrier(), traces.carrier())),
    modulated: once(() => averageOfLines(linesOf.modulated(), traces.modulated())),
    tuned: once(() => averageOfLines(linesOf.tuned(), traces.tuned())),
    detector: once(() =>
      crowd() ? crowdedDetectorMean() : mapped(magnitudeOf(received(), spec.atDetector), bare().mean),
    ),
    phones: () => (recording ? capacitor() : phonesMean()),
  };

  const crowdEnvelope = sampled('crowdEnvelope', () => {
    const crowded = together();
    const n = Math.ceil(crowded.samples.length / 6 / 8) * 8;
    const stations = [
      { w: 0, share: 1, e: received() },
      ...neighbours.map((s) => ({
        w: 2 * Math.PI * (s.frequency - carrier),
        share: s.share,
        e: envelopeOf(oneToneOf(s), s.depth, 1),
      })),
    ];
    const size = Float64Array.from({ length: n }, (_, i) => {
      const t = (i * crowded.period) / n;
      let re = 0;
      let im = 0;
      for (const { w: offset, share, e } of stations) {
        const a = share * e.at(t);
        re += a * Math.cos(offset * t);
        im += a * Math.sin(offset * t);
      }
      return Math.hypot(re, im);
    });
    return new SampledWave(size, crowded.period);
  });
  const envelopes: Partial<Record<PointId, () => Trace>> = {
    carrier: () => constant(spec.atAerial),
    modulated: once(() => magnitudeOf(sent(), spec.atAerial)),
    tuned: once(() => (crowd() ? scaled(crowdEnvelope(), spec.atTuned) : magnitudeOf(received(), spec.atTuned))),
    detector: once(() => {
      const outside = crowd() ? scaled(crowdEnvelope(), spec.atDetector) : magnitudeOf(received(), spec.atDetector);
      return mapped(outside, bare().at);
    }),
  };

  /** One period on a grid, for spectra of what is not a sum of carriers. */
  const gridOf = (point: 'detector' | 'phones') => {
    if (point === 'phones') return capacitor();
    const period = crowd()?.period ?? 1 / commonStep([carrier, ...tones]);
    // Closely, for the corner at zero has harmonics without end.
    const n = sampleCount(period, 256 * carrier);
    const trace = traces.detector();
    return { samples: Float64Array.from({ length: n }, (_, i) => trace.at((i * period) / n)), period };
  };
  const outputLines = (point: 'detector' | 'phones'): Line[] => {
    if (recording) return [];
    const { samples, period } = gridOf(point);
    const line = (frequency: Hertz, what: Line['what']): Line => ({
      frequency,
      amplitude: amplitudeAt(samples, period, frequency),
      what,
    });
    const audio = [...new Set(tones.flatMap((f) => [f, 2 * f, 3 * f]))].map((f) => line(f, 'programme'));
    const around = (f: Hertz): Line[] => [
      line(f, 'ripple'),
      ...tones.flatMap((t) => [line(f - t, 'ripple'), line(f + t, 'ripple')]),
    ];
    return [line(0, 'direct'), ...audio, ...around(carrier), ...around(2 * carrier)].sort(
      (a, b) => a.frequency - b.frequency,
    );
  };
  const linesOf: Record<PointId, () => readonly Line[]> = {
    programme: once(() =>
      programme.kind === 'recording'
        ? []
        : programme.tones.map(
            (t): Line => ({ frequency: t.frequency, amplitude: depth * t.share, phase: t.phase, what: 'programme' }),
          ),
    ),
    carrier: once((): Line[] => [{ frequency: carrier, amplitude: spec.atAerial, what: 'carrier' }]),
    modulated: once(() => sidebandLines(carrier, spec.atAerial, depth, programme)),
    tuned: once(() =>
      [
        ...sidebandLines(carrier, spec.atTuned, depth, programme, passing),
        ...neighbours.flatMap((s) =>
          sidebandLines(s.frequency, s.share * spec.atTuned, s.depth, oneToneOf(s)).map(
            (line): Line => ({ ...line, what: 'neighbour' }),
          ),
        ),
      ].sort((a, b) => a.frequency - b.frequency),
    ),
    detector: once(() => (parts.lines.detector ??= outputLines('detector'))),
    phones: once(() => (parts.lines.phones ??= outputLines('phones'))),
  };

  const scales: Record<PointId, () => Scale> = {
    programme: () => symmetric(Math.max(depth, 0.01)),
    carrier: () => symmetric(spec.atAerial * (1 + depth)),
    modulated: () => symmetric(spec.atAerial * (1 + depth)),
    tuned: once(() => symmetric(wholeExtent(traces.tuned()))),
    detector: once(() => {
      const reach = spec.atDetector * (1 + depth);
      const trace = traces.detector();
      const out = emptyRange();
      trace.extent(0, 1 / GRID + 1e-9, out);
      return { low: Math.min(out.min, 0), high: Math.max(out.max, reach * 1e-6) };
    }),
    phones: once(() => {
      const out = emptyRange();
      const trace = traces.phones();
      trace.extent(0, 60, out);
      return { low: Math.min(out.min, 0), high: Math.max(out.max, spec.atDetector * 1e-6) };
    }),
  };

  const slowest = Math.min(carrier, ...neighbours.filter((n) => n.share > STRONG).map((n) => n.frequency));
  const isAlone = (point: PointId): boolean => neighbours.length === 0 || point === 'carrier' || point === 'modulated';
  const cycleAt = (point: PointId): Seconds => (point === 'programme' ? 0 : 1 / (isAlone(point) ? carrier : slowest));
  const range = emptyRange();
  const fill = (trace: Trace, t0: number, t1: number, pixels: number, min: Float64Array, max: Float64Array): void => {
    trace.prepare?.(t0, t1, pixels);
    const each = (t1 - t0) / pixels;
    for (let i = 0; i < pixels; i++) {
      trace.extent(t0 + i * each, t0 + (i + 1) * each, range);
      min[i] = range.min;
      max[i] = range.max;
    }
  };
  return {
    spec,
    warnings,
    at: (point, t) => traces[point]().at(t),
    extent: (point, t0, t1, pixels, min, max) => fill(traces[point](), t0, t1, pixels, min, max),
    drawn: (point, t0, t1, pixels, min, max) =>
      drawnExtremes(traces[point](), cycleAt(point), !isAlone(point), t0, t1, pixels, min, max),
    mean: (point, t0, t1, pixels, min, max) => fill(means[point](), t0, t1, pixels, min, max),
    meanAt: (point, t) => means[point]().at(t),
    envelope(point, t0, t1, pixels, min, max) {
      const make = envelopes[point];
      if (!make) return false;
      fill(make(), t0, t1, pixels, min, max);
      return true;
    },
    lines: (point) => linesOf[point](),
    bands(point) {
      if (!recording || point === 'carrier') return [];
      return recordedBand(point === 'modulated' || point === 'tuned' ? carrier : 0);
    },
    scale: (point) => scales[point](),
    make(points, lines) {
      for (const point of points) {
        scales[point]();
        means[point]();
        envelopes[point]?.();
        if (lines) linesOf[point]();
      }
    },
    parts,
  };
}

const settledStart = (spec: WaveSpec): Volts =>
  settledVoltage({ ...spec, resistance: spec.load.resistance, amplitude: spec.atDetector });

const symmetric = (reach: number): Scale => ({ low: -reach, high: reach });

function wholeExtent(trace: Trace): number {
  const out = emptyRange();
  trace.extent(0, 60, out);
  return Math.max(Math.abs(out.min), Math.abs(out.max), 1e-12);
}

const oneToneOf = (n: Neighbour): Programme => ({ kind: 'tones', tones: [{ frequency: n.tone, share: 1, phase: 1 }] });

/** A multiple of 8, so that blocks fall on samples all the way round. */
const sampleCount = (period: Seconds, rate: Hertz): number =>
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

/** Width of the bell over a cycle of the lowest line: 1e-7 of it is left. */
const BELL = 0.95;

/** The running average of a sum of steady waves, each by the bell's own response: what is left of fast waves is next to nothing. */
function averageOfLines(lines: readonly Line[], whole: Trace): Trace {
  const lowest = Math.min(...lines.map((l) => l.frequency));
  const sigma = BELL / lowest;
  const left = (f: Hertz): number => Math.exp(-((2 * Math.PI * f * sigma) ** 2) / 2);
  const parts = lines.map((l) => ({
    a: l.amplitude * left(l.frequency),
    w: 2 * Math.PI * l.frequency,
    phase: l.phase ?? 0,
  }));
  const most = parts.reduce((sum, p) => sum + Math.abs(p.a), 0);
  const loudest = wholeExtent(whole);
  const at = (t: number): number => parts.reduce((sum, p) => sum + p.a * Math.cos(p.w * t + p.phase), 0);
  return {
    at,
    extent(a, b, out) {
      // Far below a pixel: the bound will do where a value would cost more than it shows.
      const value = most < 1e-5 * loudest ? 0 : at((a + b) / 2);
      out.min = value;
      out.max = value;
    },
  };
}

/** Onto the grid on which everything repeats, and within sense. */
function settled(spec: WaveSpec): WaveSpec {
  const need = (ok: boolean, what: string, got: number) => {
    if (!ok) throw new RangeError(`${what}, got ${got}`);
  };
  need(spec.carrier >= 20e3 && spec.carrier <= 10e6, 'carrier must be from 20 kHz to 10 MHz', spec.carrier);
  need(spec.depth >= 0 && spec.depth <= 3, 'depth must be from 0 to 3', spec.depth);
  need(spec.loadedQ > 0 && spec.loadedQ < 1e5, 'loaded Q must be above 0', spec.loadedQ);
  need(spec.atAerial > 0 && spec.atAerial < 1e5, 'voltage in the aerial must be above 0', spec.atAerial);
  need(spec.atTuned > 0 && spec.atTuned < 1e5, 'voltage on the tuned circuit must be above 0', spec.atTuned);
  need(spec.atDetector > 0 && spec.atDetector < 1e4, 'voltage at the detector must be above 0', spec.atDetector);
  const { programme } = spec;
  return {
    ...spec,
    carrier: onGrid(spec.carrier),
    programme:
      programme.kind === 'recording'
        ? programme
        : { ...programme, tones: programme.tones.map((t) => ({ ...t, frequency: onGrid(t.frequency) })) },
    neighbours:
      programme.kind === 'recording'
        ? []
        : spec.neighbours
            .filter((n) => n.share > FAINTEST)
            .map((n) => ({ ...n, frequency: onGrid(n.frequency), tone: onGrid(n.tone) })),
  };
}
