import { once } from '../../../engine/numerics/lazily.ts';
import type { Hertz } from '../../../engine/units/quantities.ts';
import type { Line } from './lines.ts';
import { magnitudeOf, mapped, mappedBothWays, modulated, scaled } from './modulated.ts';
import type { PointId } from './points.ts';
import { constant, emptyRange, type ScaleEnds, type Trace } from './range.ts';
import { recordedSmoothing, rippleTables } from './recorded-smoothing.ts';
import { movingAverage, SampledWave } from './sampled-wave.ts';
import { type WaveContext, wholeExtent } from './wave-context.ts';
import { envelopeOf, GRID } from './wave-programme.ts';
import type { Signals } from './wave-signals.ts';

export type AtPoint<T> = Readonly<Record<PointId, () => T>>;

/** The wave itself at each point. */
export function tracesOf({ spec, w, recording, parts, envelope }: WaveContext, signals: Signals): AtPoint<Trace> {
  const { programme, depth, atAerial, atTuned, atDetector, bothHalves } = spec;
  const { sent, received, tunedUnit, bare, capacitor } = signals;
  return {
    programme: envelope('programme', () => envelopeOf(programme, depth, 0)),
    carrier: once(() => modulated(constant(atAerial), w)),
    modulated: once(() => modulated(scaled(sent(), atAerial), w)),
    tuned: once(() => scaled(tunedUnit(), atTuned)),
    detector: once(() => (bothHalves ? mappedBothWays : mapped)(scaled(tunedUnit(), atDetector), bare().at)),
    phones: once(() => {
      if (!recording) return capacitor();
      parts.ripple ??= rippleTables(spec);
      return recordedSmoothing(spec, received(), capacitor(), parts.ripple);
    }),
  };
}

/** Its running average over about three cycles of the carrier, weighted as a bell. */
export function meansOf(
  { spec, recording, sampled }: WaveContext,
  { crowd, received, bare, capacitor }: Signals,
  traces: AtPoint<Trace>,
  lines: AtPoint<readonly Line[]>,
): AtPoint<Trace> {
  const { carrier, atDetector } = spec;
  const averaging = (samples: Float64Array, period: number): SampledWave => {
    const cycle = samples.length / (period * carrier);
    let averaged = samples;
    for (const cycles of [1, 1, 2, 3]) averaged = movingAverage(averaged, cycles * cycle);
    return new SampledWave(averaged, period);
  };
  const crowdedDetectorMean = sampled('detectorMean', () => {
    const { samples, period } = crowd()!;
    const { at } = bare();
    const out = new Float64Array(samples);
    for (let i = 0; i < out.length; i++) out[i] = at(out[i] * atDetector);
    return averaging(out, period);
  });
  const phonesMean = sampled('phonesMean', () => {
    const { samples, period } = capacitor();
    return averaging(samples as Float64Array, period);
  });
  const ofLines = (point: PointId) => once(() => averageOfLines(lines[point](), traces[point]()));
  return {
    programme: traces.programme,
    carrier: ofLines('carrier'),
    modulated: ofLines('modulated'),
    tuned: ofLines('tuned'),
    detector: once(() => (crowd() ? crowdedDetectorMean() : mapped(magnitudeOf(received(), atDetector), bare().mean))),
    phones: () => (recording ? capacitor() : phonesMean()),
  };
}

/** Its upper envelope, where there is one to draw. */
export function envelopesOf(
  { spec }: WaveContext,
  { sent, received, crowd, crowdEnvelope, bare }: Signals,
): Partial<AtPoint<Trace>> {
  const { atAerial, atTuned, atDetector } = spec;
  const outside = (level: number) => (crowd() ? scaled(crowdEnvelope(), level) : magnitudeOf(received(), level));
  return {
    carrier: () => constant(atAerial),
    modulated: once(() => magnitudeOf(sent(), atAerial)),
    tuned: once(() => outside(atTuned)),
    detector: once(() => mapped(outside(atDetector), bare().at)),
  };
}

const symmetric = (reach: number): ScaleEnds => ({ low: -reach, high: reach });

/** Extremes for the scale of its drawing. */
export function scalesOf({ spec }: WaveContext, traces: AtPoint<Trace>): AtPoint<ScaleEnds> {
  const { depth, atAerial, atDetector } = spec;
  const extremes = (trace: Trace, until: number, least: number): ScaleEnds => {
    const out = emptyRange();
    trace.extent(0, until, out);
    return { low: Math.min(out.min, 0), high: Math.max(out.max, least) };
  };
  return {
    programme: () => symmetric(Math.max(depth, 0.01)),
    carrier: () => symmetric(atAerial * (1 + depth)),
    modulated: () => symmetric(atAerial * (1 + depth)),
    tuned: once(() => symmetric(wholeExtent(traces.tuned()))),
    detector: once(() => extremes(traces.detector(), 1 / GRID + 1e-9, atDetector * (1 + depth) * 1e-6)),
    phones: once(() => extremes(traces.phones(), 60, atDetector * 1e-6)),
  };
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
