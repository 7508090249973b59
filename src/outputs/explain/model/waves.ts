import { type Warning, warning } from '../../../engine/facts/warning.ts';
import type { Seconds } from '../../../engine/units/quantities.ts';
import { drawnExtremes } from './drawn-extremes.ts';
import { type Line, type RecordedBand, recordedBand } from './lines.ts';
import { noParts, type WaveParts } from './parts.ts';
import type { PointId } from './points.ts';
import { extremesInto, type ScaleEnds } from './range.ts';
import { waveContext } from './wave-context.ts';
import { linesOf } from './wave-lines.ts';
import { envelopesOf, meansOf, scalesOf, tracesOf } from './wave-points.ts';
import { signalsOf } from './wave-signals.ts';
import type { WaveSpec } from './wave-spec.ts';

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
  /** Cycles that the wave at a point repeats in, s: of the carrier, and of the tones. */
  cycles(point: PointId): readonly Seconds[];
  /** The running average: over about three cycles of the carrier, weighted as a bell. */
  mean(point: PointId, t0: Seconds, t1: Seconds, pixels: number, min: Float64Array, max: Float64Array): void;
  meanAt(point: PointId, t: Seconds): number;
  /** Whether there is an envelope to draw. */
  hasEnvelope(point: PointId): boolean;
  /** The upper envelope; nothing is filled in where there is none. */
  envelope(point: PointId, t0: Seconds, t1: Seconds, pixels: number, min: Float64Array, max: Float64Array): void;
  /** The steady waves it is made of. */
  lines(point: PointId): readonly Line[];
  bands(point: PointId): readonly RecordedBand[];
  /** Extremes for the scale of its drawing. */
  scale(point: PointId): ScaleEnds;
  /** Work out now what drawing these points takes, which otherwise waits until they are first looked at. */
  make(points: readonly PointId[], lines: boolean): void;
  /** What has been worked out so far. */
  readonly parts: WaveParts;
  readonly warnings: readonly Warning[];
}

/** A neighbour of this share has cycles that show. */
const STRONG = 0.3;

function warningsOf({ neighbours, depth, programme }: WaveSpec): Warning[] {
  const warnings: Warning[] = [];
  if (programme.kind === 'recording' && neighbours.length > 0) warnings.push(warning('waves.recording-alone'));
  if (depth > 1) warnings.push(warning('waves.over-modulation'));
  return warnings;
}

/**
 * @param parts what was worked out elsewhere for the same spec; whatever is missing is worked out when first needed.
 * @throws RangeError for a carrier, level or Q that cannot be.
 */
export function createWaves(given: WaveSpec, parts: WaveParts = noParts()): Waves {
  const context = waveContext(given, parts);
  const { spec, recording } = context;
  const { carrier, neighbours } = spec;
  const signals = signalsOf(context);
  const traces = tracesOf(context, signals);
  const lines = linesOf(context, signals, traces);
  const means = meansOf(context, signals, traces, lines);
  const envelopes = envelopesOf(context, signals);
  const scales = scalesOf(context, traces);
  const slowest = Math.min(carrier, ...neighbours.filter((n) => n.share > STRONG).map((n) => n.frequency));
  const isAlone = (point: PointId): boolean => neighbours.length === 0 || point === 'carrier' || point === 'modulated';
  const cycleAt = (point: PointId): Seconds => (point === 'programme' ? 0 : 1 / (isAlone(point) ? carrier : slowest));
  const toneCycles = context.tones.map((f) => 1 / f);
  return {
    spec,
    warnings: warningsOf({ ...spec, neighbours: given.neighbours }),
    at: (point, t) => traces[point]().at(t),
    extent: (point, t0, t1, pixels, min, max) => extremesInto(traces[point](), t0, t1, pixels, min, max),
    drawn: (point, t0, t1, pixels, min, max) =>
      drawnExtremes(traces[point](), cycleAt(point), !isAlone(point), t0, t1, pixels, min, max),
    cycles: (point) => [...(point === 'programme' ? [] : [cycleAt(point)]), ...(point === 'carrier' ? [] : toneCycles)],
    mean: (point, t0, t1, pixels, min, max) => extremesInto(means[point](), t0, t1, pixels, min, max),
    meanAt: (point, t) => means[point]().at(t),
    hasEnvelope: (point) => envelopes[point] !== undefined,
    envelope(point, t0, t1, pixels, min, max) {
      const make = envelopes[point];
      if (make) extremesInto(make(), t0, t1, pixels, min, max);
    },
    lines: (point) => lines[point](),
    bands(point) {
      if (!recording || point === 'carrier') return [];
      return recordedBand(point === 'modulated' || point === 'tuned' ? carrier : 0);
    },
    scale: (point) => scales[point](),
    make(points, withLines) {
      for (const point of points) {
        scales[point]();
        means[point]();
        envelopes[point]?.();
        if (withLines) lines[point]();
      }
    },
    parts,
  };
}
